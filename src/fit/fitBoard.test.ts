import { describe, expect, it } from 'vitest';
import { type Machine, demoFloor, demoRack, inventedGooseneck } from '../shop/index.js';
import { answerInWords } from './answerInWords.js';
import { cheapestInShort, cheapestOfAll, cheapestWords } from './cheapestWords.js';
import { fitBoard } from './fitBoard.js';
import type { FitCell } from './fitCell.js';
import { fitColumns } from './fitColumn.js';

const machine = (id: string): Machine => demoFloor().find((m) => m.id === id)!;

const makes: FitCell = {
  verdict: 'makes', margins: [], spreads: [], reasons: [], remedies: [], seconds: 40, partsAnHour: 95, changeOver: 840, computeSeconds: 0.1, proof: { checked: true, passed: true }, warnings: [], way: null,
};
const withOption: FitCell = {
  ...makes, verdict: 'makes with remedy', reasons: [{ code: 'no stop', sentence: 'No finger reaches it.', bends: ['b1'] }],
  remedies: [{ sentence: 'With powered Z it is made.', confirmed: true, price: 9800, currency: 'EUR', items: [{ kind: 'option', id: 'general/powered Z', name: 'Powered Z', price: 9800, currency: 'EUR' }] }],
};
const parts = [{ name: 'angle', thickness: 1.5, bends: 1 }];

describe('the buyer\'s machine under the id of one of ours', () => {
  const columns = fitColumns([machine('general')], demoRack(), { machines: [{ ...machine('general'), name: 'Buyer\'s press', price: 0 }] });

  it('is another machine: ours keeps its price, and an option bought for one is not on the other', () => {
    const { alone, cheapest } = fitBoard(parts, columns, [[makes, withOption]]);
    // as the demo floor has them: the machine 118,000, its powered Z 9,800
    expect(alone.map((it) => it?.price)).toEqual([118_000, 9_800]);
    expect(cheapest).toMatchObject({ price: 9_800, machines: [{ id: 'general', name: 'Buyer\'s press', price: 0 }], options: [{ id: 'general/powered Z', price: 9_800 }] });
    // a second part that ours makes only with the option: two machines and two options, or what ours costs with it alone
    const both = fitBoard([...parts, ...parts], columns, [[{ ...makes, verdict: 'does not make' }, withOption], [withOption, { ...makes, verdict: 'does not make' }]]);
    expect(both.cheapest!.price).toBe(118_000 + 9_800 + 9_800);
  });

  it('what is said to stand there already costs nothing of ours', () => {
    expect(fitBoard(parts, columns, [[makes, makes]], ['general']).alone.map((it) => it?.price)).toEqual([0, 0]);
    expect(fitBoard(parts, fitColumns([machine('general'), machine('worn')], demoRack()), [[makes, makes]], ['general']).alone.map((it) => it?.price)).toEqual([0, 24_000]);
  });
});

describe('a machine that stands still', () => {
  const crack = 'A crack was found at the throat of this machine: it stands still until a competent person has judged it.';
  const [part] = parts;
  const board = fitBoard([part!], fitColumns([{ ...machine('worn'), beware: [crack, 'Its floor is soft.'] }], demoRack()), [[makes]]);

  it('is told so at its head, in the answer and in the cheapest set, whatever it makes', () => {
    expect(board.machines[0]!.standsStill).toEqual([crack]);
    expect(answerInWords(board)).toBe(`One machine makes this part as it stands: “${machine('worn').name}”. ⚠ “${machine('worn').name}”: ${crack}`);
    expect(cheapestOfAll(board)[0]).toContain(' EUR, ⚠ stands still): ');
    expect(cheapestInShort(board)[0]).toContain('⚠ stands still');
  });
});

describe('tools beyond the rack', () => {
  const [a, b] = ['a', 'b'].map((id): Machine => ({ ...machine('general'), id, name: id, price: 1000 })) as [Machine, Machine];
  const gooseneck = (tang: string, price: number | null = 9_500, currency = 'EUR'): FitCell => {
    const tool = inventedGooseneck({ relief: 40, height: 220, tipRadius: 1, tang })!;
    return { ...withOption, remedies: [{ sentence: 'With a gooseneck it is made.', confirmed: true, items: [{ kind: 'punch', id: tool.id, name: tool.name, price, currency, tool }] }] };
  };
  const no: FitCell = { ...makes, verdict: 'does not make' };
  const two = [{ name: 'left', thickness: 1.5, bends: 1 }, { name: 'right', thickness: 1.5, bends: 1 }];
  const columns = fitColumns([a, b], demoRack());

  it('are paid for once for each tang that asks for one', () => {
    // two machines and two necks of different tangs; of one tang the second machine would bring nothing
    expect(fitBoard(two, columns, [[gooseneck('tang A'), no], [no, gooseneck('tang B')]]).cheapest).toMatchObject({ price: 2 * 1000 + 2 * 9_500, proven: true });
    expect(fitBoard(two, columns, [[gooseneck('tang A'), no], [no, gooseneck('tang A')]]).cheapest).toMatchObject({ price: 2 * 1000 + 9_500, proven: true });
  });

  it('whose price nobody entered are in no sum, and the sum says so', () => {
    const { cheapest } = fitBoard(two, columns, [[makes, no], [no, gooseneck('tang B', null)]]);
    expect(cheapest).toMatchObject({ price: 1000, cannot: [1], unpriced: [{ part: 1, what: 'Gooseneck beyond the rack, tang B, tip radius 1 mm, relief 40 mm, height 220 mm' }] });
    expect(cheapestWords(cheapest, { parts: two }, 'nothing costs less')).toBe('a (1,000 EUR): 1,000 EUR in all, nothing costs less; right is made with Gooseneck beyond the rack, tang B, tip radius 1 mm, relief 40 mm, height 220 mm, whose price is not entered, so it is not in the sum');
    // a change that nobody asked to be counted needs no price
    expect(fitBoard(two, columns, [[makes, no], [makes, gooseneck('tang B', null)]]).cheapest!.unpriced).toBeUndefined();
  });

  it('in another currency than the machine are not added to it', () => {
    const board = fitBoard(two, columns, [[makes, makes], [no, gooseneck('tang B', 9_500, 'USD')]]);
    expect([board.cheapest, board.alone[1]]).toEqual([null, null]);
    expect(board.alone[0]).toMatchObject({ price: 1000, currency: 'EUR' });
    expect(cheapestOfAll(board)).toEqual(['not reckoned, since the prices are in several currencies']);
    // nor to an option of a machine that stands there already
    const option: FitCell = { ...withOption, remedies: [{ sentence: 'With it.', confirmed: true, items: [{ kind: 'option', id: 'a/powered Z', name: 'Powered Z', price: 10, currency: 'EUR' }, ...gooseneck('tang A', 9_500, 'USD').remedies[0]!.items!] }] };
    expect(fitBoard(two.slice(1), fitColumns([a], demoRack()), [[option]], ['a']).cheapest).toBeNull();
    // in its own currency alone it is
    expect(fitBoard(two.slice(1), fitColumns([a], demoRack()), [[gooseneck('tang A', 9_500, 'USD')]], ['a']).cheapest).toMatchObject({ price: 9_500, currency: 'USD' });
  });
});
