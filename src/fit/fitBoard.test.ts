import { describe, expect, it } from 'vitest';
import { type Machine, demoFloor, demoRack } from '../shop/index.js';
import { fitBoard } from './fitBoard.js';
import type { FitCell } from './fitCell.js';
import { fitColumns } from './fitColumn.js';

const machine = (id: string): Machine => demoFloor().find((m) => m.id === id)!;

const makes: FitCell = {
  verdict: 'makes', margins: [], spreads: [], reasons: [], remedies: [], seconds: 40, partsAnHour: 95, changeOver: 840, computeSeconds: 0.1, proof: { checked: true, passed: true }, warnings: [], way: null,
};
const withOption: FitCell = {
  ...makes, verdict: 'makes with remedy', reasons: [{ code: 'no stop', sentence: 'No finger reaches it.', bends: ['b1'] }],
  remedies: [{ sentence: 'With powered Z it is made.', confirmed: true, price: 9800, items: [{ kind: 'option', id: 'general/powered Z', name: 'Powered Z', price: 9800 }] }],
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
