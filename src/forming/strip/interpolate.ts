import type { Equilibrium } from './equilibrium.js';
import type { Unknowns } from './halfStrip.js';

/**
 * Unknowns at an inclination from the two or three states nearest to it, by straight line or parabola against the
 * inclination's logarithm; from one alone in proportion.
 */
export const unknownsNear = (states: readonly Equilibrium[], inclination: number): Unknowns => {
  const found = states.findIndex((e) => e.inclination >= inclination);
  const above = found < 0 ? states.length : found;
  // two around it, and the nearer of the next ones
  let from = Math.max(0, above - 1);
  let to = Math.min(states.length, above + 1);
  const [before, after] = [states[from - 1], states[to]];
  const nearer = after === undefined || (before !== undefined && inclination - before.inclination < after.inclination - inclination);
  if (nearer) from = Math.max(0, from - 1);
  else to++;
  if (to - from < 3) from = Math.max(0, to - 3);
  const near = states.slice(from, to);
  if (near.length === 1) {
    const { unknowns, inclination: at } = near[0]!;
    const shift = Math.log(inclination / at);
    return { logCurvature: unknowns.logCurvature + shift, logForce: unknowns.logForce + shift, bearing2: unknowns.bearing2 };
  }
  const x = near.map((e) => Math.log(e.inclination / inclination));
  const mix = (of: (u: Unknowns) => number): number => atZero(x, near.map((e) => of(e.unknowns)));
  const split = near.filter((e) => e.unknowns.bearing2 > 0);
  const lower = [...near].reverse().find((e) => e.inclination < inclination) ?? near[0]!;
  return {
    logCurvature: mix((u) => u.logCurvature),
    logForce: mix((u) => u.logForce),
    // between a nose that bears in the middle and one that bears beside it the middle is tried first
    bearing2:
      split.length === near.length ? Math.max(0, mix((u) => u.bearing2))
      : lower.unknowns.bearing2 === 0 ? 0
      : Math.max(lower.unknowns.bearing2, atZero(x.slice(-2), near.slice(-2).map((e) => e.unknowns.bearing2))),
  };
};

/** Value at 0 of the polynomial through points. */
const atZero = (x: readonly number[], y: readonly number[]): number =>
  y.reduce((sum, v, i) => sum + x.reduce((part, a, j) => (j === i ? part : (part * a) / (a - x[i]!)), v), 0);

/** Inclination at which a measure reaches a value between two states: by inverse parabola through a third, else by the chord. */
export const crossingOf = (
  measure: (e: Equilibrium) => number, value: number, low: Equilibrium, high: Equilibrium, third: Equilibrium | undefined,
): number => {
  const within = (at: number): boolean => at > low.inclination && at < high.inclination;
  const near = third === undefined ? [low, high] : [low, high, third];
  const curved = atZero(near.map((e) => measure(e) - value), near.map((e) => e.inclination));
  if (within(curved)) return curved;
  const chord = atZero([measure(low) - value, measure(high) - value], [low.inclination, high.inclination]);
  return within(chord) ? chord : (low.inclination + high.inclination) / 2;
};

/** Where the parabola through three states' forces is greatest, and how much that is over the middle one's. */
export const vertexOf = (a: Equilibrium, b: Equilibrium, c: Equilibrium): { readonly at: number; readonly gain: number } => {
  const left = (b.force - a.force) / (b.inclination - a.inclination);
  const right = (c.force - b.force) / (c.inclination - b.inclination);
  const bend = (right - left) / (c.inclination - a.inclination);
  const slope = left + bend * (b.inclination - a.inclination);
  const at = b.inclination - slope / (2 * bend);
  if (!(bend < 0 && at > a.inclination && at < c.inclination)) return { at: b.inclination, gain: 0 };
  return { at, gain: (slope * slope) / (-4 * bend) };
};
