import { expect, it } from 'vitest';
import { fitBoard, fitColumns, notTried } from '../fit/index.js';
import { demoFloor, demoRack, demoShopData, withCondition } from '../shop/index.js';
import { fitInWords } from './fitWords.js';

it('says under the board which machine stands still', () => {
  const [record] = demoShopData().conditions;
  const worn = withCondition(demoFloor().find(({ id }) => id === 'worn')!, { ...record!, overhauled: { ...record!.overhauled!, guarding: 'missing' } });
  const board = fitBoard([{ name: 'angle', thickness: 1.5, bends: 1 }], fitColumns([worn], demoRack()), [[{ ...notTried(''), verdict: 'makes', reasons: [] }]]);
  expect(fitInWords(board, undefined)).toContain('Beware of worn: The guarding of this machine is missing: it does not run before guarding by the local rules is fitted and tested.');
});
