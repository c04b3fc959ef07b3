import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { randomTray } from '../../bench/random.js';
import { type Vec2, type Vec3, apply, cross2, sub2, unit2 } from '../geometry/index.js';
import { type Part, asFormed, develop, fold, foldedZone, tabPlate, tree, trayPart } from './index.js';

/** Corners of all plates and points of all bends on both faces of the finished part, by plate of the first level (0 the base). */
const facePoints = (part: Part): { readonly arm: number; readonly p: Vec3 }[] => {
  const sheet = develop(part, { name: 'K-factor', k: 0.44 });
  const { poses } = fold(sheet, part.bends.map((bend) => bend.bendAngle));
  const checked = tree(part);
  if (!checked.ok) throw new Error(checked.failure.sentence);
  // bend i leads to plate i + 1, parents come first: an arm is the first-level plate that leads to it
  const arm: number[] = [0];
  part.bends.forEach((bend) => (arm[bend.sides[1].plate] = arm[bend.sides[0].plate] === 0 ? bend.sides[1].plate : arm[bend.sides[0].plate]!));
  const plates = part.plates.flatMap((plate, i) =>
    plate.outline.flatMap((v) => [1, -1].map((face) => ({ arm: arm[i]!, p: apply(poses[i]!, [v.x, v.y, (face * part.thickness) / 2]) }))),
  );
  const zones = part.bends.flatMap((bend, i) =>
    foldedZone(sheet, i, bend.bendAngle, 12).flatMap((strip) =>
      [...strip.A, ...strip.B].map((p) => ({ arm: arm[bend.sides[1].plate]!, p: apply(poses[bend.sides[0].plate]!, p) })),
    ),
  );
  return [...plates, ...zones];
};

const box = (points: readonly Vec3[]) =>
  [0, 1, 2].map((k) => [Math.min(...points.map((p) => p[k]!)), Math.max(...points.map((p) => p[k]!))] as const);

const bench = (id: string): Part => benchParts().find((it) => it.id === id)!.part;

describe('trayPart: outside measures', () => {
  // thickness 1.5, middle plane of the base at z = 0, so outside runs from -0.75; P7 is 30 high
  it.each([
    ['P7', 30],
    ['P8', 30],
    ['P9', 30],
    ['P10', 30],
  ])('%s is 200 x 150 x %d outside', (id, height) => {
    const [x, y, z] = box(facePoints(bench(id)).map(({ p }) => p));
    expect(x![0]).toBeCloseTo(0, 9);
    expect(x![1]).toBeCloseTo(200, 9);
    expect(y![0]).toBeCloseTo(0, 9);
    expect(y![1]).toBeCloseTo(150, 9);
    expect(z![0]).toBeCloseTo(-0.75, 9);
    expect(z![1]).toBeCloseTo(height - 0.75, 9);
  });

  it('returns of P8 reach 12 inwards', () => {
    const part = bench('P8');
    const sheet = develop(part, { name: 'K-factor', k: 0.44 });
    const { poses } = fold(sheet, part.bends.map((bend) => bend.bendAngle));
    // plate 2 is the return over the edge y = 0: its far edge lies 12 from the outer face, its upper face at 29.25
    const ys = part.plates[2]!.outline.map((v) => apply(poses[2]!, [v.x, v.y, -0.75]));
    expect(Math.max(...ys.map((p) => p[1]))).toBeCloseTo(12, 9);
    expect(ys[0]![2]).toBeCloseTo(29.25, 9);
  });
});

/** Distance of a point of one arm from its neighbour's side of the corner's bisector: negative when it has crossed over. */
const mitreReserve = (part: Part, corners: readonly Vec2[]): number => {
  const count = corners.length;
  const firsts = part.bends.filter((bend) => bend.sides[0].plate === 0).map((bend) => bend.sides[1].plate);
  let least = Infinity;
  for (const { arm, p } of facePoints(part)) {
    const edge = firsts.indexOf(arm);
    if (edge === -1) continue;
    const [a, b] = [corners[edge]!, corners[(edge + 1) % count]!];
    const [before, after] = [corners[(edge + count - 1) % count]!, corners[(edge + 2) % count]!];
    const into = (corner: Vec2, along: Vec2, other: Vec2): Vec2 => {
      const [u, w] = [unit2(sub2(along, corner)), unit2(sub2(other, corner))];
      return [u[0] + w[0], u[1] + w[1]];
    };
    // left of the bisector at b (as seen from b inwards), right of the one at a
    const [da, db] = [unit2(into(a, b, before)), unit2(into(b, a, after))];
    least = Math.min(least, -cross2(da, sub2([p[0], p[1]], a)), cross2(db, sub2([p[0], p[1]], b)));
  }
  return least;
};

