import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { randomSerial } from '../../bench/random.js';
import { type Vec3, add3, apply, circle, scale3, signedArea, sub3, turn } from '../geometry/index.js';
import { type Part, asFormed, blank, develop, fold, profilePart, tabPlate } from './index.js';

const bench = (id: string): Part => benchParts().find((it) => it.id === id)!.part;
const formed = (part: Part, insideRadius: number): Part => {
  const result = asFormed(part, part.bends.map(() => ({ insideRadius })));
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};

/** The middle planes of all plates of the finished part, as a point and a normal each, in plate 0's frame, and the last plate's far corners. */
const planes = (part: Part) => {
  const { poses } = fold(develop(part, { name: 'K-factor', k: 0.4 }), part.bends.map((bend) => bend.bendAngle));
  return poses.map((pose) => ({ normal: pose.z, offset: pose.o[0] * pose.z[0] + pose.o[1] * pose.z[1] + pose.o[2] * pose.z[2], pose }));
};

const all = (got: readonly number[], expected: readonly number[]): void => {
  expect(got).toHaveLength(expected.length);
  got.forEach((x, i) => expect(x).toBeCloseTo(expected[i]!, 9));
};

describe('asFormed', () => {
  it('by hand: an L of 40 + 60 with radius 3 drawn and 5 formed keeps its outside', () => {
    const built = profilePart({ name: 'L', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const part = formed(built.value, 5);
    // outer radius 7: flats 33 and 53; plate 1 keeps its own frame, so its metal begins at y = 2
    all(part.bends[0]!.sides.map((side) => side.line.from[1]), [33, 2]);
    all(part.plates[0]!.outline.map((v) => v.y), [0, 0, 33, 33]);
    all(part.plates[1]!.outline.map((v) => v.y), [2, 2, 55, 55]);
    const { poses } = fold(develop(part, { name: 'K-factor', k: 0.4 }), [90]);
    const far = apply(poses[1]!, [0, 55, -1]);
    [0, 40, 59].forEach((x, i) => expect(far[i]).toBeCloseTo(x, 9));
    expect(part.bends[0]!.zone).toBe(built.value.bends[0]!.zone);
  });

  it('keeps every plate in its plane in profiles of any angles (seeds 1 to 10)', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const part = randomSerial(seed, 7);
      const random = mulberry32(seed + 100);
      const result = asFormed(part, part.bends.map(() => ({ insideRadius: 0.5 + 3 * random() })));
      if (!result.ok) throw new Error(`seed ${seed}: ${result.failure.sentence}`);
      const [drawn, made] = [planes(part), planes(result.value)];
      drawn.forEach((plane, i) => {
        expect(made[i]!.offset, `seed ${seed}, plate ${i}`).toBeCloseTo(plane.offset, 8);
        plane.normal.forEach((x, k) => expect(made[i]!.normal[k]).toBeCloseTo(x, 9));
      });
      // and the free end of the last flange stays where it is drawn
      const last = part.plates.length - 1;
      const end = (p: Part, all: ReturnType<typeof planes>): Vec3 => {
        const outline = p.plates[last]!.outline;
        return apply(all[last]!.pose, [outline[2]!.x, outline[2]!.y, 0]);
      };
      sub3(end(part, drawn), end(result.value, made)).forEach((x) => expect(x).toBeCloseTo(0, 8));
    }
  });

  it('there and back is the part as drawn (P5, P8, P11)', () => {
    for (const id of ['P5', 'P8', 'P11']) {
      const part = bench(id);
      const back = formed(formed(part, 1.1), 1.5);
      const area = (p: Part): number[] => p.plates.map((plate) => plate.outline.reduce((sum, v, i) => {
        const w = plate.outline[(i + 1) % plate.outline.length]!;
        return sum + (v.x * w.y - w.x * v.y) / 2;
      }, 0));
      area(back).forEach((x, i) => expect(x, `${id}, plate ${i}`).toBeCloseTo(area(part)[i]!, 6));
    }
  });

  it('shortens a bend whose corner its neighbour has taken', () => {
    // P7: tangent lines 3 from the outer corner, bend lines from 3.354 (half gap 0.25 / sin 45); radius 2.4: all move in by 0.9
    const part = formed(bench('P7'), 2.4);
    const start = 3 + 0.25 * Math.SQRT2;
    const { line } = part.bends[0]!.sides[0];
    expect(Math.min(line.from[0], line.to[0])).toBeCloseTo(3.9, 9);
    expect(Math.max(line.from[0], line.to[0])).toBeCloseTo(196.1, 9);
    expect(line.from[1]).toBeCloseTo(3.9, 9);
    // the flange keeps its width, the bend in it is as long as in the base
    const flange = part.plates[1]!.outline.map((v) => v.x);
    expect(Math.max(...flange) - Math.min(...flange)).toBeCloseTo(200 - 2 * start, 9);
    const child = part.bends[0]!.sides[1].line;
    expect(child.to[0] - child.from[0]).toBeCloseTo(192.2, 9);
    expect(Math.max(...part.bends[0]!.zone[0]!.map((v) => v.x))).toBeCloseTo(192.2, 9);
  });

  it('cuts a slit beside a tab whose bend reaches further in, and lets the edge beside it stand', () => {
    const row = { count: 1, width: 20, length: 15, turn: 90 };
    const built = tabPlate({ name: 't', thickness: 1, insideRadius: 1, base: [100, 60], rows: [row, undefined, undefined, undefined] });
    if (!built.ok) throw new Error(built.failure.sentence);
    // tangent line at y = 2 from x 40 to 60; radius 1.5 moves it to 2.5; slit 0.2 on either side
    const wide = formed(built.value, 1.5).plates[0]!.outline.map((v) => [v.x, v.y]);
    const expected = [[0, 2], [39.8, 2], [39.8, 2.5], [60.2, 2.5], [60.2, 2], [100, 2], [100, 60], [0, 60]];
    expect(wide).toHaveLength(expected.length);
    wide.flat().forEach((x, i) => expect(x).toBeCloseTo(expected.flat()[i]!, 9));
    // a tighter radius: a tongue of the bend's own width
    const tight = formed(built.value, 0.5).plates[0]!.outline.map((v) => [v.x, v.y]);
    const tongue = [[0, 2], [40, 2], [40, 1.5], [60, 1.5], [60, 2], [100, 2], [100, 60], [0, 60]];
    tight.flat().forEach((x, i) => expect(x).toBeCloseTo(tongue.flat()[i]!, 9));
  });

  it('moves the corners of a cut-out that crosses the bend', () => {
    const part = bench('P1');
    const [plate] = part.plates;
    // a notch 30 wide, 10 deep into plate 0 at its tangent line y = 37
    const notched = [...plate!.outline.slice(0, 3), ...[[60, 37], [60, 27], [30, 27], [30, 37]].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 })), plate!.outline[3]!];
    const result = formed({ ...part, plates: [{ outline: notched, holes: [] }, part.plates[1]!] }, 2.5);
    all(result.plates[0]!.outline.map((v) => v.y), [0, 0, 36, 36, 27, 27, 36, 36]);
  });

  it('shares a hole that the tangent line moves into between plate and zone (both sides), and says so', () => {
    const built = profilePart({ name: 'L', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
    if (!built.ok) throw new Error(built.failure.sentence);
    // lines at y = 35 of plate 0 and y = 0 of plate 1; holes of radius 4 with their edges 1 off; radius 5 moves both lines by 2
    const holes = [[circle(30, 30, 4, true)], [circle(70, 5, 4, true)]];
    const part = formed({ ...built.value, plates: built.value.plates.map((plate, i) => ({ ...plate, holes: holes[i]! })) }, 5);
    // segment beyond the new line: height 1 of a circle of radius 4
    const segment = 16 * Math.acos(3 / 4) - 3 * Math.sqrt(7);
    const areas = part.plates.map((plate) => {
      expect(plate.holes).toEqual([]);
      return signedArea(plate.outline);
    });
    expect(areas[0]).toBeCloseTo(100 * 33 - (16 * Math.PI - segment), 9);
    expect(areas[1]).toBeCloseTo(100 * 53 - (16 * Math.PI - segment), 9);
    // the zone: the two segments are its notches, good to 0.01 mm of chord over their 5.8 mm arcs
    const a = (Math.PI / 2) * (5 + 0.88);
    const zone = part.bends[0]!.zone;
    expect(zone).toHaveLength(1);
    expect(Math.abs(signedArea(zone[0]!) * a - (100 * a - 2 * segment))).toBeLessThan(2 * 0.01 * 5.8);
    expect(part.assumptions.filter(({ sentence }) => sentence.includes('1.00 mm inside bend b1'))).toHaveLength(2);
    // unfolded, both holes are whole again
    const flat = blank({ part, allowances: [a] });
    if (!flat.ok) throw new Error(flat.failure.sentence);
    expect(flat.value.holes).toHaveLength(2);
    for (const hole of flat.value.holes) expect(Math.abs(signedArea(hole) + 16 * Math.PI)).toBeLessThan(0.01 * 5.8);
  });

  it('puts a hole that the bend swallows whole into the zone', () => {
    const built = profilePart({ name: 'L', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const [plate, other] = built.value.plates;
    const part = formed({ ...built.value, plates: [{ ...plate!, holes: [circle(30, 33.5, 1, true)] }, other!] }, 6);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(part.plates[0]!.outline).toHaveLength(4);
    expect(part.bends[0]!.zone).toHaveLength(2);
    const u = part.bends[0]!.zone[1]!.map((v) => v.x);
    // u runs along +x from x = 0
    expect(Math.min(...u)).toBeCloseTo(29, 6);
    expect(Math.max(...u)).toBeCloseTo(31, 6);
  });

  it('leaves a hem without tools on its lines', () => {
    const built = profilePart({ name: 'h', thickness: 1, insideRadius: 1, width: 50, flanges: [30, 40], turns: [{ turn: 180, insideRadius: 0 }] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const part = formed(built.value, 2);
    expect(part.plates).toEqual(built.value.plates);
    expect(part.bends.map((bend) => bend.insideRadius)).toEqual([2]);
  });

  it('keeps the lengths to the outer tangents past 90 degrees: the lines move by the radius alone', () => {
    for (const turn of [91, 120, 135, 150, 165]) {
      const built = profilePart({ name: 'L', thickness: 2, insideRadius: 1, width: 100, flanges: [40, 60], turns: [turn] });
      if (!built.ok) throw new Error(built.failure.sentence);
      // 40 - (1 + 2) and 60 - (1 + 2) flat as drawn; radius 2.5 takes 1.5 more of each
      const part = formed(built.value, 2.5);
      all(part.bends[0]!.sides.map((side) => side.line.from[1]), [35.5, 1.5]);
      all(part.plates[1]!.outline.map((v) => v.y), [1.5, 1.5, 57, 57]);
    }
  });

  it('refuses a flange that would turn inside out, with the millimetres', () => {
    // web 10 outside with 3 taken at each end: 4 flat; radius 4 takes 2.5 more at each end
    const built = profilePart({ name: 'n', thickness: 1.5, insideRadius: 1.5, width: 50, flanges: [30, 10, 30], turns: [90, -90] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const result = asFormed(built.value, [{ insideRadius: 4 }, { insideRadius: 4 }]);
    expect(result).toMatchObject({ ok: false, failure: { code: 'inside out', plates: [1], by: expect.closeTo(2.5, 9) } });
  });

  it('keeps lines in both plates equal on every benchmark part', () => {
    for (const { id, part } of benchParts()) {
      for (const insideRadius of [0.9, 2.2]) {
        for (const bend of formed(part, insideRadius).bends) {
          const lengths = bend.sides.map(({ line }) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]));
          expect(lengths[0], `${id} ${bend.id}`).toBeCloseTo(lengths[1]!, 9);
        }
      }
    }
  });
});

/** The outer mould apex of two plates stays: P16's stated outer dimension with any radius. */
it('P16 measures 60 + 30 sin 45 over its outer faces, as drawn and as formed', () => {
  for (const part of [bench('P16'), formed(bench('P16'), 2.3)]) {
    const { poses } = fold(develop(part, { name: 'K-factor', k: 0.44 }), part.bends.map((bend) => bend.bendAngle));
    // both outer faces are B faces (all bends towards A)
    const outer = (plate: number): Vec3 => add3(poses[plate]!.o, scale3(turn(poses[plate]!, [0, 0, 1]), -0.75));
    const apart = sub3(outer(3), outer(0));
    const normal = poses[0]!.z;
    expect(Math.abs(apart[0] * normal[0] + apart[1] * normal[1] + apart[2] * normal[2])).toBeCloseTo(60 + 30 * Math.SQRT1_2, 9);
  }
});
