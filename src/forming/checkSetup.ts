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