describe('trayPart: corners', () => {
  const rectangle: readonly Vec2[] = [[0, 0], [200, 0], [200, 150], [0, 150]];
  const hexagon: readonly Vec2[] = Array.from({ length: 6 }, (_, i) => [150 * Math.cos((i * Math.PI) / 3), 150 * Math.sin((i * Math.PI) / 3)] as const);

  it.each(['P7', 'P8', 'P9', 'P10'])('arms of %s stay half the gap on their own side of the mitre', (id) => {
    expect(mitreReserve(bench(id), rectangle)).toBeGreaterThanOrEqual(0.25 - 1e-9);
  });

  it('so do the arms of the hexagonal P11', () => {
    expect(mitreReserve(bench('P11'), hexagon)).toBeGreaterThanOrEqual(0.25 - 1e-9);
  });

  it.each([1, 2.4, 3.5])('and the arms of P7 to P11 as formed with radius %d do not cross the mitre', (insideRadius) => {
    for (const [id, corners] of [['P7', rectangle], ['P8', rectangle], ['P9', rectangle], ['P10', rectangle], ['P11', hexagon]] as const) {
      const part = bench(id);
      const made = asFormed(part, part.bends.map(() => ({ insideRadius })));
      if (!made.ok) throw new Error(`${id}: ${made.failure.sentence}`);
      // two bends may come to meet in the very corner of the base
      expect(mitreReserve(made.value, corners), id).toBeGreaterThanOrEqual(-1e-9);
    }
  });

  it('random trays are trees of as many bends as asked for', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const part = randomTray(seed, 4 + (seed % 3), 1 + (seed % 4));
      expect(tree(part).ok, `seed ${seed}`).toBe(true);
      expect(part.bends, `seed ${seed}`).toHaveLength((4 + (seed % 3)) * (1 + (seed % 4)));
    }
  });

  it('refuses what does not fit', () => {
    const common = { name: 't', thickness: 1.5, insideRadius: 1.5 };
    // two bends take 3 each of a 5 mm flange
    expect(trayPart({ ...common, base: [100, 80], arms: [[{ length: 5, turn: 90 }, { length: 10, turn: 90 }], [], [], []] })).toMatchObject({
      ok: false,
      failure: { code: 'flange too short', by: expect.closeTo(1, 9) },
    });
    // returns 45 deep on an 80 wide tray: their mitres meet at 40
    const arm = [{ length: 30, turn: 90 }, { length: 45, turn: 90 }];
    expect(trayPart({ ...common, base: [100, 80], arms: [arm, arm, arm, arm] })).toMatchObject({ ok: false, failure: { code: 'wrong measure' } });
    expect(trayPart({ ...common, base: [100, 80], arms: [] })).toMatchObject({ ok: false });
  });
});

describe('tabPlate', () => {
  it('puts the tabs of a row on one line, evenly', () => {
    const row = { count: 2, width: 20, length: 15, turn: -90 };
    const built = tabPlate({ name: 't', thickness: 1, insideRadius: 1, base: [100, 60], rows: [row, undefined, undefined, undefined] });
    if (!built.ok) throw new Error(built.failure.sentence);
    // setback 2: tangent line at y = 2; 100 - 2 x 20 leaves three spaces of 20
    const lines = built.value.bends.flatMap((bend) => [...bend.sides[0].line.from, ...bend.sides[0].line.to]);
    [40, 2, 20, 2, 80, 2, 60, 2].forEach((x, i) => expect(lines[i]).toBeCloseTo(x, 9));
    expect(built.value.bends.every((bend) => bend.direction === 'B')).toBe(true);
    expect(tabPlate({ name: 't', thickness: 1, insideRadius: 1, base: [100, 60], rows: [{ ...row, width: 50 }, undefined, undefined, undefined] })).toMatchObject({ ok: false, failure: { code: 'flange too short' } });
  });
});
