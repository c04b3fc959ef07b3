import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, type Served, openServed, seriousOn } from './served.js';

const PART = resolve('../shared/parts/system76__thelio/Main-Cage_V1.step');
const FLAT = resolve('../shared/parts/ProtofyTeam__OxyGEN/Manometer_Support.dxf');
/** ms: reading a file, planning and proving on a busy machine. */
const LONG = 240_000;

const settled = (page: Page): Promise<unknown> => page.waitForFunction(() => document.querySelector('h1') !== null && document.querySelector('.waiting') === null, undefined, { timeout: 60_000 });

describe.skipIf(!existsSync(CHROMIUM) || !existsSync(PART) || !existsSync(FLAT))('the whole path in a real browser', () => {
  let server: Served;
  let page: Page;

  const noBarriers = async (): Promise<void> => {
    await settled(page);
    expect(await seriousOn(page)).toEqual([]);
  };

  beforeAll(async () => {
    server = await openServed('browser');
    ({ page } = server);
  }, LONG);

  afterAll(async () => {
    await server?.close();
  });

  it('opens on the demo parts, each marked', async () => {
    await page.goto(server.url());
    const parts = page.getByRole('list', { name: 'Parts' }).getByRole('listitem');
    await parts.first().waitFor();
    expect(await parts.count()).toBe(5);
    expect(await parts.filter({ has: page.locator('.tag', { hasText: /^demo$/ }) }).count()).toBe(5);
    await noBarriers();
  }, LONG);

  it('refuses what is no STEP or DXF file with a sentence', async () => {
    await page.getByLabel('Part file').setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('not a part') });
    await page.getByText(/'notes\.txt' is no STEP or DXF file by its name/).waitFor();
    // the browser itself logs the refusal's status; no other fault is allowed
    const told = server.faults.splice(0);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/status of 415/);
  }, LONG);

  it('takes a STEP file in and shows what was read', async () => {
    await page.getByLabel('Part file').setInputFiles(PART);
    await page.getByRole('heading', { name: 'Main-Cage_V1', level: 1 }).waitFor({ timeout: LONG });
    // thickness and number of bends as the list beside the published files has them (MANIFEST.tsv)
    await page.getByText('1.60 mm thick').waitFor();
    await page.getByText('3 bends').first().waitFor();
    await page.getByText('nominal, by rule K-factor 0.44').waitFor();
    await noBarriers();
  }, LONG);

  it('lights up a bend, and makes the blank by another rule', async () => {
    const line = page.getByRole('button', { name: /b1: bend angle/ });
    await line.click();
    expect(await line.getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.bend-line.lit').count()).toBe(1);
    await page.getByLabel('Rule for the bends').selectOption('din-6935');
    await page.getByText('nominal, by rule DIN 6935').waitFor();
    const dxf = await page.getByRole('link', { name: 'DXF' }).getAttribute('href');
    const answer = await page.request.get(`${server.url()}${dxf}`);
    expect(await answer.text()).toContain('ENTITIES');
  }, LONG);

  it('asks about a flat that lies about its unit, takes it in, and sets an assumption otherwise as a new revision', async () => {
    await page.goto(`${server.url()}/#/parts`);
    await page.getByLabel('Part file').setInputFiles(FLAT);
    await page.getByText('Which unit is it drawn in? The file leaves it in doubt.').waitFor();
    await page.getByText(/A flat drawing does not say how thick its sheet is/).waitFor();
    await page.getByLabel('Thickness, mm').fill('-1');
    await page.getByText('Thickness must be more than 0 and at most 50 mm, not \u22121.').waitFor();
    await page.getByLabel('Thickness, mm').fill('1');
    // four bend lines as listed beside the file
    await page.getByText('5 plates, 4 bends').waitFor();
    await noBarriers();
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.getByRole('heading', { name: 'Manometer_Support', level: 1 }).waitFor();
    await page.getByRole('button', { name: /b2: bend angle 90/ }).click();
    expect(await page.locator('.bend-line.lit').count()).toBe(1);
    await page.getByLabel('bend angle of b2, degrees', { exact: true }).fill('45');
    await page.getByRole('button', { name: 'Set bend angle of b2, degrees' }).click();
    await page.getByText('2: read again: b2: bend angle 45').waitFor();
    await page.getByText(/b2: bend angle 45\.0° \(included 135\.0°\)/).waitFor();
    await page.getByRole('button', { name: 'Choose the layers' }).click();
    await page.getByLabel('Lines of layer Bending').selectOption('bend B');
    await page.getByRole('button', { name: 'Read it so' }).click();
    await page.getByText('3: read again: layer Bending: bend B').waitFor();
    await page.getByText(/b2: bend angle 45\.0° .* towards B/).waitFor();
    await page.getByText('3 revisions').click();
    await noBarriers();
  }, LONG);

  it('shows a profile as it is typed, says the place of a fault, and keeps it as a part', async () => {
    await page.goto(`${server.url()}/#/parts`);
    await page.getByRole('link', { name: 'Type a profile' }).click();
    const line = page.getByRole('textbox', { name: 'Profile' });
    await line.fill('40 ^190 60 t1.5 w100');
    await page.getByText('At character 4, "^190": a bend angle lies above 0 (flat) and up to 180 (folded back).').waitFor();
    expect(await page.getByRole('button', { name: 'Keep as a part' }).isDisabled()).toBe(true);
    await line.fill('40 ^90 60 t1.5 w100');
    await page.getByRole('img', { name: 'Section: 2 flanges, bend angles 90.0° towards A' }).waitFor();
    // 40 + 60 - 2 (1.5 + 1.5) + pi/2 (1.5 + 0.44 1.5) = 97.39
    await page.getByText('100.00 mm × 97.39 mm').waitFor();
    await noBarriers();
    await page.getByRole('textbox', { name: 'Name' }).fill('Typed angle');
    await page.reload();
    expect(await page.getByRole('textbox', { name: 'Name' }).inputValue()).toBe('Typed angle');
    expect(await line.inputValue()).toBe('40 ^90 60 t1.5 w100');
    await page.getByRole('button', { name: 'Keep as a part' }).click();
    await page.getByRole('heading', { name: 'Typed angle', level: 1 }).waitFor();
    await page.goto(`${server.url()}/#/parts`);
    for (const name of ['Typed angle', 'Manometer_Support']) {
      await page.getByRole('button', { name: `Delete ${name}` }).click();
      await page.getByRole('button', { name: 'Delete for good' }).click();
      await page.getByRole('button', { name: `Delete ${name}` }).waitFor({ state: 'detached' });
    }
    await page.getByRole('link', { name: /Main-Cage_V1/ }).click();
    await page.getByRole('heading', { name: 'Main-Cage_V1', level: 1 }).waitFor();
  }, LONG);

  let trialAddress: string;
  it('tries it on a machine and says the verdict', async () => {
    await page.getByLabel('Machine').selectOption('general');
    await page.getByLabel('Quantity').fill('25');
    await page.getByRole('button', { name: 'Run the trial' }).click();
    await page.getByRole('link', { name: 'Open the trial' }).click({ timeout: LONG });
    await page.getByRole('heading', { name: /Main-Cage_V1 on General/, level: 1 }).waitFor();
    trialAddress = new URL(page.url()).hash;
    const { trials } = (await (await page.request.get(`${server.url()}/api/trials`)).json()) as { trials: readonly { readonly id: string; readonly verdict: string; readonly quantity: number }[] };
    expect(trials).toHaveLength(1);
    expect(trials[0]!.quantity).toBe(25);
    expect(await page.locator('.big-verdict').innerText()).toContain(trials[0]!.verdict);
    await noBarriers();
  }, LONG);

  it('walks the steps with the keys, each with its angles named', async () => {
    await page.getByRole('link', { name: 'Walk through the steps' }).click();
    const heading = page.getByRole('heading', { level: 1 });
    await page.getByRole('heading', { name: /^Step 1 of \d+$/ }).waitFor();
    const steps = Number(/of (\d+)$/.exec(await heading.innerText())![1]);
    expect(steps).toBeGreaterThan(0);
    for (let step = 1; step <= steps; step++) {
      await page.getByRole('heading', { name: `Step ${step} of ${steps}` }).waitFor();
      await settled(page);
      expect(await page.locator('.pictures svg').count()).toBe(2);
      const figures = await page.locator('.step-figures').innerText();
      for (const name of ['X axis, set to', 'R, from the die seat', 'Depth from touch', 'Ram position', 'Bend angle', 'Included angle']) expect(figures).toContain(name);
      if (step < steps) await page.keyboard.press('ArrowRight');
    }
    await noBarriers();
  }, LONG);

  it('moves the stroke to any moment', async () => {
    const moment = page.getByLabel('Moment of the stroke');
    await moment.fill('1000');
    await page.getByText('the part comes out').waitFor();
    await moment.fill('0');
    await page.getByText('the sheet to its stop').first().waitFor();
  }, LONG);

  it('hands out the set-up sheet', async () => {
    await page.goto(`${server.url()}/${trialAddress}`);
    const href = await page.getByRole('link', { name: /Set-up sheet/ }).getAttribute('href');
    const pdf = await page.request.get(`${server.url()}${href}`);
    expect(pdf.headers()['content-type']).toBe('application/pdf');
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
  }, LONG);

  it('offers nowhere a plan that is not shown to hold', async () => {
    const id = trialAddress.split('/')[2]!;
    const sentence = 'At step 1 the thickest sheet asks 700 N/mm where 600 N/mm is the rating.';
    const verdict = 'does not make';
    const address = `**/api/trials/${id}`;
    await page.route(address, async (route) => {
      const stored = (await (await route.fetch()).json()) as { readonly trial: object };
      await route.fulfill({ json: { ...stored, verdict, trial: { ...stored.trial, verdict, reasons: [{ code: 'force', sentence, bends: ['b1'] }] } } });
    });
    for (const [below, heading] of [['', /Main-Cage_V1 on General/], ['/steps/1', 'Not to be bent'], ['/pieces', /^Pieces made/]] as const) {
      await page.goto('about:blank');
      await page.goto(`${server.url()}/${trialAddress}${below}`);
      await page.getByRole('heading', { name: heading, level: 1 }).waitFor();
      await settled(page);
      await page.locator('.warning', { hasText: 'Not to be bent.' }).waitFor();
      for (const offered of ['Walk through the steps', 'Pieces made']) expect(await page.getByRole('link', { name: offered }).count()).toBe(0);
      expect(await page.locator('table.steps, .step-figures, form').count()).toBe(0);
    }
    await page.unroute(address);
  }, LONG);

  it('has part and trial still there after a restart', async () => {
    await page.goto('about:blank');
    await server.restart();
    await page.goto(server.url());
    await page.getByRole('link', { name: /Main-Cage_V1/ }).click();
    await page.getByRole('heading', { name: 'Main-Cage_V1', level: 1 }).waitFor();
    await page.getByRole('link', { name: 'See them machine by machine' }).click();
    await page.getByRole('link', { name: /Open the trial on General/ }).waitFor();
    await noBarriers();
    await page.getByRole('link', { name: /Open the trial on General/ }).click();
    await page.getByRole('heading', { name: /Main-Cage_V1 on General/, level: 1 }).waitFor();
    expect(new URL(page.url()).hash).toBe(trialAddress);
  }, LONG);

  it('purges a part once it is confirmed', async () => {
    await page.goto(`${server.url()}/#/parts`);
    await page.getByRole('button', { name: 'Delete Main-Cage_V1' }).click();
    await page.getByRole('button', { name: 'Delete for good' }).click();
    await page.getByRole('link', { name: /Main-Cage_V1/ }).waitFor({ state: 'detached' });
    expect(await page.getByRole('list', { name: 'Parts' }).getByRole('listitem').count()).toBe(5);
  }, LONG);

  it('had no fault of its own on the way', () => {
    expect(server.faults).toEqual([]);
  });
});
