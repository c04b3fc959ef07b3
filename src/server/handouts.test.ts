import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { has, run } from '../papers/pdfTools.js';
import { demoShopData } from '../shop/index.js';
import type { FitView } from './index.js';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const server = askedServer('handouts', 'ann');
const { ask, post } = server;
let fit: FitView;
let trialIds: string[];

const keep = async (name: string, flanges: readonly number[], turns: readonly number[]): Promise<string> => {
  const { body } = await post('/api/parts', { profile: { name, thickness: 1.5, insideRadius: 1.5, width: 100, flanges, turns } });
  return (body as { readonly parts: readonly { readonly id: string }[] }).parts[0]!.id;
};

/** Two easy parts on one machine, planned and proved in the real workers. */
beforeAll(async () => {
  const partIds = [await keep('angle', [40, 60], [90]), await keep('long angle', [50, 70], [90])];
  const asked = await post('/api/fits', { partIds, machineIds: ['general'], metalId: 'dc01', quantity: 20, toleranceClass: null, seconds: 20 });
  const { id } = asked.body as { readonly id: string };
  do {
    await new Promise((later) => setTimeout(later, 100));
    fit = (await ask(`/api/fits/${id}`)).body;
  } while (fit.endedAt === null);
  trialIds = fit.cells.map((row) => row[0]!.trialId!);
});

describe('pieces', () => {
  interface Pieces {
    readonly expected: readonly { readonly id: string; readonly kind: string; readonly predicted: number }[];
    readonly tools: string;
    readonly records: readonly { readonly id: string; readonly by: string; readonly corrects: string | null; readonly entry: { readonly tools: string } }[];
    readonly differences: readonly { readonly id: string; readonly count: number; readonly mean: number }[];
  }
  const pieces = async (): Promise<Pieces> => (await ask(`/api/trials/${trialIds[0]}/pieces`)).body;

  test('are written down beside what was predicted, corrected by another entry, and told with mean and spread', async () => {
    const { expected, tools, records } = await pieces();
    expect(records).toEqual([]);
    const length = expected.find(({ kind }) => kind === 'length')!;
    const angle = expected.find(({ kind }) => kind === 'bend angle')!;
    expect(angle).toMatchObject({ id: 'b1', predicted: 90 });
    const piece = (value: number, more: object = {}): object =>
      ({ kind: 'piece', serial: 'P-1', batch: 'B7', measured: [{ id: length.id, value }, { id: 'b1', value: 90.4 }], ...more });
    const first = await post(`/api/trials/${trialIds[0]}/pieces`, piece(length.predicted + 2));
    expect(first.status).toBe(201);
    const { id } = first.body as { readonly id: string };
    expect((await post(`/api/trials/${trialIds[0]}/pieces`, piece(length.predicted + 0.2, { corrects: id }))).status).toBe(201);
    expect((await post(`/api/trials/${trialIds[0]}/pieces`, piece(length.predicted, { corrects: id }))).status).toBe(409);
    const after = await pieces();
    expect(after.records.map(({ by, corrects, entry }) => [by, corrects, entry.tools])).toEqual([['ann', null, tools], ['ann', id, tools]]);
    const told = after.differences.find((d) => d.id === length.id)!;
    expect(told.count).toBe(1);
    expect(told.mean).toBeCloseTo(0.2, 9);
    expect(after.differences.find((d) => d.id === 'b1')!.mean).toBeCloseTo(0.4, 9);
  });

  test('strips give the shop\'s table of measured deductions', async () => {
    expect((await ask(`/api/trials/${trialIds[0]}/deductions.csv`)).status).toBe(404);
    const strip = { kind: 'strip', serial: 'S-1', batch: 'B7', station: 'S1', bendAngle: 90, cut: 100, legs: [51.3, 51.2], thickness: 1.49 };
    expect((await post(`/api/trials/${trialIds[0]}/pieces`, strip)).status).toBe(201);
    const csv = await (await fetch(`${server.url}/api/trials/${trialIds[0]}/deductions.csv`)).text();
    const [head, row] = csv.trim().split('\n').map((line) => line.split(','));
    // 51.3 + 51.2 - 100
    expect(Number(row![head!.indexOf('deduction_mm')])).toBeCloseTo(2.5, 3);
    expect(row![head!.indexOf('metal')]).toBe('dc01');
  });

  test('a strip of other sheet or with impossible legs is refused with both figures', async () => {
    const strip = { kind: 'strip', serial: 'S-2', batch: 'B7', station: 'S1', bendAngle: 90, cut: 100, legs: [51.3, 51.2], thickness: 1.49 };
    const refused = async (wrong: object): Promise<readonly [number, string]> => {
      const { status, body } = await post(`/api/trials/${trialIds[0]}/pieces`, { ...strip, ...wrong });
      return [status, (body as { readonly error: string }).error];
    };
    expect(await refused({ thickness: 16 })).toEqual([422, expect.stringContaining('16.00 mm thick and the sheet of this plan 1.50 mm')]);
    expect(await refused({ legs: [80, 10] })).toEqual([422, expect.stringContaining('a deduction of -10.00 mm')]);
  });

  test('what does not fit the trial is refused in a sentence', async () => {
    const wrong = async (body: object): Promise<readonly [number, string]> => {
      const { status, body: told } = await post(`/api/trials/${trialIds[0]}/pieces`, { kind: 'piece', serial: 'P', batch: '', ...body });
      return [status, (told as { readonly error: string }).error];
    };
    expect(await wrong({ measured: [{ id: 'd99', value: 1 }] })).toEqual([422, expect.stringContaining("no figure 'd99'")]);
    expect((await wrong({ measured: [] }))[0]).toBe(400);
    expect((await wrong({ serial: ' ', measured: [{ id: 'b1', value: 1 }] }))[0]).toBe(400);
    expect((await wrong({ measured: [{ id: 'b1', value: 90 }], corrects: 'm-none' }))[0]).toBe(404);
    expect((await post('/api/trials/t-none/pieces', { kind: 'piece', serial: 'P', batch: '', measured: [{ id: 'b1', value: 90 }] })).status).toBe(404);
  });
});

