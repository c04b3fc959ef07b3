import { flowStress, type HardeningCurve, initialYield } from '../metal/index.js';
import type { AirBendReason, AirBendSetup } from './airBendTypes.js';
import { halfOpening } from './vee.js';

const reason = (sentence: string): AirBendReason => ({ code: 'input', sentence });

/** What is wrong with the figures themselves, or null. */
export const checkSetup = (setup: AirBendSetup): AirBendReason | null => {
  const lengths: readonly (readonly [string, number])[] = [
    ['thickness', setup.thickness],
    ['V opening', setup.v],
    ['shoulder radius', setup.shoulderRadius],
    ['tip radius', setup.tipRadius],
  ];
  for (const [what, value] of lengths) {
    if (!(Number.isFinite(value) && value > 0)) return reason(`The ${what} must be more than 0 mm, not ${value}.`);
  }
  if (!(setup.dieAngle > 0 && setup.dieAngle < 180)) {
    return reason(`The die's included angle must lie between 0 and 180 degrees, not ${setup.dieAngle}.`);
  }
  const friction = setup.friction ?? 0;
  if (!(friction >= 0 && friction < 1)) return reason(`Friction must lie between 0 and 1, not ${friction}.`);
  const bad = curveFault(setup.metal);
  if (bad !== null) return reason(bad);
  const tangent = 2 * halfOpening(setup);
  if (tangent < NARROWEST_V * setup.thickness) {
    return {
      code: 'shoulder',
      sentence: `V ${setup.v} (${setup.vConvention}, ${tangent.toFixed(1)} mm between tangent points) is under ${NARROWEST_V} times the thickness of ${setup.thickness} mm: too narrow to bend it in air.`,
      by: NARROWEST_V * setup.thickness - tangent,
    };
  }
  return null;
};

/** V between tangent points over thickness: under it punch and shoulders pinch the sheet, which is no strip any more. */
const NARROWEST_V = 4;

/** Yield over modulus of what can be reckoned with: from annealed copper by a law that begins at nothing to far beyond spring steel. */
const SOFTEST = 1e-7;
const HARDEST = 0.05;
/** Plastic strain up to which fibres of a tight bend come. */
const MOST_STRAIN = 2;

/** What is wrong with a metal's elastic figures or its hardening, in a sentence, or null. */
const curveFault = ({ curve, modulus, poisson }: AirBendSetup['metal']): string | null => {
  if (!(Number.isFinite(modulus) && modulus > 0)) return `Young's modulus must be more than 0 MPa, not ${modulus}.`;
  if (!(poisson >= 0 && poisson < 0.5)) return `Poisson's number must lie from 0 to under 0.5, not ${poisson}.`;
  if (curve.kind !== 'points' && !(curve.n > 0 && curve.n < 1)) return `The exponent of a hardening law lies between 0 and 1, not ${curve.n}.`;
  if (falls(curve)) return 'The stress of a hardening curve must not fall as the strain grows: a strip of such a metal folds at one place.';
  const first = initialYield(curve, modulus);
  if (!(first >= SOFTEST * modulus && first <= HARDEST * modulus)) {
    return `The hardening curve yields at ${first.toPrecision(3)} MPa, outside ${(SOFTEST * modulus).toPrecision(2)} to ${(HARDEST * modulus).toPrecision(3)} MPa for a modulus of ${modulus} MPa: are its figures in MPa?`;
  }
  return flowStress(curve, MOST_STRAIN) <= modulus ? null : `The hardening curve rises to ${flowStress(curve, MOST_STRAIN).toPrecision(3)} MPa, more than the modulus of ${modulus} MPa: are its figures in MPa?`;
};

const falls = (curve: HardeningCurve): boolean => curve.kind === 'points' && curve.points.some(([, stress], i) => i > 0 && stress < curve.points[i - 1]![1]);
