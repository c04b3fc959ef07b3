import { describe, expect, it } from 'vitest';
import { DEMO_RACK_DATA } from './demoRackData.js';
import { parseRack } from './parseRack.js';
import { segmentsFromWords, segmentsInWords } from './segmentWords.js';
import { toolsFromCsv, toolsToCsv } from './toolsCsv.js';

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
    ['kind,id,height,held_by\nhammer,h,1,tang A\n', "Line 2, kind: punch, die or riser is wanted, not 'hammer'."],
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

  it('what is no figure is refused by the parser, by its field', () => {
    const read = toolsFromCsv('kind,id,height,held_by,length,width\nriser,r,high,seat A,100,30\n');
    const parsed = parseRack({ id: 'own', name: 'Own', demo: false, currency: 'EUR', ...(read.ok ? read.value : {}) });
    expect(parsed).toMatchObject({ ok: false, fault: { entry: 'r', field: 'height', sentence: 'r: height must be a number from 0.1 to 500 mm ("high" was given).' } });
  });
});

describe('segments in words', () => {
  it('are read as they are written', () => {
    const segments = [{ length: 500, count: 5 }, { length: 12.5, count: 1 }, { length: 50, count: 2, ear: { hand: 'left', reach: 15, footHeight: 14, slides: 15 } }] as const;
    expect(segmentsInWords(segments)).toBe('500x5 + 12.5 + left 50x2 reach 15 foot 14 slides 15');
    expect(segmentsFromWords('500 x 5+12,5 + left 50×2 reach 15 foot 14 slides 15')).toEqual({ ok: true, value: segments });
  });
});
