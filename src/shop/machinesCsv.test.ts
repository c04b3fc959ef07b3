import { describe, expect, it } from 'vitest';
import { asDrawn } from './asDrawn.js';
import { demoFloor } from './demo.js';
import { DEMO_FLOOR_DATA } from './demoFloorData.js';
import { machinesFromCsv, machinesToCsv } from './machinesCsv.js';
import { parseFloor } from './parseFloor.js';

/** Mulberry32. */
const randomOf = (seed: number) => {
  let a = seed;
  return (): number => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
};

/** A machine that the parser takes, with everything that may stand in one, and names that are hard on a table. */
const machineOf = (seed: number): object => {
  const random = randomOf(seed);
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const within = (least: number, most: number): number => least + random() * (most - least);
  const may = (field: object): object => (random() < 0.5 ? field : {});
  const hard = (word: string): string => `${one(['', '=', '-', "'=", '@', '[', '{', '"', ' + '])}${word}${one(['', ' + more', ', and; "so"', '\nnext line', ' behind 1 from 2 to 3'])}`;
  const axis = (): object => one([
    { drive: 'powered', min: within(-50, 0), max: within(1, 600), speed: within(1, 900) },
    { drive: 'by hand', min: within(-50, 0), max: within(1, 600), seconds: within(1, 90) },
    { drive: 'fixed', at: within(-90, 90) },
  ]);
  const known = (): object => one([{ source: 'as new', value: within(0.001, 1) }, { source: 'measured', value: within(0.001, 1) }, { source: 'not known' }]);
  const upper = (): object => one([
    { shape: 'rectangle', back: [within(-90, -10), within(10, 90)], up: [within(0, 10), within(20, 900)] },
    { shape: 'contour', corners: [[-20, 0], [within(5, 20), 0, within(-0.3, 0.3)], [20, within(100, 200)], [-20, 150]] },
    { shape: 'beam', front: within(10, 50), thickness: within(60, 90), from: within(10, 50), height: within(100, 900) },
    { shape: 'clamp', width: within(60, 90), height: within(40, 60), chamfer: within(1, 10) },
  ]);
  const nose = within(5, 15);
  return {
    id: `m${seed}${hard('')}`, name: hard('Press'), demo: random() < 0.5, summary: hard('Made of figures'), condition: one(['new', 'reconditioned']),
    rating: within(10_000, 5e6), ratingPerLength: within(50, 2000), length: within(200, 6000), betweenFrames: within(100, 6000), throat: within(0, 900), openHeight: within(400, 900), shutHeight: within(10, 250),
    cylinders: { spacing: within(100, 5000), synchronisation: one(['electronic', 'torsion bar']) }, speeds: { approach: within(50, 200), bend: within(1, 20), return: within(1, 200) }, changePoint: within(0, 50),
    gauge: {
      x: axis(), r: axis(), z: axis(), fingers: one([1, 2, 6]),
      finger: {
        width: within(2, 90), profile: { shape: 'finger', noseHeight: nose, stepBehind: 25, stepHeight: nose + 12, clear: 62, drop: 14, length: 105 },
        faces: [{ name: hard('nose'), behind: 0, from: 0, to: nose }, { name: hard('step'), behind: 25, from: nose, to: nose + 12 }].slice(0, one([1, 2])),
      },
      beam: one([{ shape: 'rectangle', back: [90.5, 170], up: [-100, -14] }, { shape: 'contour', corners: [[90, -100], [170, -100], [170, -14], [90, -14, 0.1]] }]),
      apart: within(0, 90), ...may({ ownX: { most: within(1, 300) } }), ...may({ play: known() }), ...may({ squareness: known() }),
    },
    beam: [upper(), upper()].slice(0, one([1, 2])), clamp: [upper()], bed: [{ shape: 'bed', topWidth: within(60, 90), topDepth: within(50, 150), bodyWidth: within(100, 150), depth: 800 }],
    clampFamilies: one([['tang A'], ['tang B', 'tang H']]), seatFamilies: one([['seat A'], ['seat C', 'seat A']]), crowning: one(['powered', 'by hand', 'none']),
    ...may({ stationSeconds: within(10, 900) }), bedHeight: within(300, 1200), repeatability: { ram: known(), x: known(), r: known() },
    ...may({ seats: one([{ source: 'not known' }, { source: 'measured', places: [{ along: -within(500, 900), gap: within(-1, 1) }, { along: 0, gap: 0 }, { along: 800, gap: within(-1, 1) }], tilt: one(['each step', 'one setting', 'none']) }]) }),
    ...may({ beware: one([[], [hard('A crack was found.')], ['One.', 'Two + three.'], ['One.', 'Two.']]) }),
    options: Array.from({ length: one([0, 1, 3]) }, (_, i) => ({
      id: `${hard('option')} ${i}`, name: hard('Option'), price: within(0, 9000),
      ...may({ effect: { openHeight: within(400, 900), ...may({ x: axis() }), ...may({ z: axis() }), ...may({ ownX: { most: 150 } }), ...may({ throat: 300 }), ...may({ crowning: 'powered' }), ...may({ stationSeconds: 120 }) } }),
    })),
    price: within(0, 200_000), currency: one(['EUR', '=$']), site: { mass: within(100, 9000), footprint: [within(300, 5000), within(300, 5000)], height: within(500, 5000), supply: hard('400 V, 16 A') },
  };
};

