import { type GeneralClass, linearTolerance } from '../metal/index.js';
import { type Developed, type Part, bendsOf, defaultDimensions } from '../sheet/index.js';
import type { PredictedDimension, Step } from './trial.js';

/** A dimension of the part is the one measured after a stroke when both lengths agree so far. mm */
const SAME_LENGTH = 0.05;

/**
 * The steps with the tolerance, mm, that the length measured after each is to hold: that of the part's dimension which it is, the tightest of
 * several; else that of the general class asked; null where nobody asks for one.
 */
export const withAskedTolerance = (steps: readonly Step[], part: Part, sheet: Developed, predicted: readonly PredictedDimension[], cls: GeneralClass | undefined): readonly Step[] => {
  const across = new Map((part.dimensions ?? defaultDimensions(sheet)).map(({ id, between: [datum, other] }) => [id, new Set(bendsOf(part, { datum, other }).map((b) => part.bends[b]!.id))]));
  return steps.map((step): Step => {
    const { length } = step.measure;
    const own = predicted.filter(({ id, value, tolerance }) => tolerance !== null && Math.abs(value - length) <= SAME_LENGTH && step.bends.some((bend) => across.get(id)?.has(bend)));
    const tolerance = own.length > 0 ? Math.min(...own.map((d) => d.tolerance!)) : cls === undefined ? null : linearTolerance(length, cls)?.tolerance ?? null;
    return { ...step, measure: { ...step.measure, tolerance } };
  });
};
