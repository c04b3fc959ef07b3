import { spreadArm, type StripCase, type Unknowns } from './halfStrip.js';
import { curvatureOf } from './section.js';

/**
 * The strip as a straight lever from the middle to the shoulder's contact, the punch force spread as always: the force
 * at which its sections turn by the inclination together. A good start for Newton's method where no state is known.
 */
export const beamGuess = (strip: StripCase, nodes: Float64Array, inclination: number, contact: number): Unknowns | null => {
  const { section } = strip;
  const lever = contact / Math.cos(inclination);
  const reach = lever - spreadArm(0, 0);
  if (!(reach > 0)) return null;
  const turned = (force: number): number => {
    let sum = 0;
    let before = curvatureOf(section, force * reach);
    for (let i = 1; i < nodes.length && nodes[i]! < lever; i++) {
      const s = nodes[i]!;
      const curvature = curvatureOf(section, force * (lever - s - spreadArm(s, 0)));
      sum += ((before + curvature) / 2) * (s - nodes[i - 1]!);
      before = curvature;
    }
    return sum;
  };
  // between a force that leaves all elastic and one at which the middle is bent beyond use
  let low = Math.log(section.elasticMoment / reach / 2);
  let high = Math.log(section.moment(SHARPEST) / reach);
  if (turned(Math.exp(high)) < inclination || turned(Math.exp(low)) > inclination) return null;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (turned(Math.exp(middle)) < inclination) low = middle;
    else high = middle;
  }
  const force = Math.exp((low + high) / 2);
  return { logCurvature: Math.log(curvatureOf(section, force * reach)), logForce: Math.log(force * Math.cos(inclination)), bearing2: 0 };
};

/** Curvature x thickness in the middle that is not exceeded. */
const SHARPEST = 2;
/** Halvings of the force's range: to about a thousandth of it. */
const HALVINGS = 9;
