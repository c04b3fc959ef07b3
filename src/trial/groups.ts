import { type Vec2, cross2, dot2, sub2, unit2 } from '../geometry/index.js';
import type { Bend, Part } from '../sheet/index.js';
import { COLLINEAR } from './limits.js';
import type { Offset } from './offsets.js';

/** Bends that one stroke makes: on one straight line of a common plate, of one angle, direction and radius. */
export interface Group {
  readonly bends: readonly number[];
  /** The plate that they share, and on which side of the first bend it lies. */
  readonly hub: number;
  readonly hubSide: 0 | 1;
  /** A stroke on bends that another has begun: closing hems. */
  readonly closes?: true;
  /** An offset bend: two opposite bends, the hub between them. */
  readonly offset?: Offset;
  /** Bends made in two passes: the stroke that begins them, or the one that finishes them. */
  readonly pass?: 1 | 2;
  /** What it makes, and what must be there before it, as bits of a state; by default its bends' own bits, and nothing. */
  readonly bits?: number;
  readonly needs?: number;
}

const sideOn = (bend: Bend, plate: number): 0 | 1 | null =>
  bend.sides[0].plate === plate ? 0 : bend.sides[1].plate === plate ? 1 : null;

const alike = (a: Bend, b: Bend): boolean =>
  a.kind === b.kind && a.direction === b.direction &&
  Math.abs(a.bendAngle - b.bendAngle) < 0.01 && Math.abs(a.insideRadius - b.insideRadius) < 0.01;

/** Do both tangent lines lie on one straight line of the common plate, with the metal on the same side? */
const inLine = (a: Bend, sideA: 0 | 1, b: Bend, sideB: 0 | 1): boolean => {
  const one = a.sides[sideA].line;
  const two = b.sides[sideB].line;
  const u = unit2(sub2(one.to, one.from));
  const off = (p: Vec2): number => Math.abs(cross2(u, sub2(p, one.from)));
  const sameWay = dot2(u, sub2(two.to, two.from)) > 0;
  return sameWay === (sideA === sideB) && off(two.from) < COLLINEAR && off(two.to) < COLLINEAR;
};

/** The bends of a part gathered into strokes, in the order of their first bend. */
export const groupsOf = (part: Part, offsets: readonly Offset[] = []): readonly Group[] => {
  const taken = new Set<number>(offsets.flatMap((o) => o.bends.slice(1)));
  const groups: Group[] = [];
  part.bends.forEach((bend, i) => {
    if (taken.has(i)) return;
    const offset = offsets.find((o) => o.bends[0] === i);
    if (offset) {
      groups.push({ bends: offset.bends, hub: offset.web, hubSide: sideOn(bend, offset.web)!, offset });
      return;
    }
    let best: Group = { bends: [i], hub: bend.sides[0].plate, hubSide: 0 };
    for (const hubSide of [0, 1] as const) {
      const hub = bend.sides[hubSide].plate;
      const bends = part.bends.flatMap((other, k) => {
        const side = sideOn(other, hub);
        return k === i || (!taken.has(k) && k > i && !offsets.some((o) => o.bends.includes(k)) && side !== null && alike(bend, other) && inLine(bend, hubSide, other, side)) ? [k] : [];
      });
      if (bends.length > best.bends.length) best = { bends, hub, hubSide };
    }
    best.bends.forEach((k) => taken.add(k));
    groups.push(best);
  });
  return groups;
};

/** A group taken apart, for when it cannot be bent in one stroke. */
export const singles = (part: Part, group: Group): readonly Group[] =>
  group.offset ? [group] : group.bends.map((bend) => {
    const side = sideOn(part.bends[bend]!, group.hub)!;
    return { bends: [bend], hub: group.hub, hubSide: side };
  });

/** What a stroke makes, as bits of one number: its bends' own, or those of a later state of them. */
export const bitsOf = (group: Group): number => group.bits ?? group.bends.reduce((bits, b) => bits | (1 << b), 0);
