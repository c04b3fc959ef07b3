import type { Margin, Reason, Step, Trial } from '../trial/index.js';

/** Margins of the planner that speak of force. */
const FORCES = new Set(['force', 'force per length', 'force on one cylinder']);

/** How many times the typical sheet's force the thickest and strongest one asks, 1 at the least; null in a plan kept from before this was reckoned, and without a force. */
export const worstStockFactor = ({ forming, pressing, forcePerLength }: Step): number | null => {
  const most = forming?.range?.peakForcePerLength.max ?? pressing?.strongest.forcePerLength;
  return most === undefined || forcePerLength === 0 ? null : Math.max(1, most / forcePerLength);
};

/** A step's margins of force, at the thickest and strongest sheet that the metal's standards let through. */
export const worstStock = (step: Step): readonly Margin[] => {
  const nominal = step.margins.filter((m) => FORCES.has(m.name));
  const { pressing } = step;
  const factor = worstStockFactor(step);
  if (factor === null) return nominal;
  return nominal.map((m) => ({ ...m, name: `${m.name}, thickest and strongest sheet`, value: m.value * factor, source: pressing ? `${m.source}; ${pressing.strongest.words}` : m.source }));
};

/** A step whose limit of force the worst sheet breaks although the typical one keeps it. */
export interface Overload {
  readonly step: Step;
  readonly margin: Margin;
  readonly reason: Reason;
}

/** The steps of a plan that the worst sheet overloads, each with its first limit broken, in their order. */
export const overloadsByWorstStock = (trial: Trial): readonly Overload[] => trial.steps.flatMap((step): Overload[] => {
  const margin = worstStock(step).find((m) => m.value > m.limit);
  if (!margin) return [];
  const bodies = [trial.punches.find((p) => p.id === step.punch)!.name, trial.dies.find((d) => d.id === step.die)!.name];
  return [{
    step, margin, reason: {
      code: margin.name.startsWith('force per length') ? 'tool rating' : 'force', bends: step.bends, bodies, by: margin.value - margin.limit,
      sentence: `At step ${step.number} (${step.bends.join(' and ')} in ${bodies[1]!}) the typical sheet is within the limit, but the thickest and strongest that its standards let through asks ${margin.value.toFixed(0)} ${margin.unit} where ${margin.limit.toFixed(0)} is the ${margin.source}.`,
    },
  }];
});
