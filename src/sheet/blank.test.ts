import { type Paths64, FillRule, area, union } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { randomTray, randomTree } from '../../bench/random.js';
import { circle, flatten, signedArea, vertex } from '../geometry/index.js';
import { type Blank, type Developed, type Part, asFormed, blank, develop, grow, partOf, polygon, profilePart } from './index.js';

const K44 = { name: 'K-factor', k: 0.44 } as const;

const unfolded = (sheet: Developed): Blank => {
  const result = blank(sheet);
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};

const bench = (id: string): Part => benchParts().find((it) => it.id === id)!.part;

const profile = (flanges: readonly number[], turns: readonly number[], thickness = 2, insideRadius = 3): Part => {
  const built = profilePart({ name: 'hand', thickness, insideRadius, width: 100, flanges, turns });
  if (!built.ok) throw new Error(built.failure.sentence);
  return built.value;
};

describe('blank: by hand', () => {
  it('a Z of 20, 50, 20 is 15 + 40 + 15 and two allowances long', () => {
    const sheet = develop(profile([20, 50, 20], [90, -90]), K44);
    const it = unfolded(sheet);
    const a = (Math.PI / 2) * (3 + 0.44 * 2);
    expect(it.length).toBeCloseTo(100, 9);
    expect(it.width).toBeCloseTo(70 + 2 * a, 9);
    expect(it.area).toBeCloseTo(100 * (70 + 2 * a), 6);
    expect(it.outline).toHaveLength(4);
    expect(it.holes).toHaveLength(0);
    expect(it.bendLines.map((line) => [line.id, line.direction, line.bendAngle])).toEqual([['b1', 'A', 90], ['b2', 'B', 90]]);
    expect(it.bendLines[0]!.from[1]).toBeCloseTo(15 + a / 2, 9);
    expect(it.bendLines[1]!.to).toEqual([100, expect.closeTo(55 + 1.5 * a, 9)]);
  });

  it('blank length = outside lengths less deductions for the aviation U-channel (FAA-H-8083-31A ch. 4: 3.74 in, chart rounding)', () => {
    // T .040, R .16, legs 1.00, 2.00, 1.00 in: setback .2, flats .8 + 1.6 + .8; BA by the formula .27907, TDW 3.7581
    const inch = 25.4;
    const it = unfolded(develop(profile([inch, 2 * inch, inch], [90, 90], 0.04 * inch, 0.16 * inch), { name: 'aviation handbook' }));
    expect(Math.abs(it.area / 100 / inch - 3.74)).toBeLessThan(0.02);
    expect(it.area / 100 / inch).toBeCloseTo(3.2 + 2 * (0.01743 * 0.16 + 0.0078 * 0.04) * 90, 9);
  });

  it('the tray P7 is the cross of its base, strips and flanges', () => {
    // base 194 x 144 between tangent lines; a = pi/2 (1.5 + .66); flanges 27 flat, short of the corner by 3 + .25/sin 45 = 3.3536
    const a = (Math.PI / 2) * 2.16;
    const cut = 3 + 0.25 * Math.SQRT2;
    const it = unfolded(develop(bench('P7'), K44));
    expect(it.length).toBeCloseTo(194 + 2 * (a + 27), 9);
    expect(it.width).toBeCloseTo(144 + 2 * (a + 27), 9);
    expect(it.area).toBeCloseTo(194 * 144 + 2 * (a + 27) * (200 - 2 * cut) + 2 * (a + 27) * (150 - 2 * cut), 6);
  });

  it('arcs and holes survive: a round corner, a hole, a hole half in the bend', () => {
    const part = profile([40, 60], [90]);
    // plate 0 is 100 x 35: its free corner at the origin rounded by 10, a hole of 8 in its middle; plate 1 as it is
    const outline = [vertex(10, 0), vertex(100, 0), vertex(100, 35), vertex(0, 35), vertex(0, 10, Math.tan(Math.PI / 8))];
    const rounded: Part = { ...part, plates: [{ outline, holes: [circle(50, 17, 4, true)] }, part.plates[1]!] };
    const it = unfolded(develop(rounded, K44));
    const a = (Math.PI / 2) * 3.88;
    expect(it.outline.filter((v) => v.bulge !== 0)).toHaveLength(1);
    expect(it.holes).toHaveLength(1);
    expect(it.area).toBeCloseTo(100 * (90 + a) - (100 - 25 * Math.PI) - 16 * Math.PI, 6);
  });

  it('closes over a run of edges shorter than its own corner tolerance (as a reader left beside a curve)', () => {
    const part = profile([40, 60], [90]);
    // four edges of 0.0013 in a row in place of a corner at the origin
    const steps = [0, 1, 2, 3, 4].map((k) => vertex(k * 0.0013, 0.0052 - k * 0.0013));
    const outline = [...steps, vertex(100, 0), vertex(100, 35), vertex(0, 35)];
    const it = unfolded(develop({ ...part, plates: [{ outline, holes: [] }, part.plates[1]!] }, K44));
    // ends within 0.002 mm are one corner: the two edges beside it, 100 and 35 long, may each lean by that
    expect(Math.abs(it.area - 100 * (90 + (Math.PI / 2) * 3.88))).toBeLessThan((0.002 * (100 + 35)) / 2);
  });

  it('a window across the bend becomes one hole', () => {
    const part = profile([40, 60], [90]);
    // 30 wide: 10 deep in plate 0, through the whole zone, 5 deep in plate 1
    const low = polygon([[0, 0], [100, 0], [100, 35], [60, 35], [60, 25], [30, 25], [30, 35], [0, 35]]);
    const high = polygon([[0, 0], [30, 0], [30, 5], [60, 5], [60, 0], [100, 0], [100, 55], [0, 55]]);
    const zone = [polygon([[0, 0], [30, 0], [30, 1], [0, 1]]), polygon([[60, 0], [100, 0], [100, 1], [60, 1]])];
    const it = unfolded(develop({ ...part, plates: [{ outline: low, holes: [] }, { outline: high, holes: [] }], bends: [{ ...part.bends[0]!, zone }] }, K44));
    const a = (Math.PI / 2) * 3.88;
    expect(it.holes).toHaveLength(1);
    expect(it.outline).toHaveLength(4);
    expect(signedArea(it.holes[0]!)).toBeCloseTo(-30 * (15 + a), 6);
  });

  it('turns the rectangle to the outline: a part drawn at 30 degrees', () => {
    const part = profile([40, 60], [90]);
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const spin = ([x, y]: readonly [number, number]) => [c * x - s * y, s * x + c * y] as const;
    const [plate] = part.plates;
    const bend = part.bends[0]!;
    const tilted: Part = {
      ...part,
      plates: [{ outline: plate!.outline.map((v) => vertex(...spin([v.x, v.y]))), holes: [] }, part.plates[1]!],
      bends: [{ ...bend, sides: [{ plate: 0, line: { from: spin(bend.sides[0].line.from), to: spin(bend.sides[0].line.to) } }, bend.sides[1]] }],
    };
    const it = unfolded(develop(tilted, K44));
    expect(it.length).toBeCloseTo(100, 9);
    expect(it.width).toBeCloseTo(90 + (Math.PI / 2) * 3.88, 9);
    expect(it.angle % 90).toBeCloseTo(30, 6);
  });
});

