import type { AirBend, AirBendSetup } from './airBendTypes.js';

/** Tip radius over V from which bending is of the large-radius kind (Vorkov et al., Int. J. Material Forming 2019). */
const LARGE_RADIUS = 0.25;
/** V over thickness: below, shear and indentation outgrow the beam; the range of the published force forms ends at 5. */
const LEAST_V = 5;
const MOST_V = 40;
/** Degrees between the wing under load and the die's wall under which a stiffer sheet would touch it. */
const NEAR_WALL = 1.5;

/** Least inside radius over thickness under which the nose folds the sheet rather than bends it. Common practice, no source. */
const CREASE = 0.2;

/**
 * Straight leg over thickness under which the stress of nose and shoulder meet and the strip is no beam: from there its
 * springback would rise again with a narrower V.
 */
const SHORTEST_LEG = 1;

/** What a user should know beside the numbers. `wrapped`: the nose, bearing at two places, would bear between them too; `leg`: thicknesses of straight strip left. */
export const airBendWarnings = (setup: AirBendSetup, bend: AirBend, { wrapped, leg }: { readonly wrapped: boolean; readonly leg: number }): readonly string[] => {
  const { metal, thickness, tipRadius, dieAngle } = setup;
  const warnings: string[] = [];
  if (metal.curveSource.mark === 'memory') {
    warnings.push(`The hardening curve of ${metal.name} rests on typical figures from memory: bend a test strip of this batch first.`);
  }
  if (tipRadius / bend.vSharp > LARGE_RADIUS) {
    warnings.push('The tip radius is over a quarter of the V: large-radius bending, where the sheet may lift off the nose.');
  }
  if (wrapped) warnings.push('The sheet closes round the whole nose, which the calculation lets bear at two places only: radius, flat length and springback are rough, take a wider V or a sharper tip.');
  if (leg < SHORTEST_LEG) warnings.push(`Only ${(leg * thickness).toFixed(1)} mm of straight leg are left between nose and shoulder, less than the thickness: springback and force are rough, take a wider V or a sharper tip.`);
  const ratio = bend.vTangent / thickness;
  if (ratio < LEAST_V) warnings.push(`V is only ${ratio.toFixed(1)} times the thickness: the strip is hardly a beam, force and angle are rough.`);
  if (ratio > MOST_V) warnings.push(`V is ${ratio.toFixed(0)} times the thickness: springback is large and depends on the batch.`);
  if (bend.leastRadius < CREASE * thickness) {
    warnings.push(`The sheet is bent to an inside radius of ${bend.leastRadius.toFixed(2)} mm under the nose: a tip of ${tipRadius} mm may leave a crease.`);
  }
  const left = bend.includedAngleUnderLoad - dieAngle;
  if (left < NEAR_WALL) {
    warnings.push(`Only ${left.toFixed(1)} degrees of included angle are left to the die's walls under load.`);
  }
  return warnings;
};
