import { signedArea } from '../../geometry/index.js';
import type { Bend, Plate } from '../../sheet/index.js';
import type { Joint } from './joints.js';

/** mm3 of a bend's curved metal as drawn: its zone's share of the arc, times the arc through the middle, times the thickness. */
const bendVolume = (bend: Bend, thickness: number): number => {
  const arc = ((bend.bendAngle * Math.PI) / 180) * (bend.insideRadius + thickness / 2);
  return bend.zone.reduce((sum, c) => sum + signedArea(c), 0) * arc * thickness;
};

/** mm3 of plates and bends. */
export const modelVolume = (plates: readonly Plate[], bends: readonly Bend[], thickness: number): number =>
  plates.reduce((sum, p) => sum + thickness * [p.outline, ...p.holes].reduce((area, c) => area + signedArea(c), 0), 0) +
  bends.reduce((sum, b) => sum + bendVolume(b, thickness), 0);

/**
 * mm3 by which the drawing of a sharp bend exceeds the round one taken for it. A corner that is drawn sharp holds
 * r2 (tan(a/2) - a/2) more than an arc of radius r at bend angle a, outside; inside as much less.
 */
export const sharpExcess = (bend: Bend, joint: Joint, thickness: number): number => {
  if (joint.drawn.kind !== 'sharp') return 0;
  const [inside, outside] = joint.drawn.radii;
  const taken = joint.insideRadius;
  const perMm = (Math.tan(joint.angle / 2) - joint.angle / 2) * ((taken + thickness) ** 2 - taken ** 2 - outside ** 2 + inside ** 2);
  return perMm * bend.zone.reduce((sum, c) => sum + signedArea(c), 0);
};
