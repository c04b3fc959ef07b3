import { describe, expect, it } from 'vitest';
import { deductionFor, deductionsFromCsv, deductionsToCsv } from '../../forming/index.js';
import { channelTrial } from '../../papers/fixture.js';
import { demoFloor, demoRack } from '../../shop/index.js';
import { inHits, profilePart } from '../../sheet/index.js';
import { angularTolerance, metalById } from '../../metal/index.js';
import { planTrial } from '../../trial/index.js';
import { expectedFigures } from './expectedFigures.js';
import { measuredDeductions } from './measuredDeductions.js';
import { pieceDifferences } from './pieceDifferences.js';
import { shorterLeg } from './shorterLeg.js';
import { type BentStrip, type MadePiece, type PieceRecord, standing } from './pieceEntry.js';
import { stripFault } from './stripFault.js';
import { withStripRows } from './withStripRows.js';

const trial = channelTrial();
const record = (id: string, entry: PieceRecord['entry'], corrects: string | null = null): PieceRecord =>
  ({ id, trialId: 't-1', entry, corrects, createdAt: '2026-03-02T10:00:00.000Z', by: 'ann' });
const piece = (serial: string, length: number, angle: number): MadePiece => ({
  kind: 'piece', serial, batch: 'B7', tools: '', instrument: '', note: '',
  figures: [
    { id: 'step 1', kind: 'length', what: 'flange 1, outside', unit: 'mm', predicted: 40, tolerance: 0.3, measured: length },
    { id: 'b1', kind: 'bend angle', what: 'bend angle of b1', unit: 'degrees', predicted: 90, tolerance: 0.5, measured: angle },
  ],
});
const strip = (legs: readonly [number, number], bendAngle = 90): BentStrip =>
  ({ kind: 'strip', serial: 's', batch: 'B7', station: 'S1', bendAngle, cut: 100, legs, thickness: 1.48, instrument: '', note: '' });

describe('what is to be measured on a piece', () => {
  it('is each flange and each bend angle, with its tolerance and who asks for it', () => {
    expect(expectedFigures({ ...trial, toleranceClass: 'm' }).map(({ id, predicted, tolerance, unit }) => [id, predicted, tolerance, unit])).toEqual([
      // ISO 2768-1 table 3, class m, shorter leg over 10 up to 50 mm: 30 minutes
      ['step 1', 40, 0.3, 'mm'], ['step 2', 40, 0.3, 'mm'], ['b1', 90, 0.5, 'degrees'], ['b2', 90, 0.5, 'degrees'],
    ]);
  });

  it('is the drawing\'s dimensions where the trial predicts them', () => {
    const spread = { rootSumSquare: 0.2, worstCase: 0.3 };
    const with1 = { ...trial, dimensions: [{ id: 'd1', what: 'over all', value: 80.1, tolerance: null, askedBy: '', firstPiece: spread, batch: spread, contributions: [], notKnown: [], verdict: 'no tolerance' as const }] };
    expect(expectedFigures(with1)[0]).toMatchObject({ id: 'd1', predicted: 80.1, tolerance: null, spread: 0.2 });
    expect(expectedFigures(with1)).toHaveLength(3);
  });

  it('is of a closed hem its length alone: the angle of its pre-bend is there no more', () => {
    const [first, second] = trial.steps;
    const hemmed = { ...trial, steps: [{ ...first!, bendAngle: 144 }, second!, { ...first!, number: 3, kind: 'hem close' as const, bendAngle: 180 }] };
    expect(expectedFigures(hemmed).map(({ id }) => id)).toEqual(['step 1', 'step 2', 'step 3', 'b2']);
  });

  it('holds angles to the class that the trial was asked for', () => {
    const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 200, flanges: [40, 60], turns: [90] });
    if (!made.ok) throw new Error(made.failure.sentence);
    const asked = { part: made.value, machine: demoFloor().find(({ id }) => id === 'general')!, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 };
    const angle = (toleranceClass?: 'c') => {
      const planned = planTrial({ ...asked, ...(toleranceClass && { toleranceClass }) });
      return expectedFigures(planned).find(({ id }) => id === 'b1');
    };
    // ISO 2768-1 table 3, leg over 10 up to 50 mm: 1 degree in class c
    expect(angle('c')).toMatchObject({ tolerance: 1, askedBy: 'ISO 2768-1:1989, table 3, class c, leg 40.0 mm (memory)' });
    // a leg ends where the next bend begins, also where more is bent on behind it: 30 mm over two bends of 45 degrees
    const chain = profilePart({ name: 'chain', thickness: 1.5, insideRadius: 1.5, width: 200, flanges: [40, 60, 30, 50], turns: [90, 45, 45] });
    if (!chain.ok) throw new Error(chain.failure.sentence);
    expect(['b1', 'b2', 'b3'].map((_, b) => shorterLeg(chain.value, b))).toEqual([40, 30, 30].map((leg) => expect.closeTo(leg, 9)));
    expect(expectedFigures(planTrial({ ...asked, part: chain.value, toleranceClass: 'c' })).find(({ id }) => id === 'b2')).toMatchObject({ tolerance: 1, askedBy: 'ISO 2768-1:1989, table 3, class c, leg 30.0 mm (memory)' });
    expect(angle()).toMatchObject({ tolerance: null, askedBy: 'nobody' });
  });
});

