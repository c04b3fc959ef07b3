import { setback } from '../../forming/index.js';
import { type Vec2, dot2, left2, sub2, unit2 } from '../../geometry/index.js';
import type { BendSide, Part } from '../../sheet/index.js';

/** mm, and of unit vectors: lines that run the same way at the same distance are one edge. */
const SAME = 1e-6;

const isUnder = (side: BendSide, normal: Vec2): boolean => Math.abs(dot2(unit2(sub2(side.line.to, side.line.from)), normal)) < SAME;

/** mm: how far a plate reaches from a bend at one of its edges, outside: to the corners of this bend and of one that ends it. */
const legOf = (part: Part, bend: number, { plate, line }: BendSide): number => {
  const normal = left2(unit2(sub2(line.to, line.from)));
  const away = (at: Vec2): number => Math.abs(dot2(sub2(at, line.from), normal));
  const reach = Math.max(...part.plates[plate]!.outline.map(({ x, y }) => away([x, y])));
  const beyond = part.bends.map((other, b) => (b !== bend && other.sides.some((side) => side.plate === plate && isUnder(side, normal) && Math.abs(away(side.line.from) - reach) < SAME) ? corner(part, b) : 0));
  return reach + corner(part, bend) + Math.max(...beyond);
};

/** mm from a bend's tangent line to its outer corner, past 90 degrees to its outer tangent; of one of many hits to that of the whole bend. */
const corner = (part: Part, bend: number): number => {
  const { insideRadius, bendAngle, hit } = part.bends[bend]!;
  return hit ? setback(hit.radius, part.thickness, bendAngle * hit.count) : setback(insideRadius, part.thickness, bendAngle);
};

/**
 * mm: the shorter of a bend's two legs, outside, as ISO 2768-1 table 3 counts it ("the shorter side of the angle concerned"): the two
 * plates that it joins, without what is bent on beyond them. Of one of many hits those of the whole bend, the facets between the hits left out.
 */
export const shorterLeg = (part: Part, bend: number): number => {
  const { hit } = part.bends[bend]!;
  const whole = part.bends.flatMap((other, b) => (b === bend || (hit && other.hit?.of === hit.of) ? [b] : []));
  const sides = whole.flatMap((b) => part.bends[b]!.sides.map((side) => ({ b, side })));
  return Math.min(...sides.filter(({ b, side }) => !sides.some((other) => other.b !== b && other.side.plate === side.plate)).map(({ b, side }) => legOf(part, b, side)));
};