describe('blank: refused', () => {
  it('a part whose flat pattern lies over itself', () => {
    // two arms that turn round the same corner of a base: each 60 long tab grows a side wing over the corner of the other
    const sketch = { plates: [{ outline: polygon([[0, 0], [50, 0], [50, 50], [0, 50]]), holes: [] }], bends: [] };
    const square = polygon([[0, 0], [50, 0], [50, 60], [0, 60]]);
    const right = grow(sketch, 0, { from: [50, 0], to: [50, 50] }, 90, 1, square);
    const top = grow(sketch, 0, { from: [50, 50], to: [0, 50] }, 90, 1, square);
    // both grow a wing towards the empty corner at (50, 50): x = 0 is the child's end corner
    grow(sketch, right, { from: [0, 50], to: [0, 0] }, 90, 1, polygon([[0, 0], [50, 0], [50, 40], [0, 40]]));
    grow(sketch, top, { from: [50, 0], to: [50, 50] }, 90, 1, polygon([[0, 0], [50, 0], [50, 40], [0, 40]]));
    const result = blank(develop(partOf('over itself', 1, sketch, 'by hand'), K44));
    expect(result).toMatchObject({ ok: false, failure: { code: 'flat pattern overlaps' } });
    if (result.ok) return;
    expect(result.failure.sentence).toMatch(/plate 4 and plate 5/);
  });

  it('a ring of plates', () => {
    const part = bench('P6');
    const closing = { ...part.bends[0]!, id: 'b4', sides: [part.bends[2]!.sides[1], part.bends[0]!.sides[0]] as const };
    expect(blank(develop({ ...part, bends: [...part.bends, closing] }, K44))).toMatchObject({ ok: false, failure: { code: 'cycle' } });
  });
});

/** clipper2-ts works on integers: micrometres here, so an area is good to perimeter x 0.5 micrometre. */
const SCALE = 1000;

