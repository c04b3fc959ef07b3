import { beamGuess } from './beamGuess.js';
import { dentOf } from './dent.js';
import { eliminate } from './eliminate.js';
import { type HalfStrip, integrateHalf, nodesFor, SPREAD, type StripCase, type Unknowns } from './halfStrip.js';
import { thicknessOf } from './section.js';

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
  /** How far the middle has lifted off a nose that bears beside it; below 0 the nose would bear there too. */
  readonly lift: number;
  /** Straight strip between the nose's pressure and the shoulder. */
  readonly leg: number;
  /** Residuals against unknowns as last known: a good start for the state next to it. */
  readonly matrix: Matrix;
}

type Matrix = readonly (readonly number[])[];

/** Residuals (radians, share of the half opening) below which the strip is in equilibrium. */
const SOLVED = 1e-10;
/** The same for a state that only leads on to others: its figures are never an answer. */
export const PASSED = 1e-5;
/** The same where only the sign of the gap in the middle is wanted, and the gap that is clear of it. */
const ROUGH = 1e-3;
const CLEAR_GAP = 0.02;
const MAX_ITERATIONS = 60;
/** Times a fresh matrix's step is shortened before the search is given up. */
const MAX_CUTS = 12;
/** The least share of itself that the bearing's square is brought to in a step. */
const NEARER = 0.1;
/** A step of the old matrix must bring the residual under this share of itself. */
const USEFUL = 0.5;
/** Steps of the difference quotients for the three unknowns. */
const PROBE = [1e-6, 1e-6, 1e-5] as const;
/** The furthest that one iteration may move each unknown. */
const REACH = [0.7, 0.3, 0.5] as const;
/** Square of the bearing's place that a splitting bearing is first tried with. */
const FIRST_SPLIT = 0.01;
/** Weight of the bearing's residual beside the others, so that all three are of a size. */
const BEARING_WEIGHT = 0.1;

interface Trial {
  readonly half: HalfStrip;
  readonly residual: readonly [number, number, number];
}

interface Solved {
  readonly u: Unknowns;
  readonly trial: Trial;
  readonly matrix: Matrix;
}

