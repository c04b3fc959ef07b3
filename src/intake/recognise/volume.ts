import { signedArea } from '../../geometry/index.js';
import type { Bend, Plate } from '../../sheet/index.js';

/** mm3 of a bend's curved metal as drawn: its zone's share of the arc, times the arc through the middle, times the thickness. */
const bendVolume = (bend: Bend, thickness: number): number => {
  const arc = ((bend.bendAngle * Math.PI) / 180) * (bend.insideRadius + thickness / 2);
  return bend.zone.reduce((sum, c) => sum + signedArea(c), 0) * arc * thickness;
};

/** mm3 of plates and bends. */
export const modelVolume = (plates: readonly Plate[], bends: readonly Bend[], thickness: number): number =>
  plates.reduce((sum, p) => sum + thickness * [p.outline, ...p.holes].reduce((area, c) => area + signedArea(c), 0), 0) +
  bends.reduce((sum, b) => sum + bendVolume(b, thickness), 0);