describe('who stands on a paper that a link opens, which sends no name', () => {
  const author = async (path: string): Promise<string | undefined> => {
    const pdf = Buffer.from(await (await fetch(`${server.url}${path}`)).arrayBuffer()).toString('latin1');
    const [, object] = /\/Author (\d+) 0 R/.exec(pdf) ?? [];
    return new RegExp(`\n${object} 0 obj\n\\((.*)\\)\n`).exec(pdf)?.[1];
  };

  test('is whoever ran the trial or asked for the fit, or whom the page names', async () => {
    expect(await author(`/api/trials/${trialIds[0]}/setup-sheet.pdf`)).toBe('ann');
    expect(await author(`/api/fits/${fit.id}/report.pdf`)).toBe('ann');
    expect(await author(`/api/day-plan.pdf?trials=${trialIds.join(',')}&who=bea`)).toBe('bea');
  });
});

describe('the report of a fit', () => {
  test('says the answer, keeps what was made apart, and is a PDF', async () => {
    const query = new URLSearchParams({ buyer: 'Workshop A', delivery: 'Week 12.' });
    const { body } = await ask(`/api/fits/${fit.id}/report?${query}`);
    const told = body as { readonly answer: string; readonly walkTrialId: string; readonly demonstrated: readonly { readonly part: string; readonly records: readonly object[] }[]; readonly typed: object; readonly how: readonly object[]; readonly why: readonly (readonly object[])[]; readonly beware: { readonly ofAll: readonly string[] }; readonly taken: readonly string[]; readonly all: boolean };
    expect(told.answer).toMatch(/^One machine makes both parts as it stands: “General/);
    expect(trialIds).toContain(told.walkTrialId);
    // the corrected entry is not counted, the strip is no piece
    expect(told.demonstrated.map(({ part, records }) => [part, records.length])).toEqual([['angle', 1]]);
    expect(told.typed).toMatchObject({ buyer: 'Workshop A', delivery: 'Week 12.' });
    expect(told.how.length).toBeGreaterThan(10);
    // one machine, which makes both
    expect(told.why).toEqual([[], []]);
    expect([told.beware.ofAll.length > 0, told.taken.some((words) => words.startsWith('How "cheapest" is counted')), told.all]).toEqual([true, true, true]);
    const pdf = await fetch(`${server.url}/api/fits/${fit.id}/report.pdf?${query}`);
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(Buffer.from(await pdf.arrayBuffer()).subarray(0, 5).toString()).toBe('%PDF-');
    expect((await ask(`/api/fits/${fit.id}/report?walk=t-none`)).status).toBe(422);
    expect((await ask('/api/fits/f-none/report')).status).toBe(404);
  });
});

