import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type DayPlan, dayPlan } from '../../fit/index.js';
import { demoRack } from '../../shop/index.js';
import { channelTrial } from '../fixture.js';
import { dayPlanPdf } from './dayPlanPdf.js';
import { layoutInWords } from './dayWords.js';
import { has, run } from '../pdfTools.js';

const folder = mkdtempSync(join(tmpdir(), 'brakewright-day-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe.skipIf(!has('pdftotext'))('the day plan on paper', () => {
  it('draws the layout that all parts share, with which part is made where', async () => {
    const trial = channelTrial();
    const other = { ...trial, sheet: { ...trial.sheet, part: { ...trial.sheet.part, name: 'bracket' } } };
    const shared = { trials: [trial, other], length: 415, bound: 400, proven: false, bed: 2000, chosen: [], without: [], counts: { candidates: 1, orders: 1 }, model: 'The least length.', more: [0, 0], serves: [{ station: 'S1', parts: [{ part: 0, steps: [1] }, { part: 1, steps: [1, 2] }] }] };
    const made = dayPlan({ trials: [trial, other], rack: demoRack(), pieces: 1, spares: 0, layout: shared });
    if (!made.ok) throw new Error(made.sentence);
    const file = join(folder, 'shared.pdf');
    writeFileSync(file, await dayPlanPdf(made.value, [trial, other]));
    const read = run('pdftotext', '-layout', file, '-').replace(/\s+/g, ' ');
    const needed = ['All parts on one layout: 415 mm of 2000 mm of bed, the best found; none of its model is shorter than 400 mm', 'which is built once and stays as it is', `S1: ${trial.sheet.part.name}, step 1; bracket, steps 1, 2`, 'bracket: steps 1, 2', '⚠ Each part is planned anew for this layout'];
    expect(needed.filter((s) => !read.includes(s))).toEqual([]);
  });

  it('names what is not planned in, with its reason and the change', async () => {
    const trial = channelTrial();
    const reason = { code: 'clearance', sentence: 'The left flange meets the punch' } as (typeof trial.reasons)[number];
    const hat = { ...trial, verdict: 'makes with remedy' as const, sheet: { ...trial.sheet, part: { ...trial.sheet.part, name: 'hat' } }, reasons: [reason], remedies: [{ sentence: '', confirmed: true, price: 9500, items: [{ kind: 'punch' as const, id: 'g', name: 'A gooseneck', price: 9500, currency: 'EUR' }] }] };
    const made = dayPlan({ trials: [hat, trial], rack: demoRack(), pieces: 1, spares: 0, notRead: [{ part: 'tube.step', sentence: 'It closes into a ring.' }] });
    if (!made.ok) throw new Error(made.sentence);
    const file = join(folder, 'left.pdf');
    writeFileSync(file, await dayPlanPdf(made.value, [hat, trial]));
    const read = run('pdftotext', '-layout', file, '-').replace(/\s+/g, ' ');
    for (const said of ['1 part in', 'Not read: tube.step. It closes into a ring.', 'Not planned in: hat. The left flange meets the punch.', 'Made with: A gooseneck, 9,500 EUR; not planned into the day until that is chosen.']) expect(read).toContain(said);
  });

  it('keeps its sheets and their titles however much is left out', async () => {
    const trial = channelTrial();
    const why = 'The walls close into a ring that no press brake can leave open, and so the part is not bent on any machine of this floor.';
    const made = dayPlan({ trials: [trial], rack: demoRack(), pieces: 1, spares: 0, notRead: Array.from({ length: 30 }, (_, k) => ({ part: `tube ${k + 1}.step`, sentence: why })) });
    if (!made.ok) throw new Error(made.sentence);
    const file = join(folder, 'many.pdf');
    writeFileSync(file, await dayPlanPdf(made.value, [trial]));
    const sheets = run('pdftotext', '-raw', file, '-').split('\f').slice(0, -1);
    expect(sheets.map((words, k) => words.includes(`sheet ${k + 1} of ${sheets.length}`))).toEqual(sheets.map(() => true));
    expect(sheets.length).toBeLessThan(5);
    expect(sheets[0]).toContain('Not read: 30. Each is named after the order, with its reason.');
    const after = sheets.slice(1).join('\n').replace(/\s+/g, ' ');
    expect(after.split(why).length - 1).toBe(30);
  });

  it('on one layout speaks of the parts that are made where one is not', () => {
    const layout = { length: 290.4, bound: 290.4, proven: true, bed: 3050, model: '', stations: [] };
    const stop = {} as DayPlan['stops'][number];
    const left = {} as DayPlan['left'][number];
    expect(layoutInWords(layout, { stops: [stop, stop], left: [left] }, 'mm')).toBe('The 2 parts that are made on one layout: 290.4 mm of 3050 mm of bed, proven the least of its model.');
    expect(layoutInWords(layout, { stops: [stop], left: [left] }, 'mm')).toMatch(/^1 part on one layout/);
  });

  it('says order, kit, blanks, strips, checks and times with their units', async () => {
    const flat = channelTrial();
    const trial = { ...flat, stations: flat.stations.map((s) => ({ ...s, riser: 20 })) };
    const made = dayPlan({ trials: [trial, trial], rack: demoRack(), pieces: 2, spares: 1 });
    if (!made.ok) throw new Error(made.sentence);
    const file = join(folder, 'day.pdf');
    writeFileSync(file, await dayPlanPdf(made.value, [trial, trial], { date: '2026-03-02', buyer: 'Workshop A' }));
    const read = `${run('pdftotext', '-layout', file, '-')} ${run('pdftotext', file, '-')}`.replace(/\s+/g, ' ');
    const needed = [
      // 240 + 600 + 52, then 600 + 52: 1,544 s
      '2 parts in 26 min of work: 2 rows of tools built', 'no order needs fewer', 'Workshop A', '2026-03-02', '2 + 1 spare, 200.00 mm by 154.60 mm', '1.50 mm thick',
      'S1 punch stays', 'none: as for a part before it', 'change over 4 min', 'make ready 10 min', '2 pieces 52 s', 'To check beforehand', 'Guarding:', '21.4 kN predicted',
      'Punches to lay out', '2 × 100 mm', 'at hand', 'Risers to lay out', '20 mm high, seat A: 200 mm of bed at once (4200 mm at hand)', '100 at −100 · 100 at 0 mm', 'whips up', 'not a warranty', 'common practice, no source',
    ];
    expect(needed.filter((s) => !read.includes(s))).toEqual([]);
    expect(read).not.toMatch(/\bsafe\b|guarantee|NaN|undefined|Infinity/i);
  });
});
