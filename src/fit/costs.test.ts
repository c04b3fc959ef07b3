import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { changeInShort } from './changeInShort.js';
import { costWords, costsOf } from './costs.js';
import { remedyCandidates } from './remedyCandidates.js';

it('adds up within a currency and never across two', () => {
  const eur = (price: number | null) => ({ price, currency: 'EUR' });
  expect(costWords(costsOf([eur(9500), { price: 4800, currency: 'USD' }, eur(500), { price: 0 }]))).toBe('10,000 EUR + 4,800 USD');
  expect([costWords(costsOf([{ price: 0 }])), costWords(costsOf([eur(1), eur(null)]))]).toEqual(['', 'price not entered']);
});

it('a change told in short has the currency of what is bought, or says that no price was entered', () => {
  const told = (price: number | null): string | null => changeInShort({
    verdict: 'makes with remedy', remedies: [{ sentence: 'With it.', confirmed: true, items: [{ kind: 'die', id: 'd', name: 'V 12 die', price, currency: 'USD' }] }],
  });
  expect([told(3600), told(null)]).toEqual(['made with: V 12 die, 3,600 USD', 'made with: V 12 die, price not entered']);
});

it('a tool beyond the rack costs what the rack says, and is invented only where the rack is', () => {
  const part = profilePart({ name: 'angle', thickness: 2, insideRadius: 2, width: 100, flanges: [8, 40], turns: [90] });
  if (!part.ok) throw new Error(part.failure.sentence);
  const { pricesBeyond: _, ...rack } = { ...demoRack(), demo: false, currency: 'GBP' };
  const machine = demoFloor().find(({ id }) => id === 'general')!;
  const die = (given: typeof rack): readonly [number | null, string | undefined, string | undefined] => {
    const input = { part: part.value, machine, rack: given, metal: metalById('dc01')!, quantity: 1 };
    const { item, words } = remedyCandidates(input, [{ code: 'short flange', sentence: 'Short.', bends: ['b1'] }]).find((c) => c.item.kind === 'die')!;
    return [item.price, item.currency, /\((.*)\)/.exec(words)?.[1]];
  };
  expect(die(rack)).toEqual([null, 'GBP', 'price not entered']);
  expect(die({ ...rack, ...{ pricesBeyond: { die: 3200 } } })).toEqual([3200, 'GBP', '3,200 GBP as entered']);
  expect(die(demoRack())).toEqual([3600, 'EUR', '3,600 EUR, invented for demonstration']);
});
