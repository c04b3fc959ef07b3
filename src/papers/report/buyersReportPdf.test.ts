import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type FitCell, type PieceRecord, fitBoard, fitColumns, pieceDifferences } from '../../fit/index.js';
import { demoFloor, demoRack, demoShopData, standsStill, withCondition } from '../../shop/index.js';
import { channelTrial } from '../fixture.js';
import { buyersReportPdf } from './buyersReportPdf.js';
import type { ReportData } from './reportData.js';
import { reportWordsOf } from './reportWordsOf.js';
import { siteMachines } from './siteMachines.js';
import { has, run } from '../pdfTools.js';

const folder = mkdtempSync(join(tmpdir(), 'brakewright-report-'));
let file: string;
const textOf = (...how: string[]): string => run('pdftotext', ...how, file, '-');
const flat = (text: string): string => text.replace(/\s+/g, ' ');

const machines = ['general', 'worn'].map((id) => demoFloor().find((m) => m.id === id)!);
const trial = channelTrial();

const yes: FitCell = {
  verdict: 'makes', spreads: [], reasons: [], remedies: [], seconds: 40, partsAnHour: 95, changeOver: 840, computeSeconds: 0.1, proof: { checked: true, passed: true }, warnings: ['Strength of this batch is not known.'], way: null,
  margins: [
    { kind: 'daylight', name: 'opening between punch and die', value: 90, limit: 120, unit: 'mm', share: 0.75, step: 2, source: 'open height less the stack' },
    { kind: 'gauge travel', name: 'R, nearest', value: 20, limit: 5, unit: 'mm', share: 0.7, step: 1, source: 'machine data' },
    { kind: 'force', name: 'force', value: 21_400, limit: 1_100_000, unit: 'N', share: 0.02, step: 1, source: 'machine data' },
  ],
};
const no: FitCell = {
  ...yes, verdict: 'makes with remedy', margins: [], spreads: [], seconds: null, partsAnHour: null, changeOver: null, proof: { checked: false, passed: false }, warnings: [],
  reasons: [{ code: 'clearance', sentence: 'Flange 1 meets the punch body by 14.0 mm.', bends: ['b1'] }],
  remedies: [{
    sentence: 'With a gooseneck beyond the rack (4,100 EUR as entered) it is made in 44.0 s a part.', confirmed: true, price: 4100, seconds: 44,
    items: [{ kind: 'punch', id: 'gooseneck-x', name: 'Gooseneck X', price: 4100, currency: 'EUR' }],
  }],
};

const made = (id: string, serial: string, measured: number): PieceRecord => ({
  id, trialId: 't-1', corrects: null, createdAt: '2026-03-02T10:20:00.000Z', by: 'ann',
  entry: {
    kind: 'piece', serial, batch: 'B7', tools: 'S1: straight over V 12', instrument: 'calliper 12', note: '',
    figures: [{ id: 'd1', kind: 'length', what: 'over all', unit: 'mm', predicted: 80, tolerance: 0.3, measured }],
  },
});
const records = [made('m-1', 'P-001', 80.1), made('m-2', 'P-002', 80.5)];

const option = { machine: 'worn', price: 6100, currency: 'EUR', tolerance: null, notDecided: [] };

const data: ReportData = {
  board: fitBoard([{ name: 'U channel', thickness: 1.5, bends: 2 }], fitColumns(machines, demoRack()), [[yes, no]], [], [
    { ...option, id: 'worn/powered X', name: 'powered X', makes: ['U channel'], minutesPerBatch: 12.5, nothing: false, sentence: 'powered X: it makes U channel possible; it saves 12.5 min over a batch of 50 of each part (predicted).' },
    { ...option, id: 'worn/light curtain', name: 'light curtain', makes: [], minutesPerBatch: 0, nothing: true, sentence: 'light curtain: nothing for these parts.' },
  ]),
  parts: [{ sheet: trial.sheet, flatBy: 'as these tools form it', demo: true }],
  machines, racks: [{ name: 'Shop rack', demo: true }, { name: 'Tools of a buyer', demo: false }], metal: trial.metal, quantity: 50, walk: trial,
  demonstrated: [{ part: 'U channel', machine: 'General', records, differences: pieceDifferences(records) }],
  notRead: [{ part: 'tube.step', sentence: 'The plates close into a ring, which no blank unfolds from.' }],
  typed: { date: '2026-03-02', who: 'demonstrator', buyer: 'Workshop A', delivery: 'Ex floor in week 12.', warranty: 'As agreed in writing.' },
};

