import { describe, expect, it } from 'vitest';
import { DEMO_RACK_DATA } from './demoRackData.js';
import { parseRack } from './parseRack.js';
import { rackOfTable } from './rackOfTable.js';
import { segmentsFromWords, segmentsInWords } from './segmentWords.js';
import { toolsFromCsv, toolsToCsv } from './toolsCsv.js';
import { withTools } from './withTools.js';

describe('tools as CSV', () => {
  it('the demo rack out and in again is the same rack, drawn profiles and ears too', () => {
    const read = toolsFromCsv(toolsToCsv(DEMO_RACK_DATA));
    if (!read.ok) throw new Error(read.fault);
    const { punches, dies, risers, ...head } = DEMO_RACK_DATA;
    expect(parseRack({ ...head, ...read.value })).toEqual(parseRack({ ...head, punches, dies, risers }));
  });

  it('a table as a spreadsheet with decimal commas writes it', () => {
    const text = '\uFEFFkind;id;name;held_by;shape;height;included_angle;v;v_convention;shoulder_radius;rating;weight;segments;profile\r\n'
      + 'die;d1;"V 12; mine";seat A;V;90,5;85;12;sharp;1,2;500;18,5;415x3 + 100;block topWidth 26,5 baseWidth 30 stepAt 30 flat 0.6\r\n\r\n';
    const read = toolsFromCsv(text);
    expect(read).toMatchObject({ ok: true, value: { punches: [], risers: [], dies: [{ id: 'd1', name: 'V 12; mine', demo: false, reversible: true, height: 90.5, shoulderRadius: 1.2, weight: 18.5, segments: [{ length: 415, count: 3 }, { length: 100, count: 1 }] }] } });
    expect(parseRack({ id: 'own', name: 'Own', demo: false, currency: 'EUR', ...(read.ok ? read.value : {}) }).ok).toBe(true);
  });

  it.each([
    ['id,height\n', 'The header lacks the column kind, held_by.'],
    ['kind,id,height,held_by,colour\n', /^The header has a column 'colour' that is not known/],
    ['kind,id,height,held_by\nhammer,h,1,tang A\n', "Line 2, kind: punch, die, riser or beyond is wanted, not 'hammer'."],
    ['kind,id,height,held_by,segments\n"punch","a\nb",1,tang A,10\npunch,p,1,tang A,left 100\n', /^Line 2, profile: a profile is a shape/],
    ['kind,id,height,held_by,segments,profile\npunch,p,1,tang A,left 100,anvil width 3\n', /^Line 2, segments: 'left 100' is no segment/],
    ['kind,id,height,held_by,height\n', "The header has the column 'height' twice."],
    ['kind,id,height,held_by,length,width\nriser,r,10,seat A,100,30,7\n', "Line 2 has '7' where the header names no column: is a comma in a cell that stands without quotes?"],
    ['kind,id,height,held_by,length,width\nriser,r,10,seat A,100,30\nriser,r,20,seat A,100,30\n', "Line 3, id: 'r' stands in line 2 already; each tool needs its own."],
  ])('refuses %j', (text, sentence) => {
    const read = toolsFromCsv(text);
    expect(read.ok).toBe(false);
    if (!read.ok && typeof sentence === 'string') expect(read.fault).toBe(sentence);
    else if (!read.ok) expect(read.fault).toMatch(sentence);
  });

  it.each([
    ['kind,id,height,held_by,length,width\nriser,r,high,seat A,100,30\n', 'Line 2, height must be a number from 0.1 to 500 mm ("high" was given).'],
    ['kind,id,height,held_by,length,width\nriser,r,20,tang A,100,30\nriser,s,900,seat A,100,30\n', 'Line 2, held_by must be one of: seat A, seat B, seat C, seat D, seat E, seat F, seat G, seat H ("tang A" was given). Line 3, height must be a number from 0.1 to 500 mm (900 was given).'],
    ['kind,id,height,held_by,price,currency\nbeyond,hammer,,,10,EUR\nbeyond,die,,,dear,USD\n', "Line 2, id: gooseneck, die or adapter is wanted for the price of a tool beyond the rack, not 'hammer'. Line 3, currency: 'USD' where line 2 has 'EUR'; a rack has one currency. Line 3, price must be a number from 0 to 10000000 in the currency (\"dear\" was given)."],
    ['kind,id,height,held_by,price,currency\nbeyond,die,,,10,EUR\nbeyond,die,,,20,EUR\n', "Line 3, id: 'die' stands in line 2 already; each tool needs its own."],
    ['kind,id,height,held_by,price,currency\nbeyond,die,,,,EUR\n', 'Line 2, price must be a number from 0 to 10000000 in the currency (it is missing).'],
  ])('each bad cell has its sentence: %j', (text, sentence) => {
    expect(toolsFromCsv(text)).toEqual({ ok: false, fault: sentence });
  });

  it('bad cells of a die: the range of one figure, then what contradicts another', () => {
    const die = (cells: Readonly<Record<string, string>>): string => {
      const all = { kind: 'die', id: 'd', name: 'Die', held_by: 'seat A', shape: 'V', height: '90', included_angle: '85', v: '12', v_convention: 'sharp', shoulder_radius: '1.2', rating: '500', weight: '18', segments: '100x3', profile: 'block topWidth 26 baseWidth 30 stepAt 30 flat 0.6', ...cells };
      return `${Object.keys(all).join(',')}\n${Object.values(all).join(',')}\n`;
    };
    expect(toolsFromCsv(die({})).ok).toBe(true);
    expect(toolsFromCsv(die({ included_angle: '5' }))).toEqual({ ok: false, fault: 'Line 2, included_angle must be a number from 15 to 180 degrees included (5 was given).' });
    expect(toolsFromCsv(die({ profile: 'block topWidth 26 baseWidth 30 stepAt 30 flat none' }))).toEqual({ ok: false, fault: 'Line 2, profile, flat must be a number from 0.1 to 50 mm ("none" was given).' });
    // by hand: (12 - 0.6) / 2 / tan 42.5 degrees is 6.22 mm, and 5 mm of metal under it
    expect(toolsFromCsv(die({ height: '10' }))).toEqual({ ok: false, fault: 'Line 2, height (10 mm) must be at least 11.2 mm: the V is 6.2 mm deep.' });
  });

  it('a name that a spreadsheet would run as a formula is written as text and comes back as it was', () => {
    const rack = { punches: [], dies: [], risers: [{ id: '=1+1', height: 10, seat: 'seat A', length: 100, width: 30 }, { id: "'=a", height: 10, seat: 'seat A', length: 100, width: 30 }] };
    expect(toolsToCsv(rack).split('\n').slice(1, 3).map((line) => line.split(',')[1])).toEqual(["'=1+1", "''=a"]);
    expect(toolsFromCsv(toolsToCsv(rack))).toEqual({ ok: true, value: rack });
  });
});