describe('a day plan', () => {
  test('orders the trials of one machine, and is a PDF', async () => {
    const { body } = await ask(`/api/day-plan?trials=${trialIds.join(',')}&pieces=2&spares=1`);
    const day = body as { readonly trialIds: readonly string[]; readonly partIds: readonly string[]; readonly stops: readonly { readonly part: string; readonly blanks: object }[]; readonly kit: readonly object[]; readonly checks: readonly string[] };
    expect([...day.trialIds].sort()).toEqual([...trialIds].sort());
    for (const [k, id] of day.trialIds.entries()) expect(day.partIds[k]).toBe(((await ask(`/api/trials/${id}`)).body as { readonly partId: string }).partId);
    expect(day.stops[0]!.blanks).toMatchObject({ pieces: 2, spares: 1, thickness: 1.5 });
    expect(day.kit.length).toBeGreaterThan(1);
    expect(day.checks.join(' ')).toContain('Guarding');
    const pdf = await fetch(`${server.url}/api/day-plan.pdf?trials=${trialIds.join(',')}`);
    expect(Buffer.from(await pdf.arrayBuffer()).subarray(0, 5).toString()).toBe('%PDF-');
    expect((await ask('/api/day-plan?trials=t-none')).status).toBe(404);
    expect((await ask(`/api/day-plan/layout.svg?trials=${trialIds.join(',')}`)).status).toBe(422);
    expect((await ask('/api/day-plan?trials=')).status).toBe(400);
    expect(await ask(`/api/day-plan?trials=${trialIds.join(',')}&bed=900`)).toMatchObject({ status: 400, body: { error: expect.stringMatching(/^'bed' .* layout=one\.$/) } });
  });

  test('stands its parts on one layout where asked, and draws it', async () => {
    const query = `trials=${trialIds.join(',')}&layout=one`;
    const { body, status } = await ask(`/api/day-plan?${query}`);
    expect(status).toBe(200);
    const { layout, changes, stops } = body as { readonly layout: { readonly length: number; readonly proven: boolean; readonly stations: readonly { readonly parts: readonly { readonly part: string }[] }[] }; readonly changes: number; readonly stops: readonly { readonly stations: readonly object[] }[] };
    expect(layout.proven).toBe(true);
    expect([...new Set(layout.stations.flatMap(({ parts }) => parts.map(({ part }) => part)))].length).toBe(stops.length);
    // built once, then nothing is touched
    expect(changes).toBe(2 * layout.stations.length);
    // bent by a sheet of this plan, not by the trial's own
    const sheet = async (path: string): Promise<Response> => fetch(`${server.url}/api/day-plan/setup-sheet.pdf?${path}`);
    expect((await sheet(`${query}&trial=t-none`)).status).toBe(404);
    const file = join(server.dataDir, 'one layout.pdf');
    writeFileSync(file, Buffer.from(await (await sheet(`${query}&trial=${trialIds[1]}`)).arrayBuffer()));
    if (has('pdftotext')) expect(run('pdftotext', file, '-')).toContain('long angle');
    const drawn = await fetch(`${server.url}/api/day-plan/layout.svg?${query}`);
    expect([drawn.headers.get('content-type'), (await drawn.text()).includes('angle: step 1')]).toEqual([expect.stringContaining('image/svg+xml'), true]);
  }, 120_000);
});

test('what is found of a machine after a plan was made is told with the plan, its fit, its day and its sheet', async () => {
  const [record] = demoShopData().conditions;
  const still = async (): Promise<readonly (readonly string[])[]> => [
    ((await ask(`/api/trials/${trialIds[0]}`)).body as { readonly standsStill: readonly string[] }).standsStill,
    ((await ask(`/api/fits/${fit.id}`)).body as FitView).machines[0]!.standsStill ?? [],
  ];
  expect(await still()).toEqual([[], []]);
  expect((await post('/api/machines/general/condition', { data: { ...record, machineId: 'general', overhauled: null, asFound: { ...record!.asFound, throat: 'crack found', guarding: 'present' } } })).status).toBe(201);
  const crack = 'A crack was found at the throat of this machine: it stands still until a competent person has judged it.';
  expect(await still()).toEqual([[crack], [crack]]);
  expect(((await ask(`/api/fits/${fit.id}`)).body as FitView).answer).toContain(crack);
  expect(((await ask(`/api/fits/${fit.id}/report`)).body as FitView).answer).toContain(crack);
  expect(((await ask(`/api/day-plan?trials=${trialIds.join(',')}`)).body as { readonly checks: readonly string[] }).checks[0]).toBe(`⚠ ${crack}`);
  if (!has('pdftotext')) return;
  const file = join(server.dataDir, 'sheet.pdf');
  writeFileSync(file, Buffer.from(await (await fetch(`${server.url}/api/trials/${trialIds[0]}/setup-sheet.pdf`)).arrayBuffer()));
  expect(run('pdftotext', file, '-').replace(/\s+/g, ' ')).toContain(crack);
});
