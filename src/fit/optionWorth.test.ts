import { describe, expect, it } from 'vitest';
import { demoFloor, demoRack } from '../shop/index.js';
import { type FitCell, notTried } from './fitCell.js';
import { fitColumns } from './fitColumn.js';
import { type OptionWorth, optionColumns, optionWorths } from './optionWorth.js';

const columns = fitColumns([demoFloor().find((m) => m.id === 'general')!], demoRack());
const extra = optionColumns(columns);
const plain: FitCell = { ...notTried(''), verdict: 'makes', reasons: [], seconds: 40 };
/** What the machine's first option is worth to parts made so without it and so with it, in batches of 30. */
const worth = (pairs: readonly (readonly [FitCell, FitCell])[]): OptionWorth => {
  const names = pairs.map((_, i) => `part ${i + 1}`);
  return optionWorths(names, columns, pairs.map(([a]) => [a]), pairs.map(([, b]) => extra.map(() => b)), 30).find((o) => o.id === `general/${extra[0]!.option}`)!;
};

describe('what an option is worth', () => {
  it('the dimension that gains most, of every one that is asked a tolerance', () => {
    // without it d1 is the tightest, with it d2: each for itself gains
    const without: FitCell = { ...plain, spreads: [{ name: 'd1', value: 0.4 }, { name: 'd2', value: 0.3 }] };
    const fitted: FitCell = { ...plain, spreads: [{ name: 'd2', value: 0.25 }, { name: 'd1', value: 0.1 }] };
    expect(worth([[plain, plain], [without, fitted]])).toMatchObject({ nothing: false, tolerance: { part: 'part 2', dimension: 'd1', without: 0.4, with: 0.1 } });
  });

  it('minutes over a batch of each part; a slower plan with it costs nothing', () => {
    // 10 s of 30 parts
    expect(worth([[plain, { ...plain, seconds: 30 }], [plain, { ...plain, seconds: 50 }]]).minutesPerBatch).toBeCloseTo(5, 12);
  });

  it('what it makes possible, what stays open, and nothing', () => {
    const no: FitCell = { ...notTried(''), verdict: 'does not make' };
    const open: FitCell = { ...notTried(''), verdict: 'not decided' };
    expect(worth([[no, plain], [no, no], [open, plain]])).toMatchObject({ makes: ['part 1'], notDecided: ['part 3'], nothing: false });
    expect(worth([[plain, plain], [no, no]])).toMatchObject({ makes: [], nothing: true });
  });
});