describe('prices of a table', () => {
  const table = (...rows: readonly string[]): string => ['kind,id,height,held_by,price,currency,length,width', ...rows, ''].join('\n');
  const riser = 'riser,r,10,seat A,,,100,30';

  it('stay in their currency, and a rack out and in again keeps what tools beyond it cost', () => {
    expect(rackOfTable(toolsToCsv({ ...DEMO_RACK_DATA, currency: 'USD' }), 'own', 'own.csv')).toMatchObject({ ok: true, value: { name: 'Tools of own.csv', currency: 'USD', pricesBeyond: { gooseneck: 9_500, die: 3_600, adapter: 850 } } });
    expect(rackOfTable(table(riser, 'beyond,die,,,3200,GBP'), 'own', 'own.csv')).toMatchObject({ ok: true, value: { currency: 'GBP', pricesBeyond: { die: 3200 } } });
  });

  it('without a currency are refused; a table without prices needs none', () => {
    expect(rackOfTable(table(riser, 'beyond,die,,,3200,'), 'own', 'own.csv')).toEqual({ ok: false, fault: 'Its prices are in no currency: name it in a column currency, as EUR.' });
    expect(rackOfTable(table(riser), 'own', 'own.csv')).toMatchObject({ ok: true, value: { currency: 'not stated' } });
  });

  it('of another currency do not come into a rack', () => {
    const [rack, more] = [{ punches: [], dies: [], risers: [], currency: 'EUR', pricesBeyond: { die: 10, adapter: 5 } }, { punches: [], dies: [], risers: [{ id: 'r' }], pricesBeyond: { die: 20 } }];
    expect(withTools(rack, { ...more, currency: 'USD' })).toEqual({ ok: false, fault: "The table's prices are in USD, the rack's in EUR: a rack has one currency, and nothing is converted." });
    expect(withTools(rack, more)).toEqual({ ok: true, value: { ...rack, risers: [{ id: 'r' }], pricesBeyond: { die: 20, adapter: 5 } } });
  });
});

describe('segments in words', () => {
  it('are read as they are written', () => {
    const segments = [{ length: 500, count: 5 }, { length: 12.5, count: 1 }, { length: 50, count: 2, ear: { hand: 'left', reach: 15, footHeight: 14, slides: 15 } }] as const;
    expect(segmentsInWords(segments)).toBe('500x5 + 12.5 + left 50x2 reach 15 foot 14 slides 15');
    expect(segmentsFromWords('500 x 5+12,5 + left 50×2 reach 15 foot 14 slides 15')).toEqual({ ok: true, value: segments });
  });
});
