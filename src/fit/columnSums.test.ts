import { describe, expect, it } from 'vitest';
import { answerInWords } from './answerInWords.js';
import { changeInShort } from './changeInShort.js';
import { changeSigns } from './changeSigns.js';
import { columnSum } from './columnSums.js';
import { type FitCell, notTried } from './fitCell.js';

const yes: FitCell = { ...notTried(''), verdict: 'makes', reasons: [] };
type Kind = NonNullable<FitCell['remedies'][number]['items']>[number]['kind'];
const no = (code: FitCell['reasons'][number]['code'], ...remedies: readonly (readonly [name: string, price: number, kind?: Kind])[]): FitCell => ({
  ...yes, ...(remedies.length === 0 && { inVain: 'Tried in vain: all.' }), verdict: remedies.length > 0 ? 'makes with remedy' : 'does not make', reasons: [{ code, sentence: 'It does not.', bends: [] }],
  remedies: remedies.map(([name, price, kind = 'option']) => ({ sentence: 'With it.', confirmed: true, price, items: [{ kind, id: name, name, price, currency: 'EUR' }] })),
});
const machines = (...names: string[]) => names.map((name) => ({ name, whose: 'ours' as const }));

describe('what a column says', () => {
  it('counts, groups the reasons and the cheapest change of each part, the frequent first', () => {
    const sum = columnSum([yes, no('force'), no('no stop', ['powered R', 900], ['split', 0]), no('daylight', ['tall frame', 700]), no('no stop', ['powered R', 900]), { ...yes, verdict: 'not decided' }, null]);
    expect([sum.makes, sum.changed['as drawn'], sum.no, sum.open]).toEqual([1, 3, 1, 2]);
    expect(sum.why.map(({ parts }) => parts)).toEqual([[2, 4], [1], [3]]);
    expect(sum.changes).toEqual([{ words: 'powered R', cost: '900 EUR', parts: [2, 4], kind: 'as drawn', terms: '' }, { words: 'tall frame', cost: '700 EUR', parts: [3], kind: 'as drawn', terms: '' }]);
    expect(sum.noHelp).toEqual([1]);
  });

  it('a part that only a line scribed by eye helps is not told as one that nothing helps', () => {
    const byEye = { ...no('no stop', ['a line scribed by hand', 0, 'scribed line']), verdict: 'does not make' as const };
    expect(columnSum([byEye, no('force'), yes])).toMatchObject({ makes: 1, no: 2, byEye: [0], noHelp: [1], changes: [] });
  });

  it('a part for which the looking was broken off is not told as one that nothing helps', () => {
    const cut = { ...no('force'), remediesCut: true as const };
    expect(columnSum([cut, no('force')])).toMatchObject({ no: 2, noHelp: [1], cut: [0] });
    const byEye = { ...no('no stop', ['a line scribed by hand', 0, 'scribed line']), verdict: 'does not make' as const, remediesCut: true as const };
    expect([columnSum([byEye]).byEye, columnSum([byEye]).cut, columnSum([byEye]).noHelp]).toEqual([[0], [0], []]);
    expect(changeInShort(byEye)).toBe('only by eye to a scribed line; what else helps was not looked for to the end');
    expect([changeInShort(cut), changeInShort(no('force'))]).toEqual(['what helps was not looked for to the end', 'nothing looked at helps']);
    const { inVain: _, ...unasked } = no('force');
    expect([columnSum([unasked]).cut, changeInShort(unasked)]).toEqual([[0], 'what helps was not looked for']);
  });

  it('tells apart what is made as drawn, only by another drawing, only as two joined parts, only by another machine', () => {
    const sum = columnSum([yes, no('tolerance', ['class v', 0, 'tolerance']), no('clearance', ['in two at b2', 0, 'split']), no('no stop', ['powered R', 900], ['class v', 0, 'tolerance']), no('daylight', ['opens to 600', 0, 'daylight'])]);
    expect(sum.changed).toEqual({ 'as drawn': 1, 'other drawing': 1, 'in two': 1, 'other machine': 1 });
    expect(sum.levels.map(({ made }) => made)).toEqual([1, 2, 3, 4]);
    expect(sum.changes.map(({ words }) => words)).toEqual(['powered R', 'class v', 'in two at b2', 'opens to 600']);
    // of the powered R and the coarser class the one that leaves the drawing
    const signs = [no('tolerance', ['class v', 0, 'tolerance']), no('clearance', ['in two at b2', 0, 'split']), no('no stop', ['powered R', 900], ['class v', 0, 'tolerance']), no('daylight', ['opens to 600', 0, 'daylight']), no('clearance', ['b1', 0, 'two passes'])];
    expect(signs.map((cell) => changeSigns(cell).map(({ word }) => word).join(', '))).toEqual(['other drawing', 'made in two', 'with a purchase', 'other machine', 'in two passes']);
    // both parts' own purchase stands beside the seam
    const joined = no('no stop', ['in two', 0, 'split']);
    const bought = { ...joined, remedies: [{ ...joined.remedies[0]!, items: [...joined.remedies[0]!.items!, { kind: 'option' as const, id: 'R', name: 'powered R', price: 900, currency: 'EUR' }] }] };
    expect(changeSigns(bought).map(({ word }) => word)).toEqual(['made in two', 'with a purchase']);
    expect([yes, no('force'), { ...no('force', ['a line', 0, 'scribed line']), verdict: 'does not make' as const }].map(changeSigns)).toEqual([[], [], []]);
  });
});

