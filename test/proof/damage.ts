import type { Trial } from '../../src/trial/index.js';

/** A plan with the steps at places `index - 1` and `index` exchanged, numbered anew. */
export const swapped = (trial: Trial, index: number): Trial => {
  const steps = [...trial.steps];
  [steps[index - 1], steps[index]] = [steps[index]!, steps[index - 1]!];
  return { ...trial, steps: steps.map((s, i) => ({ ...s, number: i + 1 })) };
};

/** A plan with one step's part, fingers and all, moved along the bed. mm */
export const moved = (trial: Trial, index: number, by: number): Trial => ({
  ...trial,
  steps: trial.steps.map((s, i) => (i === index ? { ...s, place: s.place + by, stop: { ...s.stop, z: s.stop.z.map((z) => z + by) } } : s)),
});

/** A plan with a station written so much higher, on a riser or without saying why. mm */
export const raised = (trial: Trial, station: string, by: number, riser: number): Trial => ({
  ...trial,
  stations: trial.stations.map((s) => (s.id === station ? { ...s, riser: s.riser + riser, dieTop: s.dieTop + by, stackHeight: s.stackHeight + by } : s)),
});

/** A plan in which the gauge stays in X where the step before had it, and does not move back. */
export const stopLeft = (trial: Trial, index: number): Trial => ({
  ...trial,
  steps: trial.steps.map((s, i) => {
    const before = trial.steps[index - 1]!.stop;
    return i === index ? { ...s, stop: { ...s.stop, x: before.x, axisX: before.axisX, retract: 0 } } : s;
  }),
});
