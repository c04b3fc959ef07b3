import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, type Served, openServed } from './served.js';

const SHARP = resolve('../shared/parts/Creality3DPrinting__Ender-3/E_motor_bracket.step');
const ROLLED = resolve('../shared/parts/ONEARMY__precious-plastic-kit/SHRPRO-V1_1000.01-A_Coupling_cover.step');
const FLAT = resolve('../shared/parts/ProtofyTeam__OxyGEN/Electronics_Support.dxf');
/** ms: reading a file and planning on a busy machine. */
const LONG = 240_000;

describe.skipIf(![CHROMIUM, SHARP, ROLLED, FLAT].every((path) => existsSync(path)))('what was assumed, set otherwise on the page', () => {
  let served: Served;
  let page: Page;

  beforeAll(async () => {
    served = await openServed('assumed');
    ({ page } = served);
    page.setDefaultTimeout(LONG);
  }, LONG);

  afterAll(() => served?.close());

  const drop = async (file: string): Promise<void> => {
    await page.goto(`${served.url()}/#/parts`);
    await page.getByLabel('Part file').setInputFiles(file);
  };

  it('the inside radius of a bend that is drawn sharp', async () => {
    await drop(SHARP);
    // 2.5 mm of sheet and one sharp bend, as the list beside the published files has it
    await page.getByRole('button', { name: /Bend b1 is drawn sharp; inside radius 2\.50 mm is taken/ }).click();
    expect(await page.locator('.bend-line.lit').count()).toBe(1);
    await page.getByLabel('inside radius of b1, mm', { exact: true }).first().fill('1.5');
    await page.getByRole('button', { name: 'Set inside radius of b1, mm' }).first().click();
    await page.getByText('Drawn sharp; the inside radius was chosen by the user: b1 1.5 mm.').waitFor();
    await page.getByText(/b1: bend angle 90\.0° .* inside radius 1\.50 mm/).waitFor();
  }, LONG);

  it('the unit of a file that declares another than it is drawn in', async () => {
    const metres = join(mkdtempSync(join(tmpdir(), 'brakewright-unit-')), 'metres.step');
    writeFileSync(metres, readFileSync(SHARP, 'latin1').replaceAll('SI_UNIT ( .MILLI., .METRE. )', 'SI_UNIT ( $, .METRE. )'), 'latin1');
    await drop(metres);
    await page.getByText(/The file declares metres: 2500\.00 mm thick, .* which no press brake bends\. .* as millimetres 2\.50 mm thick/).waitFor();
    await page.getByLabel('unit to read the file in', { exact: true }).selectOption('mm');
    await page.getByRole('button', { name: 'Set unit to read the file in' }).click();
    await page.getByText(/Read as millimetres, set by hand \(the file declares metres\): 2\.50 mm thick/).waitFor();
    await page.getByText(/2: unit millimetres; radii/).waitFor({ state: 'attached' });
  }, LONG);

  it('how a bend of large radius is made', async () => {
    await drop(ROLLED);
    // a half circle of radius 125 between two bends
    await page.getByRole('button', { name: /inside radius 125\.00 mm, 63 times the thickness: it is rolled or bent in many hits/ }).click();
    // the half circle is the middle one of the three
    await page.getByLabel('how b2 is made', { exact: true }).selectOption('bend');
    await page.getByRole('button', { name: 'Set how b2 is made' }).click();
    await page.getByText('2: b2 bent in one stroke').waitFor({ state: 'attached' });
  }, LONG);

  it('the thickness of a flat, from the file to the folded part and a trial', async () => {
    await drop(FLAT);
    await page.getByLabel('Thickness, mm').fill('1');
    await page.getByText('2 plates, 1 bend').waitFor();
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.getByRole('heading', { name: 'Electronics_Support', level: 1 }).waitFor();
    await page.getByText('1.00 mm thick').waitFor();
    await page.getByLabel('thickness, mm', { exact: true }).fill('1.5');
    await page.getByRole('button', { name: 'Set thickness, mm' }).click();
    await page.getByText('1.50 mm thick').waitFor();
    await page.getByText('2: read again: thickness 1.5 mm').waitFor({ state: 'attached' });
    await page.getByLabel('Machine').selectOption('general');
    await page.getByRole('button', { name: 'Run the trial' }).click();
    await page.getByRole('link', { name: 'Open the trial' }).click();
    await page.getByRole('heading', { name: /Electronics_Support on General/, level: 1 }).waitFor();
    expect(await page.locator('.big-verdict').innerText()).toMatch(/makes|does not make|not decided/);
  }, LONG);
});