describe('the sentence at the head', () => {
  const said = (...columns: readonly (readonly (FitCell | null)[])[]): string =>
    answerInWords({ parts: columns[0]!.map((_, p) => ({ name: `part ${p + 1}` })), machines: machines('A', 'B', 'C', 'D').slice(0, columns.length), cells: columns[0]!.map((_, p) => columns.map((c) => c[p]!)) });
  it('names who makes all, or the most, and with what', () => {
    expect(said([yes, yes], [yes, no('no stop', ['powered R', 1])])).toBe('One machine makes both parts as it stands: “A”. With the options, tools and passes named also: “B”.');
    expect(said([yes, no('force')], [yes, no('no stop', ['powered R', 1])])).toBe('No machine makes both parts as it stands. The most are made by “A” and “B”: 1 of 2 each. With the options, tools and passes named, both parts: “B”.');
    expect(said([yes, no('force'), no('force')], [yes, yes, no('force')])).toBe('No machine makes all 3 parts as it stands. The most are made by “B”: 2 of 3. Made by none, and nothing looked at helps: part 3.');
    expect(said([yes, null])).toBe('No machine is shown to make both parts; on “A” something is not decided. The most are made by “A”: 1 of 2.');
    expect(said([yes, no('tolerance', ['class v', 0, 'tolerance']), no('clearance', ['in two', 0, 'split'])], [yes, no('no stop', ['powered R', 1]), no('force')])).toBe(
      'No machine makes all 3 parts as it stands. The most are made by “A” and “B”: 1 of 3 each. With the options, tools and passes named, the most: “B”, 2 of 3. If parts may also be made in two and joined, all 3 parts: “A”.',
    );
    expect(said([yes, no('force')], [no('force'), yes], [yes, no('force')], [yes, no('force')])).toBe('No machine makes both parts as it stands. Each of the 4 machines makes 1 of 2.');
    // one not looked at to its end, one not decided on the one and no on the other: nothing is said of them together
    expect(said([yes, { ...no('force'), remediesCut: true }, { ...yes, verdict: 'not decided' }], [yes, no('force'), no('force')])).not.toContain('none');
    expect(said([yes, { ...yes, verdict: 'not decided' }], [yes, { ...yes, verdict: 'not decided' }])).toContain(' Not decided on any: part 2.');
    expect(said([...Array.from({ length: 5 }, () => no('force')), yes], [...Array.from({ length: 5 }, () => no('force')), yes])).toContain(' Made by none, and nothing looked at helps: 5 of the parts.');
    expect(said([no('force')])).toBe('No machine makes this part as it stands.');
  });
});
