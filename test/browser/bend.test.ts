import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type Page, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seriousOn, serve } from './served.js';

const CHROMIUM = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
const LONG = 120_000;

describe.skipIf(!existsSync(CHROMIUM))('one bend at the counter, in a real browser', () => {
  let data: string;
  let browser: Browser;
  let server: Awaited<ReturnType<typeof serve>>;
  let page: Page;
  const faults: string[] = [];
  const figure = async (name: RegExp): Promise<number> => Number.parseFloat(await page.getByRole('row', { name }).locator('td.number').first().innerText());

  beforeAll(async () => {
    data = mkdtempSync(join(tmpdir(), 'brakewright-bend-page-'));
    [server, browser] = await Promise.all([serve(data), chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-sync'] })]);
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on('console', (message) => message.type() === 'error' && faults.push(`console: ${message.text()}`));
    page.on('pageerror', (fault) => faults.push(`page: ${fault.message}`));
  }, LONG);

  afterAll(async () => {
    await browser?.close();
    server?.child.kill('SIGTERM');
    rmSync(data, { recursive: true, force: true });
  });

  it('works a bend out, ranks the tools, shows the stock’s range, the rules and the test strip', async () => {
    await page.goto(`${server.url}/#/bend`);
    await page.getByRole('heading', { name: 'Figures' }).waitFor({ timeout: LONG });
    // the trade's 8 t for 2 mm; a 90 degree bend under load is bent further
    expect(await page.getByText(/V 16/).count()).toBeGreaterThan(0);
    expect(await figure(/^Bend angle under load/)).toBeGreaterThan(90);
    expect(await page.getByRole('img', { name: /Force per length and bend angle/ }).count()).toBe(1);
    expect(await page.getByRole('row', { name: /^Bend angle released/ }).innerText()).toMatch(/\d+\.\d° to \d+\.\d°/);
    expect(await page.getByText(/Two strips of the same sheet, each 100 mm along/).count()).toBe(1);
    expect(await page.getByText(/DIN 6935/).count()).toBeGreaterThan(0);
    expect(await page.locator('body').innerText()).not.toMatch(/\bsafe\b|guarantee/i);
  }, LONG);

  it('takes another metal and thickness, and other tools by hand', async () => {
    const before = await figure(/^Peak force/);
    await page.getByLabel('Metal').selectOption('1.4301');
    await page.waitForFunction((was) => Number.parseFloat(document.querySelector('tr:nth-child(6) td.number')?.textContent ?? '') !== was, before);
    // stainless of twice the strength asks about twice the force
    expect(await figure(/^Peak force/)).toBeGreaterThan(1.4 * before);
    const title = await page.locator('#bend-title').innerText();
    await page.getByRole('button', { name: /Work out/ }).nth(1).click();
    await page.waitForFunction((was) => document.querySelector('#bend-title')?.textContent !== was, title);
  }, LONG);

  it('has nothing that axe-core calls serious, fits a tablet held upright, and threw nothing', async () => {
    expect(await seriousOn(page)).toEqual([]);
    await page.setViewportSize({ width: 820, height: 1180 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(820);
    expect(faults).toEqual([]);
  }, LONG);
});
