import { type Equilibrium, PASSED, type StripSolver, stripSolver } from './equilibrium.js';
import type { StripCase } from './halfStrip.js';
import { crossingOf, unknownsNear, vertexOf } from './interpolate.js';

/** A stroke that is followed as far as it is asked for, each state kept. Radians, thickness one, stresses over E. */
export interface Stroke {
  readonly solver: StripSolver;
  /** All states found so far in ascending inclination. */
  readonly states: readonly Equilibrium[];
  /** The state at an inclination, or null when none was found. */
  readonly at: (inclination: number) => Equilibrium | null;
  /** The state at which a growing measure reaches a value; null past `last` or when none was found. */
  readonly where: (measure: (e: Equilibrium) => number, value: number, last: number) => Equilibrium | null;
  /** Greatest force on the way to a state that `where` has found. */
  readonly greatestForce: (upTo: Equilibrium, last: number) => number;
  /**
   * The force of a state that `where` has found, `greatest` being the greatest on the way to it. Where the nose comes to bear at two places
   * at once the strip's force falls before it rises further; a real touch widens bit by bit and its force does not (docs/forming.md), so it is held there.
   */
  readonly heldForce: (state: Equilibrium, greatest: number, last: number) => number;
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
/** Share of the force by which a summit sought further would rise at most. */
const SUMMIT = 1e-6;
/** Radians: a parabola wider than this is not believed. */
const NEAR_SUMMIT = STEP / 2;
const MAX_CLIMBS = 12;
/** Most states that close in the place where the nose comes to bear at two places, how near (radians), and the share under the greatest force at which it is no longer looked for. */
const MAX_TURNS = 8;
const TURN = (0.2 * Math.PI) / 180;
const LEVEL = 0.02;
/** A middle bent to a radius of more than so many tips is far from fitting the nose. */
const FAR_FROM_FIT = 2;

/**
 * Begins a stroke. Without `step` it is for a single bend: in steps of 10 degrees of inclination, the first found by a
 * straight lever (`beamGuess`), solved as far as leads on to the next. With `step` (radians) every state is an answer,
 * from the elastic range on: a curve to be drawn.
 */
export const beginStroke = (strip: StripCase, step?: number): Stroke => {
  const solver = stripSolver(strip);
  const states: Equilibrium[] = [];
  /** The states of the ladder alone: the same whatever is asked, so that the force's summits are too. */
  let rungs: Equilibrium[] = [];
  let elastic = step !== undefined;
  const stride = step ?? STEP;
  const until = step === undefined ? PASSED : undefined;
  // well inside the elastic range, where the guess is nearly exact
  const yields = (strip.section.elasticMoment / strip.section.stiffness) * (strip.half / 2);
  const first = Math.min(yields, GROWING_BELOW / 8);

  const add = (inclination: number): Equilibrium | null => {
    const last = states[states.length - 1];
    const found =
      last === undefined
        ? solver.solve(inclination, solver.elasticGuess(inclination), undefined, until)
        : (solver.solve(inclination, unknownsNear(states, inclination), last.matrix, until) ??
          solver.solve(inclination, last.unknowns, undefined, until));
    if (found !== null) {
      states.push(found);
      rungs.push(found);
    }
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
    return last.inclination < GROWING_BELOW ? Math.min(STEP_GROWTH * last.inclination, last.inclination + stride) : last.inclination + stride;
  };

  /** Solved in full between two states, or under the first by the lever. */
  const inside = (inclination: number): Equilibrium | null => {
    const above = states.findIndex((e) => e.inclination >= inclination);
    const b = states[above];
    if (b === undefined) return null;
    const a = states[above - 1];
    const found =
      solver.solve(inclination, unknownsNear(states, inclination), a?.matrix ?? b.matrix) ??
      (a === undefined ? null : solver.solve(inclination, a.unknowns)) ??
      solver.solve(inclination, b.unknowns);
    if (found !== null) states.splice(above, b.inclination === inclination ? 1 : 0, found);
    return found;
  };

  /** Begins at one stride by the lever; where that fails, and for small bends, from the elastic range on. */
  const begin = (reached: (e: Equilibrium) => boolean, last: number): void => {
    if (states.length > 0) return;
    const guess = elastic || stride >= last ? null : solver.beamGuess(stride);
    const found = guess === null ? null : solver.solve(stride, guess, undefined, until);
    if (found !== null && !reached(found)) {
      states.push(found);
      rungs.push(found);
    } else elastic = true;
  };

  /** Climbs until a state has reached something; false when the stroke ends before. */
  const climb = (reached: (e: Equilibrium) => boolean, last: number): boolean => {
    begin(reached, last);
    for (;;) {
      const top = states[states.length - 1];
      if (top !== undefined && reached(top)) return true;
      if (top !== undefined && top.inclination >= last) return false;
      if (!advance(Math.min(nextStep(), last))) return false;
    }
  };

  /** The state of greatest force between two, `b` between them being greater than both: by parabolas. */
  const summit = (a: Equilibrium, b: Equilibrium, c: Equilibrium): Equilibrium => {
    for (let n = 0; n < MAX_CLIMBS; n++) {
      const { at, gain } = vertexOf(a, b, c);
      const flat = gain < SUMMIT * b.force;
      const [left, right] = [b.inclination - a.inclination, c.inclination - b.inclination];
      if (flat && Math.max(left, right) <= NEAR_SUMMIT) break;
      // a parabola over a wide bracket misses a summit beside the place where the nose comes to bear at two places
      const found = inside(flat ? b.inclination + (left > right ? -left : right) / 2 : at);
      if (found === null) break;
      if (found.force >= b.force) [a, b, c] = found.inclination < b.inclination ? [a, found, b] : [b, found, c];
      else [a, c] = found.inclination < b.inclination ? [found, c] : [a, found];
    }
    return b;
  };

  /**
   * Where the nose comes to bear at two places the force may turn down and up again between two rungs, each side with a
   * summit of its own: that place is closed in by rungs, as long as the force could be greatest beside it.
   */
  const findTurn = (upTo: Equilibrium): void => {
    const split = rungs.findIndex((e) => e.unknowns.bearing2 > 0);
    const [one, two] = [rungs[split - 1], rungs[split]];
    if (one === undefined || two === undefined || one.inclination >= upTo.inclination) return;
    const most = Math.max(...rungs.filter((e) => e.inclination <= upTo.inclination).map((e) => e.force));
    if (one.force < most * (1 - LEVEL) || one.force > two.force * (1 + LEVEL)) return;
    const between: Equilibrium[] = [];
    let [before, low, high] = [rungs[split - 2], one, two];
    for (let n = 0; n < MAX_TURNS && high.inclination - low.inclination > TURN; n++) {
      // the gap under the middle closes about evenly: its chord is followed, else the middle taken
      const closing = before === undefined ? 0 : (before.half.gap - low.half.gap) / (low.inclination - before.inclination);
      const ahead = low.inclination + low.half.gap / closing;
      const next = inside(n > 0 && ahead > low.inclination && ahead + TURN / 2 < high.inclination ? ahead + TURN / 2 : (low.inclination + high.inclination) / 2);
      if (next === null) break;
      between.push(next);
      if (next.unknowns.bearing2 > 0) high = next;
      else [before, low] = [low, next];
    }
    rungs.splice(split, 0, ...between.sort((a, b) => a.inclination - b.inclination));
  };

  return {
    solver,
    states,
    at: (inclination) =>
      climb((e) => e.inclination >= inclination, inclination)
        ? (states.find((e) => e.inclination === inclination && until === undefined) ?? inside(inclination))
        : null,
    where: (measure, value, last) => {
      if (!climb((e) => measure(e) >= value, last)) return null;
      const i = states.findIndex((e) => measure(e) >= value);
      if (i === 0) {
        // below the first state all is elastic and in proportion
        const small = (states[0]!.inclination * value) / measure(states[0]!);
        return solver.solve(small, solver.elasticGuess(small));
      }
      let low = states[i - 1]!;
      let high = states[i]!;
      let third = states[i + 1] ?? states[i - 2];
      for (let n = 0; n < MAX_SEARCH; n++) {
        const next = crossingOf(measure, value, low, high, third);
        const found = inside(next);
        if (found === null) return null;
        if (Math.abs(measure(found) - value) < CLOSE) return found;
        if (measure(found) >= value) [third, high] = [high, found];
        else [third, low] = [low, found];
      }
      return high;
    },
    greatestForce: (upTo, last) => {
      // a force that still rises at the last rung, or already falls at the first, may have its summit beside it
      const [before, end] = rungs.slice(-2);
      if (before !== undefined && end !== undefined && end.force > before.force && end.inclination > stride && end.inclination < last) add(Math.min(nextStep(), last));
      while (rungs.length > 1 && rungs[0]!.force >= rungs[1]!.force && rungs[0]!.inclination > first) {
        const lower = inside(rungs[0]!.inclination / 2);
        if (lower === null) break;
        rungs = [lower, ...rungs];
      }
      findTurn(upTo);
      let greatest = upTo.force;
      for (let i = 1; i + 1 < rungs.length && rungs[i - 1]!.inclination < upTo.inclination; i++) {
        const [a, b, c] = [rungs[i - 1]!, rungs[i]!, rungs[i + 1]!];
        const top = b.force < a.force || b.force < c.force ? b : summit(a, b, c);
        if (top.inclination <= upTo.inclination) greatest = Math.max(greatest, top.force);
      }
      // greatest at its end and yet falling there: the summit lies between the last rung and the end
      const next = states[states.indexOf(upTo) + 1];
      const under = rungs.filter((e) => e.inclination < upTo.inclination).pop();
      if (greatest === upTo.force && under !== undefined && next !== undefined && next.force < greatest) {
        const top = summit(under, upTo, next);
        if (top.inclination < upTo.inclination) greatest = Math.max(greatest, top.force);
      }
      return greatest;
    },
    heldForce: (state, greatest, last) => {
      if (state.force >= greatest || (state.unknowns.bearing2 <= 0 && 1 / state.half.middleCurvature - 0.5 > FAR_FROM_FIT * strip.tip)) return state.force;
      climb(() => false, last);
      findTurn(rungs[rungs.length - 1]!);
      const ahead = rungs.filter((e) => e.inclination > state.inclination);
      const risesAgain = ahead.some((b, i) => {
        const [a, c] = [ahead[i - 1] ?? state, ahead[i + 1]];
        return b.force > greatest || (b.force >= a.force && c !== undefined && b.force >= c.force && summit(a, b, c).force > greatest);
      });
      return risesAgain ? greatest : state.force;
    },
  };
};
