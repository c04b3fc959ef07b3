import { allowanceByRule, setback } from '../forming/index.js';
import { type Vec2, left2, scale2, signedArea, sub2, unit2 } from '../geometry/index.js';
import { absorbHole } from './absorbHole.js';
import { crossesItself } from './crossesItself.js';
import { RELIEF, moveOnLine } from './moveOnLine.js';
import type { Assumption, Bend, HemArc, Part, Plate } from './part.js';
import { relieved } from './relieved.js';
import { type Result, done, refused } from './result.js';

/** Flat length for the place of a hole's edge within a zone (a share of the arc): a mean K will do for that. Common practice, no source. */
const nominal = (insideRadius: number, thickness: number, bendAngle: number): number =>
  allowanceByRule({ name: 'K-factor', k: 0.44 }, insideRadius, thickness, bendAngle);

/** What tools make of a bend: its inside radius (mm); of a hem how its arc goes, and its lines move to hold all curved metal. */
export interface Formed {
  readonly insideRadius: number;
  readonly hem?: HemArc;
}

/** mm by which a bend's tangent lines move into its plates: what its outside lengths are measured to stays. */
const inwardsOf = (bend: Bend, { insideRadius, hem }: Formed): number =>
  hem
    ? insideRadius - bend.insideRadius + (Math.max(hem.preLength, hem.closedLength) - hem.closedLength) / 2
    : setback(insideRadius, 0, bend.bendAngle) - setback(bend.insideRadius, 0, bend.bendAngle);

/**
 * The part with the radii that tools form (mm, in the order of the bends), outside lengths kept as drawn (see `setback`): each
 * bend's tangent lines move into its plates (a larger radius) or out of them by (new - old) tan(bend angle / 2) up to 90
 * degrees, by new - old beyond, and the outline with them; a shoulder beside the bend narrower than that move, or than the thickness, goes along, a wider one
 * stays and a relief slit is cut beside the bend. Zones keep their extent along the bend, but for a corner that a
 * neighbouring bend has taken. A hem's lines keep its outer tangent and move in as far as its pre-bend curves the metal; a hem without tools keeps its own. A hole that a tangent line moves into is shared between plate and zone, and said so.
 * 'inside out' when a plate has not that much flat metal.
 */
export const asFormed = (part: Part, formed: readonly Formed[]): Result<Part> => {
  const plates: Plate[] = [...part.plates];
  const assumptions: Assumption[] = [...part.assumptions];
  const bends = part.bends.map((bend, index) => {
    const { insideRadius, hem } = formed[index]!;
    const delta = inwardsOf(bend, formed[index]!);
    const keeps = (!hem && bend.kind === 'hem') || delta === 0;
    if (keeps) return { ...bend, insideRadius, ...(hem ? { hem } : {}) };
    let zone = bend.zone;
    const sides = bend.sides.map((side, which) => {
      // plate 0 lies to the right of its line, plate 1 to the left of its own: into the plate is -v, +v
      const inwards = which === 0 ? -delta : delta;
      const plate = plates[side.plate]!;
      const narrow = Math.max(Math.abs(delta), part.thickness, 2 * RELIEF);
      plates[side.plate] = {
        outline: moveOnLine(plate.outline, side.line, inwards, narrow, delta > 0),
        holes: plate.holes.map((hole) => moveOnLine(hole, side.line, inwards, narrow, delta > 0)),
      };
      const by = scale2(left2(unit2(sub2(side.line.to, side.line.from))), inwards);
      const shift = (p: Vec2): Vec2 => [p[0] + by[0], p[1] + by[1]];
      const line = { from: shift(side.line.from), to: shift(side.line.to) };
      for (let hole = plates[side.plate]!.holes.length - 1; hole >= 0; hole--) {
        const taken = absorbHole(plates[side.plate]!, hole, line, which as 0 | 1, zone, nominal(insideRadius, part.thickness, bend.bendAngle));
        if (taken === null) continue;
        plates[side.plate] = taken.plate;
        zone = taken.zone;
        const sentence = `A hole in plate ${side.plate + 1} comes to lie ${taken.depth.toFixed(2)} mm inside bend ${bend.id} as formed and will be pulled out of shape.`;
        assumptions.push({ code: 'other', sentence, plates: [side.plate], bends: [bend.id] });
      }
      return { plate: side.plate, line };
    });
    return { ...bend, insideRadius, zone, sides: [sides[0]!, sides[1]!] as const, ...(hem ? { hem } : {}) };
  });
  for (const [index, plate] of plates.entries()) {
    if (plate === part.plates[index]) continue;
    if (signedArea(plate.outline) > 0 && !crossesItself([plate.outline, ...plate.holes])) continue;
    const at = part.bends.filter((bend) => bend.sides.some((side) => side.plate === index));
    const worst = at.reduce((a, b) => (growth(part, formed, b.id) > growth(part, formed, a.id) ? b : a));
    const by = growth(part, formed, worst.id);
    return refused(
      'inside out',
      by > 0
        ? `Plate ${index + 1} has no flat metal left when bend ${worst.id} forms with an inside radius of ${(formed[part.bends.indexOf(worst)]!.hem?.preInsideRadius ?? formed[part.bends.indexOf(worst)]!.insideRadius).toFixed(2)} mm: its tangent line moves ${by.toFixed(2)} mm into the plate.`
        : `The outline of plate ${index + 1} would cross itself when the tangent line of bend ${worst.id} moves ${(-by).toFixed(2)} mm out of the plate.`,
      { plates: [index], bends: at.map((bend) => bend.id), by },
    );
  }
  return done({ ...part, plates, assumptions, bends: bends.map((bend, index) => relieved(part, plates, bend, part.bends[index]!)) });
};

/** mm by which the tangent lines of a bend move into its plates. */
const growth = (part: Part, formed: readonly Formed[], id: string): number => {
  const index = part.bends.findIndex((bend) => bend.id === id);
  return inwardsOf(part.bends[index]!, formed[index]!);
};
