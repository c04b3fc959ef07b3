import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../bench/mulberry32.js';
import { FAMILIES, familyPart } from '../bench/oracle/families.js';
import { benchParts } from '../bench/parts.js';
import { type Contour, type Vec2, circle, reversed, vertex } from '../src/geometry/index.js';
import { type Part, profilePart, sameShape } from '../src/sheet/index.js';

interface Frame { readonly c: number; readonly s: number; readonly x: number; readonly y: number }

const SEED = 4711;

/** The part written down otherwise: plates and bends in another order, each plate's frame turned and moved, turned over (A is B) or mirrored. */
const rewritten = (part: Part, random: () => number, { over = false, mirrored = false } = {}): Part => {
  const frames = part.plates.map((): Frame => {
    const a = 2 * Math.PI * random();
    return { c: Math.cos(a), s: Math.sin(a), x: 300 * (random() - 0.5), y: 300 * (random() - 0.5) };
  });
  const at = (plate: number, [px, py]: Vec2): Vec2 => {
    const { c, s, x, y } = frames[plate]!;
    const q = over || mirrored ? -py : py;
    return [c * px - s * q + x, s * px + c * q + y];
  };
  const contour = (plate: number, of: Contour): Contour => {
    const moved = of.map((v) => vertex(...at(plate, [v.x, v.y]), over || mirrored ? -v.bulge : v.bulge));
    return over || mirrored ? reversed(moved) : moved;
  };
  const order = part.plates.map((_, i) => i).sort(() => random() - 0.5);
  const number = order.map((_, i) => order.indexOf(i));
  const swap = (side: 'A' | 'B'): 'A' | 'B' => (side === 'A' ? 'B' : 'A');
  const bends = part.bends.map((bend) => {
    const sides = bend.sides.map(({ plate, line }) => ({ plate: number[plate]!, line: { from: at(plate, line.from), to: at(plate, line.to) } }));
    return {
      ...bend, direction: over ? swap(bend.direction) : bend.direction,
      sides: (over || mirrored ? [sides[1], sides[0]] : sides) as unknown as Part['bends'][number]['sides'],
    };
  });
  return {
    ...part, plates: order.map((i) => ({ outline: contour(i, part.plates[i]!.outline), holes: part.plates[i]!.holes.map((hole) => contour(i, hole)) })),
    bends: [...bends].sort(() => random() - 0.5),
    formed: (part.formed ?? []).map((it) => ({ ...it, plate: number[it.plate]!, side: over ? swap(it.side) : it.side, outline: contour(it.plate, it.outline) })),
  };
};

/** An angle with a hole near one end of one leg: it and its mirror image are two parts. */
const handed = (along = 15): Part => {
  const made = profilePart({ name: 'handed', thickness: 2, insideRadius: 2, width: 100, flanges: [40, 60], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const { plates, bends } = made.value;
  const { from, to } = bends[0]!.sides[1].line;
  const [u, length] = [[to[0] - from[0], to[1] - from[1]] as const, Math.hypot(to[0] - from[0], to[1] - from[1])];
  // from the bend into the leg, which lies to the left of its line
  const [x, y] = [from[0] + (u[0] * along - u[1] * 20) / length, from[1] + (u[1] * along + u[0] * 20) / length];
  return { ...made.value, plates: plates.map((plate, i) => (i === bends[0]!.sides[1].plate ? { ...plate, holes: [circle(x, y, 4, true)] } : plate)) };
};

describe(`one shape written down otherwise (seed ${SEED})`, () => {
  const random = mulberry32(SEED);
  const parts = [...benchParts().map(({ part }) => part), ...FAMILIES.flatMap((family) => Array.from({ length: 15 }, (_, i) => familyPart(family, i + 1)))];

  it('is found again: benchmark parts and fifteen of each family, turned over or not', () => {
    for (const part of parts) {
      for (const over of [false, true]) expect(sameShape(part, rewritten(part, random, { over })), `${part.name}, ${over ? 'turned over' : 'as it was'}`).toBe(true);
    }
  });

  it('no two of the benchmark parts are one, nor two seeds of a family', () => {
    for (const a of parts) for (const b of parts) if (a !== b) expect(sameShape(a, b), `${a.name} and ${b.name}`).toBe(false);
  });

  it('a mirror image is another part, and so is one with its hole moved, another angle, radius, thickness or side', () => {
    const part = handed();
    expect(sameShape(part, rewritten(part, random, { over: true }))).toBe(true);
    expect(sameShape(part, rewritten(part, random, { mirrored: true }))).toBe(false);
    expect(sameShape(part, rewritten(handed(15.1), random))).toBe(false);
    const bend = (change: Partial<Part['bends'][number]>): Part => ({ ...part, bends: part.bends.map((it) => ({ ...it, ...change })) });
    const others = [bend({ bendAngle: 89.9 }), bend({ insideRadius: 2.1 }), bend({ direction: part.bends[0]!.direction === 'A' ? 'B' : 'A' }), { ...part, thickness: 2.1 }, { ...part, plates: part.plates.map((it) => ({ ...it, holes: [] })) }];
    expect(others.map((other) => sameShape(part, rewritten(other, random)))).toEqual(others.map(() => false));
  });

  it('a stud on the other face is another part', () => {
    const stud = (side: 'A' | 'B'): Part => ({ ...handed(), formed: [{ plate: 0, kind: 'boss', side, outline: circle(5, -12, 3), height: 4 }] });
    expect(sameShape(stud('A'), rewritten(stud('A'), random, { over: true }))).toBe(true);
    expect(sameShape(stud('A'), rewritten(stud('B'), random))).toBe(false);
  });
});
