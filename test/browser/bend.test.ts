import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, type Served, openServed, seriousOn } from './served.js';

const LONG = 120_000;

describe.skipIf(!existsSync(CHROMIUM))('one bend at the counter, in a real browser', () => {
  let server: Served;
  let page: Page;
  const figure = async (name: RegExp): Promise<number> => Number.parseFloat(await page.getByRole('row', { name }).locator('td.number').first().innerText());

  beforeAll(async () => {
    server = await openServed('bend-page');
    ({ page } = server);
  }, LONG);

  afterAll(async () => {
    await server?.close();
  });

  it('works a bend out, ranks the tools, shows the stock’s range, the rules and the test strip', async () => {
    await page.goto(`${server.url()}/#/bend`);
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

  it('reads a decimal comma as one, and says under a field what it cannot be', async () => {
    const thickness = page.getByLabel('Thickness, mm');
    await thickness.clear();
    await thickness.pressSequentially('1,5');
    await page.getByLabel('Title block').getByText('1.5 mm').waitFor();
    expect(await thickness.inputValue()).toBe('1,5');
    await page.getByLabel('Bend angle, degrees').fill('200');
    await page.getByText('Bend angle must be from 1 to 180 degrees, not 200.').waitFor();
    expect(await page.getByText('Working it out').count()).toBe(0);
    await page.getByLabel('Bend angle, degrees').fill('90');
    await page.locator('.stale').waitFor({ state: 'detached' });
  }, LONG);

  it('has nothing that axe-core calls serious, fits a tablet held upright, and threw nothing', async () => {
    expect(await seriousOn(page)).toEqual([]);
    await page.setViewportSize({ width: 820, height: 1180 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(820);
    expect(server.faults).toEqual([]);
  }, LONG);
});