/** A file that can be read: the sentence where it cannot. */
const readBack = (csv: string): unknown => {
  const read = machinesFromCsv(csv);
  if (!read.ok) throw new Error(read.fault);
  return read.value;
};

describe('machines as CSV', () => {
  it('the demo floor out and in again is the same data, and as it is printed with its record too', () => {
    expect(readBack(machinesToCsv(DEMO_FLOOR_DATA))).toEqual(DEMO_FLOOR_DATA);
    const printed = asDrawn(demoFloor()) as readonly unknown[];
    expect(readBack(machinesToCsv(printed))).toEqual(printed);
  });

  it('reads by hand what stands in the cells of the demonstration', () => {
    const [head, first, option] = machinesToCsv(DEMO_FLOOR_DATA).split('\n') as [string, string, string];
    expect(head).toMatch(/^kind,of,id,name,demo,summary,condition,rating,/);
    expect(first).toContain(',powered min 4 max 400 speed 600,');
    expect(first).toContain(',nose behind 0 from 0 to 8 + step behind 25 from 8 to 20,rectangle back 92 172 up -100 -14,60,');
    expect(first).toContain(',as new 0.01,as new 0.02,as new 0.05,');
    expect(option).toMatch(/^option,small-fast,angle measured,Angle measured in the stroke,/);
  });

  const seeds = Array.from({ length: 60 }, (_, i) => i + 1);
  it(`machines of seeds 1 to ${seeds.length}, with names that are hard on a table, come back the same`, () => {
    for (const seed of seeds) {
      const floor = [machineOf(seed), machineOf(seed + 1000)];
      const before = parseFloor(floor);
      if (!before.ok) throw new Error(`seed ${seed}: ${before.fault.sentence}`);
      const csv = machinesToCsv(floor);
      expect(parseFloor(readBack(csv)), `seed ${seed}`).toEqual(before);
      // no cell that is words begins as a formula does
      expect(csv.split('\n').filter((line) => /(?:^|,)"?[=@]/.test(line)), `seed ${seed}`).toEqual([]);
    }
  });

  it('a table as a spreadsheet with semicolons and decimal commas writes it', () => {
    const commas = machinesToCsv([DEMO_FLOOR_DATA[0]]);
    const cells = (line: string): string[] => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell]) => cell!).slice(0, -1);
    const text = `\uFEFF${commas.trim().split('\n').map((line) => cells(line).map((c) => c.replaceAll(/(\d)\.(\d)/g, '$1,$2').replace(/^true$/, 'TRUE')).join(';')).join('\r\n')}\r\n`;
    expect(text).toContain(';as new 0,01;');
    expect(readBack(text)).toEqual([DEMO_FLOOR_DATA[0]]);
  });
});