describe.skipIf(!has('pdftotext'))("the buyer's report", () => {
  beforeAll(async () => {
    file = join(folder, 'report.pdf');
    writeFileSync(file, await buyersReportPdf(data));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('says verdicts, margins, reasons, remedies and prices, each figure with its unit', () => {
    // in the order of the page and in the order of writing: a column's words stand apart in the first
    const read = `${flat(textOf('-layout'))} ${flat(textOf())}`;
    const needed = [
      'Which machine makes your parts', 'Not read, so not in this report', 'tube.step: The plates close into a ring', 'Cheapest for all these parts', 'One machine makes this part as it stands: “General', 'With the options, tools and passes named also: “Reconditioned',
      'makes 1 of 1 as it stands', 'makes 0 of 1 as it stands. With the options, tools and passes named: 1 of 1', 'Why not the others: sheet meets a tool or the machine (U channel)',
      'Gooseneck X, 4,100 EUR (U channel)', 'What each option buys for these parts', 'powered X on Reconditioned, 6,100 EUR: it makes U channel possible; it saves 12.5 min', "it changes no figure of the machine's data: light curtain on Reconditioned (6,100 EUR).", 'Workshop A', '2026-03-02', 'Planned with the tools at hand: Shop rack (demo); Tools of a buyer.',
      '✓ makes', '↻ makes with remedy', 'daylight 75 % used', '40 s a part',
      '40.0 s', '95 an hour', 'change-over 14 min',
      '21.4 kN of 1100 kN', '90 mm of 120 mm', 'R at 20 mm, nearest 5.00 mm',
      'Flange 1 meets the punch body by 14.0 mm.', '4,100 EUR as entered',
      // the machine's own price and the gooseneck
      `${(machines[1]!.price + 4100).toLocaleString('en-GB')} EUR in all`, 'Gooseneck X (4,100 EUR)',
      'Ex floor in week 12.', 'As agreed in writing.', 'A demo part, invented.', '154.60 mm',
      'Step 1: bend b1, side A up', 'Bend angle 90.0°, included angle 90.0°', 'depth from touch 4.62 mm', 'X axis, set to 38.65 mm',
      'How each figure came about', 'Strength of this batch is not known.', 'two people or supports',
    ];
    expect(needed.filter((s) => !read.includes(s))).toEqual([]);
    expect(read).not.toMatch(/\bsafe\b|guarantee|NaN|undefined|Infinity/i);
  });

  it('gives a page the same words: why not under its heading, what to beware of, what is taken for granted', () => {
    const { why, beware, taken } = reportWordsOf(data);
    expect(why).toEqual([[{ heading: '↻ Why not as it stands: Reconditioned', lines: [
      { sign: '–', words: 'Flange 1 meets the punch body by 14.0 mm.' }, { sign: '→', words: 'Remedy (12): With a gooseneck beyond the rack (4,100 EUR as entered) it is made in 44.0 s a part.' },
    ] }]]);
    expect(beware).toEqual({ ofAll: [], ofPart: [['Strength of this batch is not known.']] });
    expect(taken.at(-1)).toMatch(/^How "cheapest" is counted: The parts at the quantity asked/);
  });

  it('says truly why no cheapest set is reckoned', () => {
    const last = (board: ReportData['board']): string => reportWordsOf({ ...data, board }).taken.at(-1)!;
    expect(last({ ...data.board, cheapest: null, alone: [] })).toBe('How "cheapest" is counted: not reckoned, since not every part has been tried on every machine');
    const two = fitBoard(data.board.parts, fitColumns([machines[0]!, { ...machines[1]!, currency: 'USD' }], demoRack()), [[yes, no]]);
    expect(last(two)).toBe('How "cheapest" is counted: not reckoned, since the prices are in several currencies');
  });

  it('says on its first sheet which machine stands still, at its head, in the answer and in its paragraph', async () => {
    const [crack] = standsStill(withCondition(machines[1]!, { ...demoShopData().conditions[0]!, overhauled: { ...demoShopData().conditions[0]!.overhauled!, throat: 'crack found' } }));
    const board = fitBoard(data.board.parts, fitColumns([{ ...machines[1]!, beware: [crack!] }], demoRack()), [[yes]]);
    const path = join(folder, 'still.pdf');
    writeFileSync(path, await buyersReportPdf({ ...data, board, machines: [machines[1]!], demonstrated: [], walk: null }));
    const first = flat(run('pdftotext', '-l', '1', path, '-'));
    expect(first).toContain(`⚠ “${machines[1]!.name}”: ${crack}`);
    expect(first).toContain(`as it stands. ⚠ ${crack}`);
    // head and cheapest set
    expect(first.split('⚠ stands still').length - 1).toBe(2);
  });

  it('names for the shop each machine once, ours beside the buyer\'s of the same id', () => {
    const [general] = machines;
    const columns = fitColumns([general!], demoRack(), { machines: [{ ...general!, name: 'Old General' }], rack: { ...demoRack(), id: 'theirs' } });
    const board = fitBoard(data.board.parts, columns, [columns.map(() => yes)]);
    expect(columns).toHaveLength(3);
    expect(siteMachines({ board, machines: columns.map(({ machine }) => machine) }).map(({ name }) => name)).toEqual([general!.name, 'Old General (the buyer\'s)']);
  });

  it('keeps what was measured on a sheet of its own', () => {
    const pages = textOf('-layout').split('\f').map(flat);
    const sheets = pages.filter((page) => page.includes('P-001'));
    expect(sheets).toHaveLength(1);
    // 0.1 and 0.5: mean 0.3, deviation 0.283, one of two within 0.3
    expect(['Pieces demonstrated: made and measured, not predicted', '+0.30 mm', '0.28 mm', '+0.10 mm to +0.50 mm', '1 of 2', 'over all: 80.10 mm (+0.10 mm)', 'over all: 80.50 mm (+0.50 mm, ⚠ out of tolerance)', 'ann, 2026-03-02 10:20 UTC', 'calliper 12']
      .filter((s) => !sheets[0]!.includes(s))).toEqual([]);
    expect(sheets[0]).not.toContain('✓ makes');
  });

  it('explains every number in brackets that it prints', () => {
    const pages = (textOf()).split('\f').slice(0, -1);
    const used = new Set(pages.slice(0, -1).flatMap((page) => [...page.matchAll(/\((\d+)\)/g)].map((m) => m[1]!)));
    expect(used.size).toBeGreaterThan(8);
    expect([...used].filter((n) => !new RegExp(`\\(${n}\\) [A-Z]`).test(pages.at(-1)!))).toEqual([]);
  });

  it('leaves no word outside a page and bears the line at the foot on each', () => {
    const xml = textOf('-bbox');
    const pages = [...xml.matchAll(/<page width="([\d.]+)" height="([\d.]+)">/g)];
    expect(pages.length).toBe(5);
    for (const [, x0, y0, x1, y1] of xml.matchAll(/xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)"/g)) {
      expect(Number(x0) >= 0 && Number(y0) >= 0 && Number(x1) <= 842 && Number(y1) <= 595.3, `${x0} ${y0} ${x1} ${y1}`).toBe(true);
    }
    const text = textOf();
    expect(text.split('\f').slice(0, -1).filter((page) => page.includes('Prediction from the data stated; not a warranty'))).toHaveLength(5);
  });
});