describe('a bend of many hits', () => {
  it('is measured as the one bend of the drawing, and not after each hit', () => {
    const drawn = profilePart({ name: 'round', thickness: 0.8, insideRadius: 24, width: 100, flanges: [60, 80], turns: [90] });
    const hits = drawn.ok ? inHits(drawn.value, 0, 6, 1) : drawn;
    if (!hits.ok) throw new Error(hits.failure.sentence);
    const [step] = trial.steps;
    const rolled = {
      ...trial, toleranceClass: 'c' as const, dimensions: [], sheet: { ...trial.sheet, part: hits.value },
      steps: hits.value.bends.map(({ id, bendAngle }, k) => ({ ...step!, number: k + 1, bends: [id], bendAngle })),
    };
    // ISO 2768-1 table 3, class c, shorter leg over 50 up to 120 mm: 30 minutes
    expect(expectedFigures(rolled)).toEqual([expect.objectContaining({ id: 'b1', what: 'bend angle of b1', predicted: expect.closeTo(90, 9) as number, tolerance: 0.5 })]);
  });

  it('an angle whose leg is worked out to a hair over a row of the table stays in it', () => {
    expect([50, 50 + 1e-12, 50.001].map((leg) => angularTolerance(leg, 'c').tolerance)).toEqual([1, 1, 0.5]);
  });
});

describe('how pieces differ from the prediction', () => {
  it('mean, spread and how many hold, of the entries that stand', () => {
    const records = [record('m-1', piece('1', 40.1, 90.5)), record('m-2', piece('2', 99, 91)), record('m-3', piece('2', 40.3, 91), 'm-2'), record('m-4', piece('3', 40.5, 89.7))];
    expect(standing(records).map(({ id }) => id)).toEqual(['m-1', 'm-3', 'm-4']);
    const [length, angle] = pieceDifferences(records);
    // 0.1, 0.3, 0.5: mean 0.3, deviation 0.2; within 0.3: two
    expect(length).toMatchObject({ id: 'step 1', count: 3, within: 2 });
    expect(length!.mean).toBeCloseTo(0.3, 9);
    expect(length!.deviation).toBeCloseTo(0.2, 9);
    expect([length!.least, length!.most].map((d) => d.toFixed(2))).toEqual(['0.10', '0.50']);
    // 0.5, 1.0, -0.3: mean 0.4; within 0.5: two
    expect(angle!.mean).toBeCloseTo(0.4, 9);
    expect(angle!.within).toBe(2);
  });

  it('says no spread of a single piece, and nothing of none', () => {
    expect(pieceDifferences([record('m-1', piece('1', 40.1, 90))])[0]).toMatchObject({ count: 1, deviation: null });
    expect(pieceDifferences([record('m-1', strip([51, 51]))])).toEqual([]);
  });
});

