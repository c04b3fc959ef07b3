import { type HardeningCurve, measured, type Metal, proofStress, scaleCurve, tensileOf } from '../metal/index.js';
import { airBendAtDepth } from './airBend.js';
import type { AirBendSetup } from './airBendTypes.js';

/** A test bend as the shop measured it; whatever was not measured stays away. mm, degrees, N/mm. */
export interface MeasuredBend {
  /** Sheet and tools; the thickness as measured. */
  readonly setup: Omit<AirBendSetup, 'metal'>;
  /** Travel from first touch. */
  readonly depth: number;
  readonly bendAngleReleased: number;
  /** Read by a protractor while the punch stands at the bottom. */
  readonly bendAngleUnderLoad?: number;
  /** By the machine's gauge, over the length. */
  readonly peakForcePerLength?: number;
}

/** What the bends say of the batch. */
export interface FittedMetal {
  readonly metal: Metal;
  /** Strength against the metal it was taken like, and its standard error. */
  readonly strength: number;
  readonly strengthError: number;
  /** Change of the hardening exponent, and its standard error. */
  readonly exponentChange: number;
  readonly exponentError: number;
  /** What the depth's zero was off, mm, and its standard error. */
  readonly depthOffset: number;
  readonly depthOffsetError: number;
  /** Largest remaining difference over its own uncertainty: over 2 something was read wrongly. */
  readonly worstMisfit: number;
  readonly words: string;
}

export type FittedMetalResult =
  | { readonly ok: true; readonly value: FittedMetal }
  | { readonly ok: false; readonly sentence: string };

/** How well a shop reads each figure: standard errors. Common practice, no source. */
const READING = { angle: 0.25, forceShare: 0.04 };
/** How far a batch lies from its typical figures before anything is measured: standard deviations. */
const PRIOR = { strength: 0.12, exponent: 0.04, depth: 0.05 };

/** Steps of the difference quotients, in the units of PRIOR. */
const PROBE = 0.1;
const MAX_ITERATIONS = 8;
const SETTLED = 1e-3;
/** A hardening exponent is kept above this. */
const LEAST_EXPONENT = 0.01;

/**
 * A shop's own metal from two (or more) measured bends: strength, hardening exponent and the depth's zero that fit them
 * best, weighed against how a batch of this metal usually scatters (Gauss-Newton on three unknowns). What the bends do
 * not tell stays as it was, and the errors say so: angles alone hardly tell strength from hardening; an angle under load
 * or a force does.
 */
export const metalFromBends = (bends: readonly MeasuredBend[], like: Metal, id: string, name: string): FittedMetalResult => {
  if (bends.length < 2) return { ok: false, sentence: 'Two measured bends are wanted at least.' };
  let x: number[] = [0, 0, 0];
  let current = differences(bends, like, x);
  if (typeof current === 'string') return { ok: false, sentence: current };
  let normal: number[][] = [];
  for (let n = 0; n < MAX_ITERATIONS; n++) {
    const columns: number[][] = [];
    for (let j = 0; j < 3; j++) {
      const probed = differences(bends, like, x.map((v, i) => v + (i === j ? PROBE : 0)));
      if (typeof probed === 'string') return { ok: false, sentence: probed };
      columns.push(probed.map((v, i) => (v - (current as number[])[i]!) / PROBE));
    }
    // the prior counts as three readings of zero with the error one
    normal = columns.map((a, i) => columns.map((b, j) => dot(a, b) + (i === j ? 1 : 0)));
    const right = columns.map((a, i) => -dot(a, current as number[]) - x[i]!);
    const step = solveThree(normal, right);
    const next = x.map((v, i) => v + Math.max(-1.5, Math.min(1.5, step[i]!)));
    const tried = differences(bends, like, next);
    if (typeof tried === 'string') return { ok: false, sentence: tried };
    x = next;
    current = tried;
    if (Math.hypot(...step) < SETTLED) break;
  }
  const error = [0, 1, 2].map((i) => Math.sqrt(solveThree(normal, [0, 1, 2].map((j) => (i === j ? 1 : 0)))[i]!));
  const curve = changed(like.curve, x);
  const strength = 1 + x[0]! * PRIOR.strength;
  const source = `${bends.length} test bends, like ${like.name}`;
  const worstMisfit = Math.max(...(current as number[]).map(Math.abs));
  const value: FittedMetal = {
    metal: { ...like, id, name, demo: false, ...measured(curve, proofStress(curve), tensileOf(curve).strength, source) },
    strength,
    strengthError: error[0]! * PRIOR.strength,
    exponentChange: x[1]! * PRIOR.exponent,
    exponentError: error[1]! * PRIOR.exponent,
    depthOffset: x[2]! * PRIOR.depth,
    depthOffsetError: error[2]! * PRIOR.depth,
    worstMisfit,
    words:
      `Strength ${Math.round(strength * 100)} percent of ${like.name} (plus and minus ${Math.round(error[0]! * PRIOR.strength * 100)}), ` +
      `depth zero ${(x[2]! * PRIOR.depth).toFixed(3)} mm off (plus and minus ${(error[2]! * PRIOR.depth).toFixed(3)}).` +
      (worstMisfit > 2 ? ' One reading does not fit the others: measure again.' : ''),
  };
  return { ok: true, value };
};

/** Calculated less measured, over its uncertainty, for every figure read; or why it cannot be. */
const differences = (bends: readonly MeasuredBend[], like: Metal, x: readonly number[]): number[] | string => {
  const metal: Metal = { ...like, curve: changed(like.curve, x) };
  const out: number[] = [];
  for (const b of bends) {
    const result = airBendAtDepth({ ...b.setup, metal, depth: b.depth + x[2]! * PRIOR.depth });
    if (!result.ok) return `A bend to ${b.depth} mm does not agree with the sheet and tools given: ${result.reason.sentence}`;
    const bend = result.value;
    out.push((bend.bendAngleReleased - b.bendAngleReleased) / READING.angle);
    if (b.bendAngleUnderLoad !== undefined) out.push((bend.bendAngleUnderLoad - b.bendAngleUnderLoad) / READING.angle);
    if (b.peakForcePerLength !== undefined) out.push((bend.peakForcePerLength / b.peakForcePerLength - 1) / READING.forceShare);
  }
  return out;
};

/** The curve stronger by x[0] and harder by x[1], both in the units of PRIOR; the exponent turns it about its strength. */
const changed = (curve: HardeningCurve, x: readonly number[]): HardeningCurve => {
  const factor = Math.max(0.2, 1 + x[0]! * PRIOR.strength);
  if (curve.kind === 'points') return scaleCurve(curve, factor);
  const turned = { ...curve, n: Math.max(LEAST_EXPONENT, curve.n + x[1]! * PRIOR.exponent) };
  return scaleCurve(turned, (factor * tensileOf(curve).strength) / tensileOf(turned).strength);
};

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * b[i]!, 0);

/** Cramer's rule. */
const solveThree = (m: readonly (readonly number[])[], r: readonly number[]): number[] => {
  const det = (a: readonly (readonly number[])[]): number =>
    a[0]![0]! * (a[1]![1]! * a[2]![2]! - a[1]![2]! * a[2]![1]!) -
    a[0]![1]! * (a[1]![0]! * a[2]![2]! - a[1]![2]! * a[2]![0]!) +
    a[0]![2]! * (a[1]![0]! * a[2]![1]! - a[1]![1]! * a[2]![0]!);
  const d = det(m);
  return [0, 1, 2].map((j) => det(m.map((row, i) => row.map((v, k) => (k === j ? r[i]! : v)))) / d);
};
