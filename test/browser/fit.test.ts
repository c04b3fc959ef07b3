import { existsSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FitSummary, FitView } from '../../src/server/index.js';
import { CHROMIUM, type Served, openServed, seriousOn } from './served.js';

const LONG = 120_000;

describe.skipIf(!existsSync(CHROMIUM))('board, report, day plan and pieces of a real fit, tools and machines typed in, in a real browser', () => {
  let server: Served;
  let page: Page;
  let fit: FitView;
  const post = async <T>(path: string, body: unknown): Promise<T> =>
    (await (await fetch(server.url() + path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })).json()) as T;
  const profile = async (name: string, thickness: number, width: number, flanges: readonly number[]): Promise<string> =>
    (await post<{ readonly parts: readonly [{ readonly id: string }] }>('/api/parts', { profile: { name, thickness, insideRadius: thickness, width, flanges, turns: [90] } })).parts[0].id;
  const ended = async (id: string): Promise<FitView> => {
    for (;;) {
      const view = (await (await fetch(`${server.url()}/api/fits/${id}`)).json()) as FitView;
      if (view.endedAt !== null) return view;
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
  };
  const read = async (hash: string, shows: string): Promise<string> => {
    await page.goto(`${server.url()}/#/${hash}`);
    await page.getByText(shows).first().waitFor({ timeout: LONG });
    await page.waitForLoadState('networkidle');
    return page.locator('body').innerText();
  };
  /** A buyer on a desk and a demonstrator with a tablet. */
  const holds = async (): Promise<void> => {
    expect(await seriousOn(page)).toEqual([]);
    await page.setViewportSize({ width: 820, height: 1180 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(820);
    await page.setViewportSize({ width: 1280, height: 800 });
    expect(server.faults).toEqual([]);
  };

  beforeAll(async () => {
    server = await openServed('fit-pages');
    ({ page } = server);
    // 12 mm in V 63 stands on a die of 120 mm, over the fixed R of the long machine (src/fit/remedies.test.ts)
    const partIds = [await profile('light angle', 1.5, 100, [40, 60]), await profile('heavy angle', 12, 300, [90, 120])];
    const { id } = await post<FitSummary>('/api/fits', { partIds, machineIds: ['general', 'long-fixed-r'], metalId: 'dc01', quantity: 20, options: false });
    fit = await ended(id);
  }, LONG);

  afterAll(async () => {
    await server?.close();
  });

  it('board: which machine makes all, why not the others, what would change it', async () => {
    const words = await read(`fit/${fit.id}`, 'Machine by machine');
    const row = (name: RegExp): Promise<string> => page.locator('.machine-sums tbody tr').filter({ hasText: name }).innerText();
    const named = (id: string): string => fit.machines.find((m) => m.id === id)!.name;
    expect(words).toContain(`No machine makes both parts as it stands. The most are made by “${named('general')}” and “${named('long-fixed-r')}”: 1 of 2 each.`);
    expect(words).toContain('With the options, tools and passes named, both parts');
    expect(await row(/^General/)).toMatch(/1 of 2\s+With the options, tools and passes named: 2 of 2/);
    expect(words).toMatch(/The most for the least: both parts, by .* in all, nothing costs less/);
    // the price of the powered R as the demo floor has it
    const long = await row(/^Long/);
    expect(long).toMatch(/1 of 2/);
    expect(long).toMatch(/no stop within the gauge’s reach \(1 part: heavy angle\)/);
    expect(long).toMatch(/\(to buy: 11,500 EUR\) \(1 part: heavy angle\)/);
    await page.getByRole('button', { name: /^heavy angle on .*with a purchase/ }).first().click();
    expect(await page.locator('#cell-title').innerText()).toContain('heavy angle');
    await holds();
  }, LONG);

  it('report: the same answer, site, terms as typed, and what a figure rests on', async () => {
    const words = await read(`fit/${fit.id}/report`, 'How each figure came about');
    expect(words).toContain(fit.answer);
    expect(words).toMatch(/Will it fit your shop[\s\S]*mass [\d,]+ kg, footprint/i);
    expect(words).toMatch(/an hour, running[\s\S]*change-over/i);
    await page.getByLabel('Warranty').fill('As agreed in writing.');
    await page.getByText('Warranty: As agreed in writing.').waitFor();
    expect(words).not.toMatch(/\bsafe\b|guarantee|NaN|undefined/i);
    await holds();
  }, LONG);

  it('day plan: order, kit, blanks and strips to cut, what to check, as many as are asked for', async () => {
    const other = await post<FitSummary>('/api/fits', { partIds: [await profile('wider angle', 1.5, 200, [50, 80])], machineIds: ['general'], metalId: 'dc01', quantity: 20, options: false });
    const second = await ended(other.id);
    const trials = [fit, second].map((f) => f.cells[0]![0]!.trialId!);
    const words = await read(`day/${trials.join(',')}`, 'Demonstration on');
    expect(words).toMatch(/2 parts in .* of work/);
    for (const name of ['light angle', 'wider angle']) expect(words).toContain(name);
    // one V and one punch do both: what stands for the first stays for the second, or is made longer
    expect(words).toMatch(/die (stays|altered)/);
    // 100 mm of bend line, and legs of 40 and 60 outside less the deduction of a 90 degree bend, which lies between one and two thicknesses
    const [, length, width] = /Cut 1 blank and 2 spares, ([\d.]+) mm by ([\d.]+) mm, 1\.50 mm thick/.exec(words)!.map(Number);
    expect([length, width].some((mm) => mm === 100)).toBe(true);
    const developed = length === 100 ? width! : length!;
    expect(developed).toBeGreaterThan(100 - 2 * 1.5);
    expect(developed).toBeLessThan(100 - 1.5);
    const asked = page.getByLabel('Pieces of each');
    await asked.fill('3');
    // the day is planned anew while the field stays under the hand
    await page.getByText(/Cut 3 blanks and 2 spares/).first().waitFor();
    expect(await asked.evaluate((field) => document.activeElement === field)).toBe(true);
    await page.getByLabel('Spare blanks of each').fill('4');
    await page.getByText(/Cut 3 blanks and 4 spares/).first().waitFor();
    expect(await page.locator('section', { has: page.locator('#check-title') }).getByRole('listitem').count()).toBeGreaterThan(2);
    const kit = page.locator('section', { has: page.locator('#kit-title') }).locator('tbody tr');
    expect(await kit.filter({ hasText: 'punch' }).count()).toBeGreaterThan(0);
    expect(await kit.filter({ hasText: 'die' }).count()).toBeGreaterThan(0);
    await holds();
    await page.setViewportSize({ width: 390, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.setViewportSize({ width: 1280, height: 800 });
  }, LONG);

  it('pieces made', async () => {
    await read(`trials/${fit.cells[0]![0]!.trialId!}/pieces`, 'light angle');
    await page.getByLabel('Serial of the piece').fill('P-001');
    await page.locator('.piece-fields input').first().fill('10');
    await page.getByRole('button', { name: 'Write the piece down' }).click();
    // far from any flange of 40 or 60
    await page.getByText('⚠ out of tolerance').or(page.getByText('no tolerance asked:')).first().waitFor();
    const entry = await page.locator('.piece-list li').first().innerText();
    expect(entry).toMatch(/P-001[\s\S]*: 10\.00 mm, predicted \d+\.\d\d mm[\s\S]* over V /);
    await holds();
  }, LONG);

  it('pieces and strips are corrected in their place, and nothing that is typed elsewhere is lost by it', async () => {
    const write = page.locator('section', { has: page.locator('#write-title') });
    await write.getByLabel('Serial of the piece').fill('P-002');
    await write.locator('.piece-fields input').first().fill('41');
    await page.reload();
    await write.getByLabel('Serial of the piece').waitFor();
    await page.getByText('Test strips and the deduction they tell').click();
    const strips = page.locator('details', { hasText: 'Test strips and the deduction they tell' });
    await strips.getByLabel('Mark on the strip').fill('S-001');
    for (const [label, typed] of [['Bend angle, released', '90'], ['Cut length', '100'], ['One leg', '51.3'], ['Other leg', '15.3'], ['Thickness', '1.5']] as const) await strips.getByLabel(label).fill(typed);
    await strips.getByRole('button', { name: 'Write the strip down' }).click();
    await page.getByText(/make a deduction of -33\.40 mm.* is a slip in measuring or typing/).waitFor();
    expect(server.faults.splice(0).every((fault) => fault.includes('422'))).toBe(true);
    await strips.getByLabel('Other leg').fill('51.1');
    await strips.getByRole('button', { name: 'Write the strip down' }).click();
    await page.getByText('Written down: strip S-001.').waitFor();
    // what the two legs are longer than the strip was cut to
    await strips.getByText(/: deduction 2\.40 mm/).waitFor();
    await page.getByRole('button', { name: 'Correct S-001' }).click();
    const form = page.getByRole('region', { name: 'Correct what was written of S-001' });
    expect(await form.getByLabel('One leg').inputValue()).toBe('51.3');
    await form.getByLabel('Other leg').fill('51,3');
    await form.getByRole('button', { name: 'Write down the correction' }).click();
    await strips.getByText(/: deduction 2\.60 mm/).waitFor();
    expect(await page.locator('.piece-list').getByText('corrected since, not counted').count()).toBe(1);
    await page.getByRole('button', { name: 'Correct P-001' }).click();
    await page.getByRole('button', { name: 'No correction of P-001 after all' }).click();
    expect(await write.getByLabel('Serial of the piece').inputValue()).toBe('P-002');
    expect(await write.locator('.piece-fields input').first().inputValue()).toBe('41');
  }, LONG);

  it('a punch as it is typed: nonsense has its sentence beside the field, nothing typed is lost, a drawing in inches is taken', async () => {
    // a server that takes its time: what is typed meanwhile would follow no revision
    await page.route('**/api/racks/demo-rack', async (route) => { await new Promise((go) => setTimeout(go, 500)); await route.continue(); }, { times: 1 });
    await read('racks/demo-rack/new-punch', 'Cross-section, from the tip');
    const keep = page.getByRole('button', { name: /^Keep as revision/ });
    // an empty form is not full of complaints: of a field that is still empty only where somebody was there, or asked
    await page.getByText(/fields are still empty/).waitFor();
    expect(await page.locator('.field-fault').count()).toBe(0);
    await page.getByLabel('Name', { exact: true }).focus();
    await page.getByLabel('Weight, kg/m', { exact: true }).focus();
    expect(await page.locator('.field-fault').count()).toBe(1);
    await page.getByRole('button', { name: 'Show what is missing' }).click();
    await page.locator('.field-fault').getByText('Rating must be a number from 10 to 20000 N/mm (nothing was given).').waitFor();
    expect(await keep.isDisabled()).toBe(true);
    for (const [label, typed] of [
      ['Name', 'Narrow punch'], ['Nose, degrees included', '85'], ['Tip radius, mm', '1'], ['Height, tip to shoulder, mm', '125'], ['Rating, N/mm', '900'], ['Weight, kg/m', '18'],
      ['Segments at hand: length x count, mm; ears as left 100 reach 30 foot 25', '100 x 2 + 500 x 3'],
    ] as const) await page.getByLabel(label, { exact: true }).fill(typed);
    await page.getByText('Read in full.').waitFor();
    const says = async (label: string, typed: string, sentence: string): Promise<void> => {
      const field = page.getByLabel(label, { exact: true });
      const good = await field.inputValue();
      await field.fill(typed);
      await page.locator('.field-fault').getByText(sentence).waitFor();
      expect(await keep.isDisabled()).toBe(true);
      expect(await field.inputValue()).toBe(typed);
      await field.fill(good);
      await page.getByText('Read in full.').waitFor();
    };
    await says('Height, tip to shoulder, mm', '-5', 'Height must be a number from 5 to 500 mm (-5 was given).');
    await says('Tip radius, mm', '20', 'Tip radius (20 mm) must be at most 8.14 mm');
    await says('Weight, kg/m', '18,500', '18,500 may mean 18500 or, with a decimal comma, 18.500');
    await says('Short id', 'straight-r1', "Short id ('straight-r1') names another tool of this rack");
    await says('Segments at hand: length x count, mm; ears as left 100 reach 30 foot 25', '100 by 2', "'100 by 2' is no segment");
    // 10 by 40 mm upright from its tip, drawn in inches: 0.3937 by 1.5748
    const [w, h] = [5 / 25.4, 40 / 25.4];
    const corners = [[0, 0], [w, w], [w, h], [-w, h], [-w, w]] as const;
    const dxf = (units: number, closed: boolean): Buffer => Buffer.from([
      0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, units, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES',
      ...corners.flatMap(([x, y], i) => { const to = corners[(i + 1) % corners.length]!; return !closed && i === 2 ? [] : [0, 'LINE', 8, 'C', 10, x, 20, y, 11, to[0], 21, to[1]]; }), 0, 'ENDSEC', 0, 'EOF',
    ].join('\n'));
    const take = (name: string, buffer: Buffer): Promise<void> => page.getByLabel('Cross-section, from the tip as a DXF file').setInputFiles({ name, mimeType: 'application/dxf', buffer });
    await take('open.dxf', dxf(1, false));
    await page.getByText(/open\.dxf: The cut lines close nowhere/).waitFor();
    // the refusal is the browser's own line on the console too
    expect(server.faults.splice(0).every((fault) => fault.includes('422'))).toBe(true);
    await take('blade.dxf', dxf(1, true));
    await page.getByText('Taken from blade.dxf: 10.00 mm wide, 40.00 mm high.').waitFor();
    expect(await page.getByLabel('Height, tip to shoulder, mm').inputValue()).toBe('40');
    await page.getByLabel('Name', { exact: true }).fill('Blade as drawn');
    await page.goto(`${server.url()}/#/floor`);
    await page.getByRole('heading', { name: 'Floor' }).waitFor();
    await read('racks/demo-rack/new-punch', 'Blade as drawn');
    await keep.click();
    await page.getByRole('rowheader', { name: /Blade as drawn/ }).waitFor();
    await holds();
  }, LONG);

  it('a table with a wrong column is refused by its name, the rack out and in again changes nothing', async () => {
    await read('racks/demo-rack', 'Add tools from CSV');
    const csv = await (await fetch(`${server.url()}/api/racks/demo-rack/tools.csv`)).text();
    const take = (text: string): Promise<void> => page.getByLabel('Add tools from CSV').setInputFiles({ name: 'tools.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await take(csv.replace('tip_radius', 'tip_size'));
    await page.getByText("tools.csv: The header has a column 'tip_size' that is not known").waitFor();
    await take(csv);
    await page.getByText('Nothing changes: this is what revision 2 of demo-rack says already.').waitFor();
    await take(`${csv}${'x'.repeat(1_000_000)}`);
    await page.getByText(/tools\.csv has 1\.01 MB; such a table is taken up to 0\.95 MB\./).waitFor();
    server.faults.splice(0);
    await holds();
  }, LONG);

  it('a condition record: forces in kN as its check sheet asks, and what was kept is said after the first keep too', async () => {
    await read('floor/deep-throat/condition', 'As the plate says');
    await page.getByLabel('By', { exact: true }).fill('Ann');
    await page.getByLabel('Force reached, kN').fill('1450.5');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/^Kept as revision 1: new\. Nothing is changed since\.$/).waitFor();
    expect(await page.getByLabel('Force reached, kN').inputValue()).toBe('1450.5');
    const { data } = (await (await fetch(`${server.url()}/api/machines/deep-throat/condition`)).json()) as { readonly data: { readonly asFound: { readonly forceReached: number } } };
    expect(data.asFound.forceReached).toBe(1_450_500);
    await holds();
  }, LONG);

  it('a machine as it is typed: faces of its finger and options have fields, kept as a revision', async () => {
    await read('floor/general', 'Options to be had with it');
    await page.getByLabel('Nose height, mm').fill('12');
    await page.locator('.field-fault').getByText("Face 2 (step) must lie on an upright edge of the finger's profile.").waitFor();
    const faces = page.getByRole('group', { name: /^Stop faces of the finger/ });
    await faces.getByLabel('To, mm').first().fill('12');
    await faces.getByLabel('Up from R, from, mm').last().fill('12');
    await page.getByRole('button', { name: 'Add an option' }).click();
    const option = page.getByRole('group', { name: /^Option \d/ }).last();
    await option.getByLabel('Name').fill('Deeper throat');
    await option.getByLabel('Price').fill('9100');
    await option.getByLabel(/^Changes nothing that a plan looks at/).selectOption('the throat');
    await option.getByLabel('Then the throat, mm').fill('520');
    await page.getByRole('button', { name: 'Keep as revision 2' }).click();
    await page.getByText(/^Kept as revision 2: .*gauge, finger, profile, nose height 10 to 12/).waitFor();
    const { data } = (await (await fetch(`${server.url()}/api/machines/general`)).json()) as { readonly data: { readonly options: readonly object[] } };
    expect(data.options.at(-1)).toEqual({ id: expect.stringMatching(/^option \d$/) as unknown, name: 'Deeper throat', price: 9100, effect: { throat: 520 } });
    await holds();
  }, LONG);

  it('the floor as a table through the page: a bad cell by line and column, a changed one as a revision, the rest as it was', async () => {
    await read('floor', 'Save the floor as CSV');
    const [saved] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Save the floor as CSV' }).click()]);
    const csv = readFileSync(await saved.path(), 'utf8');
    expect(saved.suggestedFilename()).toBe('floor.csv');
    const take = (text: string): Promise<void> => page.getByLabel('Take machines in from CSV').setInputFiles({ name: 'mine.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await take(csv.replace(',powered min 4 max 400 speed 600,', ',powered min 4 max 400 speed fast,'));
    await page.getByText('mine.csv: Line 2, x, speed must be a number from 1 to 2000 mm/s ("fast" was given).').waitFor();
    await take(csv.replace(',powered min 4 max 400 speed 600,', ',powered min 4 max 420 speed 600,'));
    await page.getByText('1 taken in, 4 as they were.').waitFor();
    const { data, change } = (await (await fetch(`${server.url()}/api/machines/small-fast`)).json()) as { readonly data: { readonly gauge: { readonly x: object } }; readonly change: string };
    expect([data.gauge.x, change]).toEqual([{ drive: 'powered', min: 4, max: 420, speed: 600 }, 'gauge, x, max 400 to 420']);
    server.faults.splice(0);
    await holds();
  }, LONG);

  it('a machine in two tabs: the second change is refused with what stands, then put on it, and nothing typed is lost', async () => {
    const other = await page.context().browser()!.newPage();
    for (const tab of [page, other]) {
      await tab.goto(`${server.url()}/#/floor/deep-throat`);
      await tab.getByLabel('Throat, mm').waitFor();
    }
    await other.getByLabel('Throat, mm').fill('520');
    await other.getByRole('button', { name: 'Keep as revision 2' }).click();
    await other.getByText('Kept as revision 2: throat 500 to 520.').waitFor();
    await other.close();
    await page.getByLabel('Open height, mm').fill('640');
    await page.getByRole('button', { name: 'Keep as revision 2' }).click();
    await page.getByText("The machine 'deep-throat' stands at revision 2 (local: throat 500 to 520), not at 1, on which this was changed: nothing of it is kept.").waitFor();
    expect(await page.getByRole('button', { name: 'Keep as revision 2' }).isDisabled()).toBe(true);
    await page.getByText('Typed here: open height 630 to 640.').waitFor();
    await page.getByRole('button', { name: 'Put what was typed on revision 2' }).click();
    await page.getByRole('button', { name: 'Keep as revision 3' }).click();
    await page.getByText('Kept as revision 3: open height 630 to 640.').waitFor();
    expect([await page.getByLabel('Throat, mm').inputValue(), await page.getByLabel('Open height, mm').inputValue()]).toEqual(['520', '640']);
    server.faults.splice(0);
    await holds();
  }, LONG);
});
