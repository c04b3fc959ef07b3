import { type HalfStrip, integrateHalf, nodesFor, SPREAD, type StripCase, type Unknowns } from './halfStrip.js';

/** The strip in equilibrium at one inclination of its legs. Thickness one, stresses over E, radians. */
export interface Equilibrium {
  /** Inclination of the leg at the shoulder: half the bend angle under load. */
  readonly inclination: number;
  /** Travel of the punch from first touch. */
  readonly depth: number;
  /** Punch force per length over E t. */
  readonly force: number;
  /** Half the springback. */
  readonly release: number;
  readonly unknowns: Unknowns;
  readonly half: HalfStrip;
  /** How much the nose has pressed into the upper face. */
  readonly dent: number;
}

/** Residuals (radians, share of the half opening) below which the strip is in equilibrium. */
const SOLVED = 1e-10;
const MAX_ITERATIONS = 30;
/** Steps of the difference quotients for the three unknowns. */
const PROBE = [1e-6, 1e-6, 1e-5] as const;
/** The furthest that one iteration may move each unknown. */
const REACH = [0.7, 0.3, 0.3] as const;
/** Weight of the bearing's residual beside the others, so that all three are of a size. */
const BEARING_WEIGHT = 0.3;

interface Trial {
  readonly half: HalfStrip;
  readonly residual: readonly [number, number, number];
}

/** Everything that stays the same through one stroke. */
export interface StripSolver {
  readonly solve: (inclination: number, guess: Unknowns) => Equilibrium | null;
  readonly elasticGuess: (inclination: number) => Unknowns;
  readonly nodes: Float64Array;
  readonly frictionAt: (inclination: number) => number;
}

export const stripSolver = (strip: StripCase): StripSolver => {
  const nodes = nodesFor(strip.half);

  /**
   * Friction with its direction: the lower face slides inwards at c sin b / cos^2 b - t/2 per radian (straight legs),
   * at first outwards, as the face turns about the middle of the sheet. Between the two it sticks.
   */
  const frictionAt = (inclination: number): number => {
    const pulledIn = (strip.half * Math.sin(inclination)) / Math.cos(inclination) ** 2;
    return strip.friction * Math.max(-1, Math.min(1, pulledIn / 0.5 - 1));
  };

  const attempt = (inclination: number, u: Unknowns): Trial | null => {
    const half = integrateHalf({ ...strip, friction: frictionAt(inclination) }, nodes, inclination, u);
    if (half === null) return null;
    const contact = strip.half - (strip.shoulder + 0.5) * Math.sin(inclination);
    return {
      half,
      residual: [
        half.end.inclination - inclination,
        (half.end.x - contact) / strip.half,
        BEARING_WEIGHT * (u.bearing - half.bearing.s),
      ],
    };
  };

  const solve = (inclination: number, guess: Unknowns): Equilibrium | null => {
    let u = guess;
    let trial = attempt(inclination, u);
    for (let n = 0; n < MAX_ITERATIONS; n++) {
      if (trial === null) return null;
      if (Math.hypot(...trial.residual) < SOLVED) return finish(inclination, u, trial.half);
      const size = u.bearing > 0 || trial.half.bearing.s > 0 ? 3 : 2;
      const rows: number[][] = [[], [], []];
      for (let j = 0; j < size; j++) {
        const probed = attempt(inclination, moved(u, j, PROBE[j]!));
        if (probed === null) return null;
        for (let i = 0; i < size; i++) rows[i]!.push((probed.residual[i]! - trial.residual[i]!) / PROBE[j]!);
      }
      for (let i = 0; i < size; i++) rows[i]!.push(-trial.residual[i]!);
      const step = eliminate(rows, size);
      let share = 1;
      for (let j = 0; j < size; j++) share = Math.min(share, REACH[j]! / Math.max(1e-30, Math.abs(step[j]!)));
      let better: { readonly u: Unknowns; readonly trial: Trial } | null = null;
      for (let halving = 0; halving < 12 && better === null; halving++) {
        const v: Unknowns = {
          logCurvature: u.logCurvature + share * step[0]!,
          logForce: u.logForce + share * step[1]!,
          bearing: Math.max(0, u.bearing + share * (step[2] ?? 0)),
        };
        const next = attempt(inclination, v);
        if (next !== null && Math.hypot(...next.residual) < Math.hypot(...trial.residual)) better = { u: v, trial: next };
        share /= 2.5;
      }
      if (better === null) return null;
      u = better.u;
      trial = better.trial;
    }
    return null;
  };

  const finish = (inclination: number, u: Unknowns, half: HalfStrip): Equilibrium | null => {
    // a shoulder that touches within the spread of the punch force leaves no leg to be a beam
    if (half.end.s < u.bearing + SPREAD) return null;
    const force = 2 * Math.exp(u.logForce);
    const dent = dentOf(strip, half, force, u.bearing);
    const lift = -strip.shoulder + (strip.shoulder + 0.5) * Math.cos(inclination) - half.end.y;
    const at = half.bearing;
    const face = lift + at.y + (at.thickness / 2) * Math.cos(at.inclination);
    const tip = face - dent / 2 - strip.tip * (1 - Math.cos(at.inclination));
    return { inclination, depth: 1 - tip, force, release: half.release, unknowns: u, half, dent };
  };

  return {
    solve,
    nodes,
    frictionAt,
    elasticGuess: (inclination) => {
      const curvature = (2 * inclination) / strip.half;
      return {
        logCurvature: Math.log(curvature),
        logForce: Math.log((strip.section.stiffness * curvature) / strip.half),
        bearing: 0,
      };
    },
  };
};

