import type { Step, Trial } from '../trial/index.js';

/** What rounding of a written force may add. Share. */
const ROUNDING = 1e-6;

/** The force that a step writes down, held against what its own tools and the machine are rated for. N, N/mm. */
export const forceFindings = ({ machine, punches, dies }: Trial, step: Step): string[] => {
  const findings: string[] = [];
  const hold = (what: string, asked: number, rated: number, unit: string): void => {
    if (asked > rated * (1 + ROUNDING)) findings.push(`Step ${step.number}: it asks ${asked.toFixed(0)} ${unit} of ${what}, rated ${rated.toFixed(0)} ${unit}.`);
  };
  const punch = punches.find((p) => p.id === step.punch);
  const die = dies.find((d) => d.id === step.die);
  if (punch) hold(`the punch ${punch.name}`, step.forcePerLength, punch.rating, 'N/mm');
  if (die) hold(`the die ${die.name}`, step.forcePerLength, die.rating, 'N/mm');
  hold('the machine', step.forcePerLength, machine.ratingPerLength, 'N/mm');
  hold('the machine', step.force, machine.rating, 'N');
  hold('one cylinder', Math.max(...step.cylinderForces), machine.rating / 2, 'N');
  return findings;
};
