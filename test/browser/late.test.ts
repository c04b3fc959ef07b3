import { existsSync } from 'node:fs';
import type { Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, type Served, openServed, seriousOn } from './served.js';

const LONG = 120_000;

describe.skipIf(!existsSync(CHROMIUM))('what comes late, is refused or breaks off, in a real browser', () => {
  let server: Served;
  let page: Page;
  /** Lets what is asked of `path` wait until the function that it returns is called. */
  const held = async (method: 'GET' | 'POST', path: string, answer: (route: Route) => Promise<void>): Promise<() => void> => {
    let go = (): void => undefined;
    const gone = new Promise<void>((done) => { go = done; });
    await page.route(path, async (route) => {
      if (route.request().method() !== method) return route.continue();
      await gone;
      await answer(route);
    });
    return go;
  };
  const open = async (hash: string, shows: string): Promise<void> => {
    await page.goto('about:blank');
    await page.goto(`${server.url()}/#/${hash}`);
    await page.getByRole('heading', { name: shows }).first().waitFor({ timeout: LONG });
  };
  const json = (body: unknown, status = 200) => (route: Route): Promise<void> => route.fulfill({ status, json: body });

  beforeAll(async () => {
    server = await openServed('late');
    ({ page } = server);
  }, LONG);
  afterEach(async () => {
    await page.unrouteAll({ behavior: 'ignoreErrors' });
  });
  afterAll(async () => {
    await server?.close();
  });

  it('a trial is asked of the machine and metal that the page shows, whatever the floor holds', async () => {
    const { machines } = (await (await fetch(`${server.url()}/api/machines`)).json()) as { readonly machines: readonly { readonly id: string }[] };
    await page.route('**/api/machines', json({ machines: machines.slice(2, 4) }));
    let asked: unknown;
    await page.route('**/api/trials', (route) => { asked = route.request().postDataJSON(); return json({ jobs: [] }, 202)(route); });
    // the part turns in a small view: it is drawn by the processor
    await page.setViewportSize({ width: 390, height: 600 });
    await open('parts/demo-1', 'Try it');
    await page.getByRole('button', { name: 'Run the trial' }).click();
    const shown = await page.locator('.run select').evaluateAll((selects) => selects.map((select) => (select as HTMLSelectElement).value));
    await expect.poll(() => asked).toMatchObject({ machineId: machines[2]!.id, metalId: shown[1] });
    expect(shown[0]).toBe(machines[2]!.id);
    await page.setViewportSize({ width: 1280, height: 800 });
  }, LONG);

  it('the buyer\'s tools that were taken back do not come again, and a fit\'s answer moves nobody who went on', async () => {
    const rack = { revision: 1, demo: false, change: 'new', createdAt: '2026-03-02T10:00:00Z', by: 'Ann' };
    await page.route('**/api/racks', json({ racks: [{ ...rack, id: 'ours', name: 'Ours' }, { ...rack, id: 'theirs', name: 'Theirs' }] }));
    const bring = await held('GET', '**/api/racks/theirs', json({ data: { id: 'theirs' } }));
    let asked: unknown;
    const answer = await held('POST', '**/api/fits', async (route) => {
      asked = route.request().postDataJSON();
      await json({ id: 'f-1' }, 202)(route);
    });
    await open('fit', 'Several parts on several machines');
    const ask = page.getByRole('button', { name: /^Try \d+ parts on/ });
    const tools = page.getByLabel('The buyer\'s own tools');
    await tools.selectOption({ label: 'Theirs' });
    await page.getByText('What the buyer has is chosen and not read yet').waitFor();
    expect(await ask.isDisabled()).toBe(true);
    await tools.selectOption({ label: 'none told' });
    const came = page.waitForResponse('**/api/racks/theirs');
    bring();
    await (await came).finished();
    await ask.click();
    await page.evaluate(() => { location.hash = '#/bend'; });
    await page.getByRole('heading', { name: 'One bend' }).waitFor();
    const told = page.waitForResponse((response) => response.url().endsWith('/api/fits') && response.status() === 202);
    answer();
    await (await told).finished();
    // a move would be made as soon as the answer is read
    await page.waitForTimeout(100);
    expect(asked).not.toHaveProperty('buyer');
    expect(new URL(page.url()).hash).toBe('#/bend');
  }, LONG);

  it('figures of one bend are never taken for those of another that is still on its way or was refused', async () => {
    await open('bend', 'Figures');
    const block = page.getByLabel('Title block');
    const force = await page.getByRole('row', { name: /^Peak force/ }).first().innerText();
    const bring = await held('POST', '**/api/bend', (route) => route.continue());
    await page.getByLabel('Length, mm').fill('2000');
    await page.getByText('The figures below are still those of').waitFor();
    expect(await page.getByText(/still those of .* 2 mm thick, 1000 mm long, bent by 90°/).count()).toBe(1);
    expect(await block.innerText()).toMatch(/1000 mm/);
    bring();
    await page.getByText('The figures below are still those of').waitFor({ state: 'detached' });
    expect(await block.innerText()).toMatch(/2000 mm/);
    expect(await page.getByRole('row', { name: /^Peak force/ }).first().innerText()).not.toBe(force);
    await page.route('**/api/bend', json({ error: 'Not today.' }, 400), { times: 1 });
    await page.getByLabel('Thickness, mm').fill('3');
    await page.getByRole('alert').waitFor();
    expect(await page.locator('.stale').count()).toBe(1);
    expect(await page.getByText(/still those of .* 2 mm thick, 2000 mm long/).count()).toBe(1);
  }, LONG);

  it('an address that names nothing says so, and a page that breaks off says how to go on', async () => {
    await open('parts/%', 'No such sheet');
    await page.route('**/api/machines', json({ machines: 'none' }), { times: 1 });
    await open('floor', 'This sheet broke off');
    expect(await page.getByRole('alert').innerText()).toMatch(/A defect of the program\. It could not draw this sheet: \S+/);
    expect(await seriousOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Draw it again' }).click();
    await page.getByRole('link', { name: 'Add a machine' }).waitFor();
  }, LONG);
});
