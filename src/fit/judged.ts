import type { Reason, Trial } from '../trial/index.js';

/**
 * A plan held against what the drawing asks, by the machine's measured repeatability: where the gauge alone comes back worse than
 * the flange's tolerance, the part is not promised. What nobody measured is said to be not known, never taken as new.
 */
export const judged = (trial: Trial): Trial => {
  if (trial.verdict !== 'makes' || trial.steps.length === 0) return trial;
  const { x } = trial.machine.repeatability;
  if (x.source === 'not known') {
    return { ...trial, warnings: [...trial.warnings, 'How well the X axis of this machine comes back is not known: no tolerance is promised before it is measured.'] };
  }
  const beyond = trial.steps.filter((s) => s.stop.kind !== 'none' && x.value > s.measure.tolerance);
  const [worst] = [...beyond].sort((a, b) => a.measure.tolerance - b.measure.tolerance);
  if (!worst) return trial;
  const reason: Reason = {
    code: 'tolerance', bends: worst.bends, bodies: ['X axis'], by: x.value - worst.measure.tolerance,
    sentence: `At step ${worst.number} ${worst.measure.what}, is allowed plus or minus ${worst.measure.tolerance} mm, and the X axis comes back within ${x.value} mm only (${x.source}).`,
  };
  return { ...trial, verdict: 'does not make', proven: false, reasons: [reason, ...trial.reasons] };
};