/** Everything that stays the same through one stroke. */
export interface StripSolver {
  readonly solve: (inclination: number, guess: Unknowns, matrix?: Matrix, until?: number) => Equilibrium | null;
  readonly elasticGuess: (inclination: number) => Unknowns;
  /** Unknowns of a bent strip without a state next to it; null where the leg is too short for a beam. */
  readonly beamGuess: (inclination: number) => Unknowns | null;
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
    const half = integrateHalf(strip, frictionAt(inclination), nodes, inclination, u);
    if (half === null) return null;
    const contact = contactAt(strip, inclination);
    return {
      half,
      residual: [
        half.end.inclination - inclination,
        (half.end.x - contact) / strip.half,
        BEARING_WEIGHT * half.gap,
      ],
    };
  };

  const solve = (inclination: number, guess: Unknowns, matrix?: Matrix, until = SOLVED): Equilibrium | null => {
    // which of the two ways the nose bears is tried first as guessed; the answer tells whether it holds
    for (const split of guess.bearing2 > 0 ? [true, false] : [false, true]) {
      const found = split ? solveSplit(inclination, guess, until, matrix) : solveBearing(inclination, { ...guess, bearing2: 0 }, false, until, matrix);
      if (found !== null && (split || found.trial.half.gap >= 0)) return finish(inclination, found);
      if (found !== null) guess = found.u;
    }
    return null;
  };

  /** All three unknowns at once; where that fails, the bearing's place by regula falsi around the other two. */
  const solveSplit = (inclination: number, guess: Unknowns, until: number, matrix?: Matrix): Solved | null => {
    const at = guess.bearing2 > 0 ? guess : { ...guess, bearing2: FIRST_SPLIT };
    const found = solveBearing(inclination, at, true, until, matrix);
    if (found !== null) return found;
    let low = solveBearing(inclination, { ...guess, bearing2: 0 }, false, until);
    if (low === null || low.trial.half.gap >= 0) return null;
    let high: Solved | null = null;
    for (let bearing2 = FIRST_SPLIT; high === null; bearing2 *= 2) {
      const next = solveBearing(inclination, { ...low.u, bearing2 }, false, until);
      if (next === null || bearing2 > strip.half * strip.half) return null;
      if (next.trial.half.gap >= 0) high = next;
      else low = next;
    }
    let [lowGap, highGap] = [low.trial.half.gap, high.trial.half.gap];
    for (let n = 0; n < MAX_ITERATIONS; n++) {
      const bearing2: number = low.u.bearing2 + ((high.u.bearing2 - low.u.bearing2) * lowGap) / (lowGap - highGap);
      const next = solveBearing(inclination, { ...low.u, bearing2 }, false, until);
      if (next === null) return null;
      const { gap } = next.trial.half;
      if (Math.abs(gap) < until) return next;
      // Illinois: the end that stays counts half, so that both come in
      if (gap < 0) {
        [low, lowGap] = [next, gap];
        highGap /= 2;
      } else {
        [high, highGap] = [next, gap];
        lowGap /= 2;
      }
    }
    return null;
  };

  /** Newton's method on two unknowns, the bearing's place held, or on three. */
  const solveBearing = (inclination: number, guess: Unknowns, split: boolean, until: number, known?: Matrix): Solved | null => {
    const size = split ? 3 : 2;
    const distance = ({ residual: [a, b, c] }: Trial): number => Math.sqrt(a * a + b * b + (split ? c * c : 0));
    let u = guess;
    let trial = attempt(inclination, u);
    let matrix: Matrix | null = known?.length === size ? known : null;
    let fresh = false;
    for (let n = 0; n < MAX_ITERATIONS; n++) {
      if (trial === null) return null;
      const now = distance(trial);
      // a middle that is clearly bent more than the nose is round need not be solved in full to know so
      if (now < until || (!split && now < ROUGH && trial.half.gap < -CLEAR_GAP && u.bearing2 === 0)) return { u, trial, matrix: matrix ?? [] };
      if (matrix === null) {
        matrix = jacobian(inclination, u, trial, size);
        fresh = true;
        if (matrix === null) return null;
      }
      const step = eliminate(matrix.map((row, i) => [...row, -trial!.residual[i]!]), size);
      let share = 1;
      for (let j = 0; j < size; j++) share = Math.min(share, REACH[j]! / Math.max(1e-30, Math.abs(step[j]!)));
      let better: { readonly u: Unknowns; readonly trial: Trial } | null = null;
      for (let cut = 0; cut < (fresh ? MAX_CUTS : 1) && better === null; cut++) {
        const v: Unknowns = {
          logCurvature: u.logCurvature + share * step[0]!,
          logForce: u.logForce + share * step[1]!,
          // a bearing that would come together comes nearer by steps: at zero itself nothing would pull it apart again
          bearing2: Math.max(u.bearing2 * NEARER, u.bearing2 + share * (step[2] ?? 0)),
        };
        const next = attempt(inclination, v);
        if (next !== null && distance(next) < now) better = { u: v, trial: next };
        else share /= 2.5;
      }
      if (better === null) {
        if (fresh) return null;
        matrix = null;
        continue;
      }
      // Broyden's update keeps the matrix useful; one that no longer helps much is taken anew
      const gained: boolean = distance(better.trial) < now * USEFUL;
      matrix = gained ? updated(matrix, u, better.u, trial, better.trial, size) : null;
      fresh = false;
      u = better.u;
      trial = better.trial;
    }
    return null;
  };

  const jacobian = (inclination: number, u: Unknowns, trial: Trial, size: number): Matrix | null => {
    const rows: number[][] = Array.from({ length: size }, () => []);
    for (let j = 0; j < size; j++) {
      const probed = attempt(inclination, moved(u, j, PROBE[j]!));
      if (probed === null) return null;
      for (let i = 0; i < size; i++) rows[i]!.push((probed.residual[i]! - trial.residual[i]!) / PROBE[j]!);
    }
    return rows;
  };

  const finish = (inclination: number, { u, trial: { half }, matrix }: Solved): Equilibrium | null => {
    // a shoulder that touches within the spread of the punch force leaves no leg to be a beam
    const bearing = half.bearing.s;
    const leg = half.end.s - bearing - SPREAD;
    if (leg < 0) return null;
    const force = 2 * Math.exp(u.logForce);
    const dent = dentOf(strip, half, force, bearing);
    const rise = -strip.shoulder + (strip.shoulder + 0.5) * Math.cos(inclination) - half.end.y;
    const at = half.bearing;
    const face = rise + at.y + (at.thickness / 2) * Math.cos(at.inclination);
    const tip = face - dent / 2 - strip.tip * (1 - Math.cos(at.inclination));
    const middle = thicknessOf(strip.section, strip.section.moment(half.middleCurvature));
    // what the nose dented while it bore there stays
    const lift = bearing > 0 ? tip + dent / 2 - (rise + middle / 2) : 0;
    return { inclination, depth: 1 - tip, force, release: half.release, unknowns: u, half, dent, lift, leg, matrix };
  };

  return {
    solve,
    nodes,
    frictionAt,
    beamGuess: (inclination) => beamGuess(strip, nodes, inclination, contactAt(strip, inclination)),
    elasticGuess: (inclination) => {
      const curvature = (2 * inclination) / strip.half;
      return {
        logCurvature: Math.log(curvature),
        logForce: Math.log((strip.section.stiffness * curvature) / strip.half),
        bearing2: 0,
      };
    },
  };
};

/** Where the mean line stands over the shoulder's contact, from the middle. */
const contactAt = (strip: StripCase, inclination: number): number => strip.half - (strip.shoulder + 0.5) * Math.sin(inclination);

/** Broyden's rank-one correction of the matrix after a step. */
const updated = (matrix: Matrix, from: Unknowns, to: Unknowns, a: Trial, b: Trial, size: number): Matrix => {
  const d = [to.logCurvature - from.logCurvature, to.logForce - from.logForce, to.bearing2 - from.bearing2];
  let square = 0;
  for (let j = 0; j < size; j++) square += d[j]! * d[j]!;
  return matrix.map((row, i) => {
    let expected = a.residual[i]!;
    for (let j = 0; j < size; j++) expected += row[j]! * d[j]!;
    const miss = (b.residual[i]! - expected) / square;
    return row.map((v, j) => v + miss * d[j]!);
  });
};

const moved = (u: Unknowns, which: number, by: number): Unknowns =>
  which === 0
    ? { ...u, logCurvature: u.logCurvature + by }
    : which === 1
      ? { ...u, logForce: u.logForce + by }
      : { ...u, bearing2: u.bearing2 + by };
