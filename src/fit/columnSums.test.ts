import { describe, expect, it } from 'vitest';
import { answerInWords } from './answerInWords.js';
import { columnSum } from './columnSums.js';
import { type FitCell, notTried } from './fitCell.js';

const yes: FitCell = { ...notTried(''), verdict: 'makes', reasons: [] };
const no = (code: FitCell['reasons'][number]['code'], ...remedies: readonly (readonly [name: string, price: number])[]): FitCell => ({
  ...yes, verdict: remedies.length > 0 ? 'makes with remedy' : 'does not make', reasons: [{ code, sentence: 'It does not.', bends: [] }],
  remedies: remedies.map(([name, price]) => ({ sentence: 'With it.', confirmed: true, price, items: [{ kind: 'option', id: name, name, price }] })),
});
const machines = (...names: string[]) => names.map((name) => ({ name, whose: 'ours' as const }));

describe('what a column says', () => {
  it('counts, groups the reasons and the cheapest change of each part, the frequent first', () => {
    const sum = columnSum([yes, no('force'), no('no stop', ['powered R', 900], ['split', 0]), no('daylight', ['tall frame', 700]), no('no stop', ['powered R', 900]), { ...yes, verdict: 'not decided' }, null]);
    expect([sum.makes, sum.withChange, sum.no, sum.open]).toEqual([1, 3, 1, 2]);
    expect(sum.why.map(({ parts }) => parts)).toEqual([[2, 4], [1], [3]]);
    expect(sum.changes).toEqual([{ words: 'powered R', price: 900, parts: [2, 4] }, { words: 'tall frame', price: 700, parts: [3] }]);
    expect(sum.noHelp).toEqual([1]);
  });
});

describe('the sentence at the head', () => {
  const said = (...columns: readonly (readonly (FitCell | null)[])[]): string =>
    answerInWords({ parts: columns[0]!, machines: machines('A', 'B').slice(0, columns.length), cells: columns[0]!.map((_, p) => columns.map((c) => c[p]!)) });
  it('names who makes all, or the most, and with what', () => {
    expect(said([yes, yes], [yes, no('no stop', ['powered R', 1])])).toBe('One machine makes all 2 parts as it stands: A. With a change also: B.');
    expect(said([yes, no('force')], [yes, no('no stop', ['powered R', 1])])).toBe('No machine makes all 2 parts as it stands. The most are made by A; B: 1 of 2. With the changes named, all 2 parts: B.');
    expect(said([yes, no('force'), no('force')], [yes, yes, no('force')])).toBe('No machine makes all 3 parts as it stands. The most are made by B: 2 of 3.');
    expect(said([yes, null])).toBe('No machine is shown to make all 2 parts; on A something is not decided. The most are made by A: 1 of 2.');
    expect(said([no('force')])).toBe('No machine makes this part as it stands.');
  });
});