describe('bad cells of a table of machines', () => {
  const lines = machinesToCsv([DEMO_FLOOR_DATA[0]]).trim().split('\n');
  const header = lines[0]!.split(',');
  /** The table with one cell of a line put otherwise. */
  const withCell = (line: number, column: string, cell: string): string => lines.map((text, i) => {
    if (i !== line - 1) return text;
    const cells = [...text.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, c]) => c!).slice(0, -1);
    cells[header.indexOf(column)] = `"${cell}"`;
    return cells.join(',');
  }).join('\n');

  it.each([
    [2, 'rating', 'much', 'Line 2, rating must be a number from 10000 to 50000000 N ("much" was given).'],
    [2, 'rating', '', 'Line 2, rating must be a number from 10000 to 50000000 N (it is missing).'],
    [2, 'length', '100', 'Line 2, length must be a number from 200 to 12000 mm (100 was given).'],
    [2, 'shut_height', '400', 'Line 2, shut_height (400) must be less than open_height (335).'],
    [2, 'approach_speed', '15', 'Line 2, bend_speed (20) must be less than approach_speed (15).'],
    [2, 'x', 'powered min 4 max 9000 speed 600', 'Line 2, x, max must be a number from -5000 to 5000 mm (9000 was given).'],
    [2, 'x', 'powered min 400 max 4 speed 600', 'Line 2, x, min (400 mm) must be less than max (4 mm).'],
    [2, 'x', 'driven 4 to 9', "Line 2, x: 'driven 4 to 9' is no axis: write 'powered min 4 max 400 speed 600', 'by hand min 20 max 230 seconds 12' or 'fixed at 85'."],
    [2, 'ram_repeats', 'as new', 'Line 2, ram_repeats, value must be a number from 0.001 to 5 mm (it is missing).'],
    [2, 'ram_repeats', 'worn', "Line 2, ram_repeats: 'worn' is no such figure: write 'as new 0.01', 'measured 0.01' or 'not known'."],
    [2, 'clamp', 'clamp width 70 height 50 chamfer 800', 'Line 2, clamp, number 1, chamfer must be a number from 0.1 to 100 mm (800 was given).'],
    [2, 'finger_faces', 'nose from 0 to 8', "Line 2, finger_faces: 'nose from 0 to 8' is no stop face: write 'nose behind 0 from 0 to 8', with + between faces."],
    [2, 'condition', 'old', 'Line 2, condition must be one of: new, reconditioned ("old" was given).'],
    [2, 'demo', 'perhaps', 'Line 2, demo must be true or false ("perhaps" was given).'],
    [2, 'footprint_depth', 'deep', 'Line 2, footprint_depth must be a number from 300 to 30000 mm ("deep" was given).'],
    [2, 'wear', 'measured', "Line 2, wear: 'measured' is no wear map: write 'measured, tilt each step: -1000 0.02; 0 -0.03; 1000 0' (along and gap, mm) or 'not known'."],
    [2, 'kind', 'press', "Line 2, kind: machine or option is wanted, not 'press'."],
    [4, 'station_seconds', '5', 'Line 4, station_seconds must be a number from 10 to 3600 s (5 was given).'],
    [4, 'rating', '5', "Line 4, rating: '5' is not for an option; it may change throat, open_height, x, r, z, own_x, crowning, station_seconds."],
    [5, 'open_height', '150', 'Line 5, the option leaves no sound machine: shut_height (200) must be less than open_height (150).'],
    [5, 'id', 'quick clamps', "Line 5, id: 'quick clamps' stands in line 4 already; each option of a machine needs its own."],
    [5, 'of', 'other', "Line 5, of: there is no machine 'other' in this table for the option 'tall frame'."],
  ])('line %d, %s: %j', (line, column, cell, sentence) => {
    expect(machinesFromCsv(withCell(line, column, cell))).toEqual({ ok: false, fault: sentence });
  });

  it('each of several has its sentence', () => {
    const one = withCell(2, 'length', '100').split('\n');
    const two = withCell(2, 'throat', '-5').split('\n');
    expect(machinesFromCsv([one[0], one[1], two[1]!.replaceAll('small-fast', 'other')].join('\n'))).toEqual({
      ok: false, fault: 'Line 2, length must be a number from 200 to 12000 mm (100 was given). Line 3, throat must be a number from 0 to 2000 mm (-5 was given).',
    });
  });

  it('a header that lacks a column, and a table without a machine', () => {
    expect(machinesFromCsv(lines.map((line) => line.replace(',rating,', ',')).join('\n'))).toEqual({ ok: false, fault: 'The header lacks the column rating.' });
    expect(machinesFromCsv('kind,id\n')).toEqual({ ok: false, fault: 'The header lacks the column name, summary, condition, rating, rating_per_length and 37 more.' });
    expect(machinesFromCsv(new TextDecoder().decode(Buffer.from(lines.join('\n').replace('Quick clamps', 'Schnellspanner für Stempel'), 'latin1')))).toEqual({ ok: false, fault: 'Line 4 holds a letter that is no UTF-8: save the table as CSV in UTF-8.' });
    expect(machinesFromCsv(lines[0]!)).toEqual({ ok: false, fault: 'The table holds no machine.' });
  });
});
