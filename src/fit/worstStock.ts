import type { Margin, Reason, Step, Trial } from '../trial/index.js';

/** Margins of the planner that speak of force. */
const FORCES = new Set(['force', 'force per length', 'force on one cylinder']);

/** A step's margins of force, at the thickest and strongest sheet that the metal's standards let through where forming knows it. */
export const worstStock = (step: Step): readonly Margin[] => {
  const nominal = step.margins.filter((m) => FORCES.has(m.name));
  const range = step.forming?.range ?? null;
  if (range === null || step.forcePerLength === 0) return nominal;
  const factor = Math.max(1, range.peakForcePerLength.max / step.forcePerLength);
  return nominal.map((m) => ({ ...m, name: `${m.name}, thickest and strongest sheet`, value: m.value * factor }));
};

/** The first of a plan's limits of force that the worst sheet breaks although the typical one keeps it; null where none. */
export const overloadByWorstStock = (trial: Trial): { readonly reason: Reason; readonly step: Step } | null => {
  for (const step of trial.steps) {
    const over = worstStock(step).find((m) => m.value > m.limit);
    if (!over) continue;
    const bodies = [trial.punches.find((p) => p.id === step.punch)!.name, trial.dies.find((d) => d.id === step.die)!.name];
    return {
      step, reason: {
        code: over.name.startsWith('force per length') ? 'tool rating' : 'force', bends: step.bends, bodies, by: over.value - over.limit,
        sentence: `At step ${step.number} (${step.bends.join(' and ')} in ${bodies[1]!}) the typical sheet is within the limit, but the thickest and strongest that its standards let through asks ${over.value.toFixed(0)} ${over.unit} where ${over.limit.toFixed(0)} is the ${over.source}.`,
      },
    };
  }
  return null;
};