/** The blank's area by another engine: plates and strips laid out here from their own data, joined by a polygon union. */
const unionArea = (sheet: Developed): number => {
  const { part, allowances } = sheet;
  // poses by hand: a similarity per plate that takes side 1's line onto side 0's, one allowance further left
  type Pose = { readonly c: number; readonly s: number; readonly x: number; readonly y: number };
  const at = (pose: Pose, [x, y]: readonly [number, number]) => [pose.c * x - pose.s * y + pose.x, pose.s * x + pose.c * y + pose.y] as const;
  const poses: (Pose | undefined)[] = [{ c: 1, s: 0, x: 0, y: 0 }];
  const rings: (readonly (readonly [number, number])[])[] = [];
  for (let round = 0; round < part.plates.length; round++) {
    part.bends.forEach((bend, i) => {
      const [p, q] = bend.sides;
      const parent = poses[p.plate];
      if (parent === undefined || poses[q.plate] !== undefined) return;
      const angle = ([a, b]: readonly [readonly [number, number], readonly [number, number]]) => Math.atan2(b[1] - a[1], b[0] - a[0]);
      const way = angle([at(parent, p.line.from), at(parent, p.line.to)]);
      const spin = way - angle([q.line.from, q.line.to]);
      const [c, s] = [Math.cos(spin), Math.sin(spin)];
      const start = at(parent, p.line.from);
      const corner = [start[0] - Math.sin(way) * allowances[i]!, start[1] + Math.cos(way) * allowances[i]!];
      poses[q.plate] = { c, s, x: corner[0]! - (c * q.line.from[0] - s * q.line.from[1]), y: corner[1]! - (s * q.line.from[0] + c * q.line.from[1]) };
      for (const contour of bend.zone) {
        rings.push(contour.map((v) => {
          const [u, f] = [v.x, v.y * allowances[i]!];
          return [start[0] + Math.cos(way) * u - Math.sin(way) * f, start[1] + Math.sin(way) * u + Math.cos(way) * f] as const;
        }));
      }
    });
  }
  part.plates.forEach((plate, i) => {
    for (const contour of [plate.outline, ...plate.holes]) rings.push(flatten(contour, 1e-4).map((p) => at(poses[i]!, p)));
  });
  const paths: Paths64 = rings.map((ring) => ring.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) })));
  return union(paths, FillRule.NonZero).reduce((sum, path) => sum + area(path), 0) / SCALE ** 2;
};

describe('blank: area by a polygon union (clipper2)', () => {
  const close = (part: Part, label: string): void => {
    const sheet = develop(part, K44);
    const it = unfolded(sheet);
    const around = [it.outline, ...it.holes].flat().length;
    expect(around, label).toBeGreaterThan(3);
    // rounding to a micrometre along every edge: perimeter x 1e-3 mm bounds it
    const perimeter = 2 * (it.length + it.width) * 4;
    expect(Math.abs(it.area - unionArea(sheet)), label).toBeLessThan(perimeter * 1e-3);
  };

  it('benchmark parts, as drawn', () => {
    for (const { id, part } of benchParts()) close(part, id);
  });

  it('benchmark parts, as formed with 2.4 and 0.8', () => {
    for (const { id, part } of benchParts()) {
      for (const insideRadius of [2.4, 0.8]) {
        const made = asFormed(part, part.bends.map(() => ({ insideRadius })));
        if (!made.ok) throw new Error(`${id}: ${made.failure.sentence}`);
        close(made.value, `${id} radius ${insideRadius}`);
      }
    }
  });

  it('random trays and trees (seeds 1 to 25)', () => {
    for (let seed = 1; seed <= 25; seed++) {
      close(randomTray(seed, 4 + (seed % 3), 1 + (seed % 3)), `tray seed ${seed}`);
      close(randomTree(seed, 10), `tree seed ${seed}`);
    }
  });

  it('finds as much overlap as the union, on random trees laid out with no regard to it', () => {
    let refusals = 0;
    for (let seed = 1; seed <= 25; seed++) {
      const sheet = develop(randomTree(seed, 5, false), K44);
      const { part } = sheet;
      const pieces = part.plates.reduce((sum, plate) => sum + signedArea(plate.outline), 0) + part.bends.reduce((sum, bend, i) => sum + sheet.allowances[i]! * signedArea(bend.zone[0]!), 0);
      const lost = pieces - unionArea(sheet);
      const result = blank(sheet);
      if (Math.abs(lost) < 0.5) expect(result.ok, `seed ${seed}`).toBe(true);
      else {
        expect(result, `seed ${seed}: ${lost} mm2 lie double`).toMatchObject({ ok: false, failure: { code: 'flat pattern overlaps' } });
        refusals += 1;
      }
    }
    expect(refusals).toBeGreaterThan(5);
    expect(refusals).toBeLessThan(25);
  });
});