describe('what strips say of the deduction', () => {
  const records = [record('m-1', strip([51.4, 51.2])), record('m-2', strip([51.3, 51.1], 90.2)), record('m-3', strip([50.9, 50.7], 60))];
  const rows = measuredDeductions(trial, records);

  it('a row for each station and angle: both legs less the cut length', () => {
    // 2.6 and 2.4 at about 90 degrees, 1.6 at 60
    expect(rows.map((r) => [r.bendAngle.toFixed(1), r.deduction.toFixed(2), r.pieces, r.spread.toFixed(2)])).toEqual([['90.1', '2.50', 2, '0.10'], ['60.0', '1.60', 1, '0.00']]);
    expect(rows[0]).toMatchObject({ metal: 'dc01', thickness: 1.5, v: 12, tipRadius: 1 });
  });

  it('a strip of other sheet, or one whose legs cannot be, is no row; each says why with both figures', () => {
    const thick = { ...strip([51.4, 51.2]), thickness: 16 };
    const cut = strip([51.4, 41.2]);
    expect(measuredDeductions(trial, [...records, record('m-4', thick), record('m-5', cut)])).toEqual(rows);
    expect(stripFault(trial, strip([51.4, 51.2]))).toBeNull();
    expect(stripFault(trial, thick)).toBe('The strip is 16.00 mm thick and the sheet of this plan 1.50 mm: only a strip of the same sheet, within 15 %, tells its deduction.');
    expect(stripFault(trial, cut)).toMatch(/^Legs of 51\.40 and 41\.20 mm out of 100\.00 mm make a deduction of -7\.40 mm, where about 2\.\d\d mm is calculated at this bend angle; more than 1\.00 mm/);
  });

  it('kept again after one more strip, or one put right, the table counts each strip once', () => {
    const first = [record('m-1', strip([51.4, 51.2])), record('m-2', strip([51.0, 51.2]))];
    const kept = withStripRows([], measuredDeductions(trial, first));
    const more = withStripRows(kept, measuredDeductions(trial, [...first, record('m-3', { ...strip([51.5, 51.3]), thickness: 1.52 })]));
    expect(more.map(({ pieces, deduction }) => [pieces, deduction.toFixed(2)])).toEqual([[3, '2.53']]);
    const right = withStripRows(more, measuredDeductions(trial, [...first, record('m-3', { ...strip([51.4, 51.2]), batch: 'B8' }, 'm-2')]));
    expect(right.map(({ pieces, deduction }) => [pieces, deduction.toFixed(2)])).toEqual([[2, '2.60']]);
    // what others told stays: another trial's, another metal's, a row typed by hand
    const others = [{ ...right[0]!, metal: 'other' }, { ...right[0]!, note: 'test strips of trial t-2, batch B7, 1.50 mm thick as measured' }, { ...right[0]!, note: 'by hand' }];
    expect(withStripRows([...others, ...right], right)).toEqual([...others, ...right]);
  });

  it('written as the shop\'s table it overrides the calculation of the next plan', () => {
    const read = deductionsFromCsv(deductionsToCsv(rows));
    if (!read.ok) throw new Error(read.sentence);
    const [row] = rows;
    const strip90 = { insideRadius: 1.9, deduction: 9, allowance: 9 } as Parameters<typeof deductionFor>[2];
    const answer = deductionFor(read.rows, { metal: 'dc01', thickness: 1.5, v: 12, vConvention: row!.vConvention, tipRadius: 1, bendAngle: 90 }, strip90);
    expect(answer).toMatchObject({ source: 'measured' });
    expect(answer.deduction).toBeCloseTo(2.5, 6);
  });
});
