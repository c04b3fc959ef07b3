import { type Equilibrium, type StripSolver, stripSolver } from './equilibrium.js';
import type { StripCase, Unknowns } from './halfStrip.js';

/** A stroke that is followed as far as it is asked for, each state kept. Radians, thickness one, stresses over E. */
export interface Stroke {
  readonly solver: StripSolver;
  /** All states found so far in ascending inclination. */
  readonly states: readonly Equilibrium[];
  /** The state at an inclination, or null when none was found. */
  readonly at: (inclination: number) => Equilibrium | null;
  /** The state at which a growing measure reaches a value; null past `last` or when none was found. */
  readonly where: (measure: (e: Equilibrium) => number, value: number, last: number) => Equilibrium | null;
}

/** Inclination of each step of the stroke, degrees to radians. */
const STEP = (10 * Math.PI) / 180;
/** Below this inclination each step is this many times the one before. */
const GROWING_BELOW = (3 * Math.PI) / 180;
const STEP_GROWTH = 4;
/** A step that fails is halved down to this. */
const LEAST_STEP = (0.1 * Math.PI) / 180;
/** How near `where` comes to the value. */
const CLOSE = 1e-9;
const MAX_SEARCH = 40;

/** Begins a stroke. `step` in radians: 10 degrees for single bends, less for a curve to be drawn. */
export const beginStroke = (strip: StripCase, step = STEP): Stroke => {
  const solver = stripSolver(strip);
  const states: Equilibrium[] = [];
  // well inside the elastic range, where the guess is nearly exact
  const elastic = (strip.section.elasticMoment / strip.section.stiffness) * (strip.half / 2);
  const first = Math.min(elastic, GROWING_BELOW / 8);

  /** Log-log extrapolation from the last two states. */
  const guess = (inclination: number): Unknowns => {
    const a = states[states.length - 1];
    if (a === undefined) return solver.elasticGuess(inclination);
    const b = states[states.length - 2];
    if (b === undefined) {
      const shift = Math.log(inclination / a.inclination);
      return { logCurvature: a.unknowns.logCurvature + shift, logForce: a.unknowns.logForce + shift, bearing2: 0 };
    }
    return between(b, a, inclination);
  };

  const add = (inclination: number): Equilibrium | null => {
    const last = states[states.length - 1];
    const found = solver.solve(inclination, guess(inclination), last?.matrix) ?? (last ? solver.solve(inclination, last.unknowns) : null);
    if (found !== null) states.push(found);
    return found;
  };

  /** Goes on to an inclination, in as many steps as it takes. */
  const advance = (to: number): boolean => {
    let from = states[states.length - 1]?.inclination ?? 0;
    let size = to - from;
    while (from < to) {
      const next = Math.min(to, from + size);
      if (add(next) !== null) {
        from = next;
        continue;
      }
      size = (next - from) / 2;
      if (size < LEAST_STEP * Math.min(1, next / GROWING_BELOW)) return false;
    }
    return true;
  };

  /** The next inclination of the usual ladder. */
  const nextStep = (): number => {
    const last = states[states.length - 1];
    if (last === undefined) return first;
    return last.inclination < GROWING_BELOW ? Math.min(STEP_GROWTH * last.inclination, last.inclination + step) : last.inclination + step;
  };

  const inside = (inclination: number): Equilibrium | null => {
    const above = states.findIndex((e) => e.inclination >= inclination);
    const exact = states[above];
    if (exact !== undefined && exact.inclination === inclination) return exact;
    const b = states[above - 1];
    if (exact === undefined || b === undefined) return null;
    const found =
      solver.solve(inclination, between(b, exact, inclination), b.matrix) ??
      solver.solve(inclination, b.unknowns) ??
      solver.solve(inclination, exact.unknowns);
    if (found !== null) states.splice(above, 0, found);
    return found;
  };

  const at = (inclination: number): Equilibrium | null => {
    while ((states[states.length - 1]?.inclination ?? 0) < inclination) {
      if (!advance(Math.min(nextStep(), inclination))) return null;
    }
    return inside(inclination);
  };

  return {
    solver,
    states,
    at,
    where: (measure, value, last) => {
      for (;;) {
        const top = states[states.length - 1];
        if (top !== undefined && measure(top) >= value) break;
        if (top !== undefined && top.inclination >= last) return null;
        if (!advance(Math.min(nextStep(), last))) return null;
      }
      const i = states.findIndex((e) => measure(e) >= value);
      if (i === 0) {
        // below the first state all is elastic and in proportion
        const small = (states[0]!.inclination * value) / measure(states[0]!);
        return solver.solve(small, solver.elasticGuess(small));
      }
      let low = states[i - 1]!;
      let high = states[i]!;
      let [a, b] = [low, high];
      for (let n = 0; n < MAX_SEARCH; n++) {
        // secant through the last two states found; into the middle of the bracket when it leaves it
        let next = a.inclination + ((b.inclination - a.inclination) * (value - measure(a))) / (measure(b) - measure(a));
        if (!(next > low.inclination && next < high.inclination)) next = (low.inclination + high.inclination) / 2;
        const found = inside(next);
        if (found === null) return null;
        if (Math.abs(measure(found) - value) < CLOSE) return found;
        if (measure(found) >= value) high = found;
        else low = found;
        [a, b] = [b, found];
      }
      return high;
    },
  };
};

const between = (a: Equilibrium, b: Equilibrium, inclination: number): Unknowns => {
  const f = Math.log(inclination / a.inclination) / Math.log(b.inclination / a.inclination);
  const mix = (p: number, q: number): number => p + (q - p) * f;
  return {
    logCurvature: mix(a.unknowns.logCurvature, b.unknowns.logCurvature),
    logForce: mix(a.unknowns.logForce, b.unknowns.logForce),
    // between a nose that bears in the middle and one that bears beside it the middle is tried first
    bearing2: a.unknowns.bearing2 > 0 ? Math.max(0, mix(a.unknowns.bearing2, b.unknowns.bearing2)) : 0,
  };
};
