import { type AirBend, airBend, airBendCurve, type AirBendInput } from '../src/forming/index.js';
import { metalOfStrength, metals } from '../src/metal/index.js';
import { mulberry32 } from './mulberry32.js';

/** What a sweep found: bends answered, and each place where a figure does not go the way it must. */
export interface SweepResult {
  readonly answered: number;
  /** Left out: the strip says itself that it is rough there (tip over V/4, V under 5 t, closed round the nose, hardly a leg). */
  readonly rough: number;
  readonly breaks: readonly string[];
  /**
   * Noses blunter than V/16 whose force rises a second time (they come to bear at two places, nearer the shoulders), and the
   * greatest share by which it fell before: docs/forming.md says so.
   */
  readonly secondRises: number;
  readonly greatestDip: number;
}

/** Tip over V up to which the force has one peak. */
const BLUNT = 1 / 16;
/** Inside radius over tip up to which the nose shapes the bend, not the V. */
const NOSE_SHAPED = 1.15;

/** The force ripples by up to 6e-5 of itself where the bearing passes from node to node: what moves by less stands still. */
const STILL = 1e-4;
/** How much each thing is changed for its neighbour. */
const STEP = { v: 1.08, thickness: 1.05, strength: 1.05, angle: 5 } as const;
/** Of every so many bends the whole curve is looked at. */
const CURVES = 4;

type Figure = readonly [name: string, of: (b: AirBend, thickness: number) => number, way: 1 | -1];
const springback = (way: 1 | -1): Figure => ['springback', (b) => b.springback, way];
const peak = (way: 1 | -1): Figure => ['peak force', (b) => b.peakForcePerLength, way];
const depth: Figure = ['depth', (b) => b.depth, 1];
const radius: Figure = ['inside radius', (b) => b.insideRadius, 1];
const load: Figure = ['bend angle under load', (b) => b.bendAngleUnderLoad, 1];
/** To the mould lines, so that it does not jump where the outside is measured otherwise. */
const deduction: Figure = ['deduction', (b, t) => 2 * (b.insideRadius + t) * Math.tan((b.bendAngleReleased * Math.PI) / 360) - b.allowance, 1];

/**
 * Bends drawn at random over metals, V, tips, shoulders, friction and angles, each held against neighbours: wider V,
 * more angle, thicker, stronger; and depth, released angle and force along the stroke.
 */
export const formingSweep = (count: number, seed: number): SweepResult => {
  const random = mulberry32(seed);
  const breaks: string[] = [];
  let answered = 0;
  let rough = 0;
  let secondRises = 0;
  let greatestDip = 0;
  const stronger = metals.map((m) => metalOfStrength(m, STEP.strength));
  const solve = (input: AirBendInput): AirBend | null => {
    const result = airBend(input);
    if (!result.ok) return null;
    answered++;
    const { value } = result;
    const doubtful = input.tipRadius > value.vSharp / 4 || value.vTangent < 5 * input.thickness || value.warnings.some((w) => /closes round|straight leg/.test(w));
    if (doubtful) rough++;
    return doubtful ? null : value;
  };
  for (let i = 0; i < count; i++) {
    const which = Math.floor(random() * metals.length);
    const thickness = [0.8, 1, 1.5, 2, 3, 5, 8, 12][Math.floor(random() * 8)]!;
    const v = thickness * (5.5 + 18 * random() ** 2);
    const input: AirBendInput = {
      metal: metals[which]!, thickness, v, vConvention: random() < 0.5 ? 'sharp' : 'tangent', dieAngle: 30, shoulderRadius: v * (0.06 + 0.08 * random()),
      tipRadius: thickness * (0.3 + 2 * random()), friction: 0.15 * random(), bendAngle: 20 + 110 * random(),
    };
    const bend = solve(input);
    if (bend === null) continue;
    const words = (): string => JSON.stringify({ ...input, metal: input.metal.id }, (_k, x: unknown) => (typeof x === 'number' ? Number(x.toPrecision(6)) : x));
    const compare = (against: string, change: Partial<AirBendInput>, figures: readonly Figure[]): void => {
      const other = solve({ ...input, ...change });
      if (other === null) return;
      for (const [name, of, way] of figures) {
        const [a, b] = [of(bend, thickness), of(other, change.thickness ?? thickness)];
        if (!((b / a - 1) * way > -STILL)) breaks.push(`${name} against ${against}: ${a} then ${b}, ${words()}`);
      }
    };
    compare('V', { v: v * STEP.v }, [springback(1), peak(-1), depth, ...(bend.insideRadius > NOSE_SHAPED * input.tipRadius ? [radius] : [])]);
    compare('bend angle', { bendAngle: input.bendAngle + STEP.angle }, [depth, load, peak(1), deduction]);
    compare('thickness', { thickness: thickness * STEP.thickness }, [springback(-1), peak(1)]);
    compare('strength', { metal: stronger[which]! }, [springback(1), peak(1)]);
    if (i % CURVES !== 0) continue;
    const dip = along(input, words, breaks);
    greatestDip = Math.max(greatestDip, dip);
    if (dip > STILL) {
      secondRises++;
      if (input.tipRadius <= BLUNT * bend.vSharp) breaks.push(`force falls by ${dip} of itself before its peak, ${words()}`);
    }
  }
  return { answered, rough, breaks, secondRises, greatestDip };
};

/** Depth and released angle grow along the stroke; the greatest share by which the force falls before its peak comes back. */
const along = (input: AirBendInput, words: () => string, breaks: string[]): number => {
  const curve = airBendCurve(input, { upTo: input.bendAngle, step: 4 });
  if (!curve.ok) return 0;
  const { points } = curve.value;
  const top = points.reduce((best, p, k) => (p.forcePerLength > points[best]!.forcePerLength ? k : best), 0);
  let dip = 0;
  for (let k = 1; k < points.length; k++) {
    const [a, b] = [points[k - 1]!, points[k]!];
    if (k <= top) dip = Math.max(dip, 1 - b.forcePerLength / a.forcePerLength);
    if (b.depth < a.depth) breaks.push(`depth along the stroke at ${b.bendAngleUnderLoad} degrees: ${a.depth} then ${b.depth}, ${words()}`);
    if (b.bendAngleReleased < a.bendAngleReleased - 1e-9) breaks.push(`released bend angle at ${b.depth} mm: ${a.bendAngleReleased} then ${b.bendAngleReleased}, ${words()}`);
  }
  return dip;
};
