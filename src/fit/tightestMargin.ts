import type { Margin, Trial } from '../trial/index.js';

/** A margin, the step it belongs to, and the share of its limit that is used: 1 is the limit itself. */
export interface TightMargin extends Margin {
  readonly step: number;
  readonly share: number;
}

/** The margin of a plan that uses the greatest share of its limit; null where there is no plan. */
export const tightestMargin = (trial: Trial): TightMargin | null => {
  const all = trial.steps.flatMap((step) => step.margins.map((margin) => ({ ...margin, step: step.number, share: margin.value / margin.limit })));
  return all.reduce<TightMargin | null>((worst, margin) => (worst === null || margin.share > worst.share ? margin : worst), null);
};