const moved = (u: Unknowns, which: number, by: number): Unknowns =>
  which === 0
    ? { ...u, logCurvature: u.logCurvature + by }
    : which === 1
      ? { ...u, logForce: u.logForce + by }
      : { ...u, bearing: u.bearing + by };

/**
 * Thickness lost under the nose besides that of bending. The punch force F squeezes the section under it by (2F/pi t)
 * ln(0.96 t/a) on average (elastic strip pressed on one face over +-a: its even part, integrated), which moves the
 * neutral line in by that times t over twice the face stress; the strip thins by that shift times each step of
 * curvature. The touch grows with the dent: a^2 = 2 dent / (1/tip - curvature of the face).
 */
const dentOf = (strip: StripCase, half: HalfStrip, force: number, bearing: number): number => {
  const k = half.middleCurvature;
  const compliance = strip.section.compliance(k);
  const face = k / (1 - k / 2);
  let dent = 0;
  for (let n = 0; n < 20; n++) {
    const touch = Math.sqrt((2 * dent) / Math.max(LEAST_CONFORM, 1 / strip.tip - face)) + bearing;
    const squeeze = Math.log(Math.max(1, 0.96 / Math.max(LEAST_TOUCH, touch)));
    dent = (dent + (force / Math.PI) * squeeze * compliance) / 2;
  }
  return dent;
};

/** Half width of touch to begin with, over t: a sharp line would press in without end. */
const LEAST_TOUCH = 0.02;
/** 1/t: as the face comes to the nose's own curvature the touch grows without end. */
const LEAST_CONFORM = 0.1;

/** Gauss elimination with row exchange on `size` rows of `size` + 1. */
const eliminate = (rows: number[][], size: number): number[] => {
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let r = i + 1; r < size; r++) if (Math.abs(rows[r]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = r;
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    for (let r = i + 1; r < size; r++) {
      const f = rows[r]![i]! / rows[i]![i]!;
      for (let c = i; c <= size; c++) rows[r]![c]! -= f * rows[i]![c]!;
    }
  }
  const x: number[] = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = rows[i]![size]!;
    for (let c = i + 1; c < size; c++) sum -= rows[i]![c]! * x[c]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
};
