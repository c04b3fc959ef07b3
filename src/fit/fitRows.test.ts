import { describe, expect, it } from 'vitest';
import { type BoardMachine, fitRows, notTried } from './index.js';

const machine: BoardMachine = { id: 'm', machineId: 'm', name: 'General, 110 t', whose: 'ours', price: 118_000, currency: 'EUR', rack: 'Rack', tools: { held: 3, of: 3, others: [] } };

describe('fitRows', () => {
  it('has a row for each cell with the tightest margin, the reasons and the first confirmed change', () => {
    const made = {
      ...notTried(''), verdict: 'makes' as const, reasons: [], seconds: 12.345, partsAnHour: 291.66, changeOver: 600.4, trialId: 't-1',
      margins: [{ kind: 'force' as const, name: 'force', value: 550, limit: 1100, unit: 'kN', share: 0.5, step: 1, source: 'machine data' }],
    };
    const changed = {
      ...notTried(''), verdict: 'makes with remedy' as const, trialId: null,
      reasons: [{ code: 'no stop' as const, sentence: 'No stop is within reach.', bends: [] }, { code: 'no order' as const, sentence: 'No order is left.', bends: [] }],
      remedies: [{ sentence: 'Not confirmed.', confirmed: false, price: 1 }, { sentence: 'With the powered R it is made.', confirmed: true, price: 11_500, currency: 'EUR' }],
    };
    const [head, ...rows] = fitRows({ parts: [{ name: 'lid, left', thickness: 1.5, bends: 2 }, { name: 'base', thickness: 2, bends: 0 }], machines: [machine], cells: [[made], [changed]] });
    const of = (row: readonly string[]) => Object.fromEntries(head!.map((name, i) => [name, row[i]]));
    expect(of(rows[0]!)).toEqual({
      part: 'lid, left', 'thickness, mm': '1.5', bends: '2', machine: 'General, 110 t', whose: 'ours', verdict: 'makes', 'limit used furthest': 'force: force', 'used, %': '50.0', 'seconds a part': '12.3',
      'parts an hour': '291.7', 'change-over, s': '600', 'why not': '', 'what would change it': '', 'price of that': '', currency: '', trial: 't-1',
    });
    expect(of(rows[1]!)).toMatchObject({ part: 'base', verdict: 'makes with remedy', 'used, %': '', 'why not': 'No stop is within reach. No order is left.', 'what would change it': 'With the powered R it is made.', 'price of that': '11500.00', currency: 'EUR', trial: '' });
  });

  it('lets no name that a spreadsheet would run as a formula begin its cell', () => {
    const names = ['=HYPERLINK("x")', '+1', '-lid', '@lid', '\tlid', 'lid = left', '2-lid'];
    const rows = fitRows({ parts: names.map((name) => ({ name, thickness: 1, bends: 1 })), machines: [{ ...machine, name: '=1+1' }], cells: names.map(() => [null]) });
    expect(rows.slice(1).map(([name]) => name)).toEqual(['\'=HYPERLINK("x")', "'+1", "'-lid", "'@lid", "'\tlid", 'lid = left', '2-lid']);
    expect(rows[1]![3]).toBe("'=1+1");
  });

  it('says of a cell that is not computed that it is not, in as many columns', () => {
    const rows = fitRows({ parts: [{ name: 'lid', thickness: 1, bends: 1 }], machines: [machine, machine], cells: [[null, null]] });
    expect(rows.map(({ length }) => length)).toEqual([16, 16, 16]);
    expect(rows[1]!.slice(5, 7)).toEqual(['not computed yet', '']);
  });
});
