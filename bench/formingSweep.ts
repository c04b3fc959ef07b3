import { type AirBend, airBend, airBendCurve, type AirBendInput } from '../src/forming/index.js';
import { metalOfStrength, metals } from '../src/metal/index.js';
import { mulberry32 } from './mulberry32.js';

/** What a sweep found: bends answered, and each place where a figure does not go the way it must. */
export interface SweepResult {
  readonly answered: number;
  /** Left out: the strip says itself that it is rough there (tip over V/4, V under 5 t, closed round the nose, hardly a leg). */
  readonly rough: number;
  readonly breaks: readonly string[];
  /** Strokes drawn. */
  readonly curves: number;
  /** Strokes whose force is held where the nose comes to bear at two places, and the greatest share by which the strip alone would fall there: docs/forming.md. */
  readonly heldStrokes: number;
  readonly greatestDip: number;
  /** Radii that fall with a wider V where the nose fits the metal under it (see `FITS`), and by what share at most. */
  readonly fittedFalls: number;
  readonly greatestFall: number;
}

/**
 * The metal's least radius r under a nose p: the touch of a dent is as wide as 1/(1/p - 1/r) says, which up to r = 1.5 p is
 * more than three times what it is on flat sheet. There the dent goes as nose and metal come to fit, and the apex with it.
 */
const FITS = 1.5;

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
  let curves = 0;
  let heldStrokes = 0;
  let greatestDip = 0;
  let fittedFalls = 0;
  let greatestFall = 0;
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
    const compare = (against: string, change: Partial<AirBendInput>, figures: readonly Figure[]): AirBend | null => {
      const other = solve({ ...input, ...change });
      if (other === null) return null;
      for (const [name, of, way] of figures) {
        const [a, b] = [of(bend, thickness), of(other, change.thickness ?? thickness)];
        if (!((b / a - 1) * way > -STILL)) breaks.push(`${name} against ${against}: ${a} then ${b}, ${words()}`);
      }
      return other;
    };
    const fits = bend.leastRadius < FITS * input.tipRadius;
    const wider = compare('V', { v: v * STEP.v }, [springback(1), peak(-1), depth, ...(fits ? [] : [radius])]);
    const fall = wider === null || !fits ? 0 : 1 - wider.insideRadius / bend.insideRadius;
    if (fall > STILL) fittedFalls++;
    greatestFall = Math.max(greatestFall, fall);
    compare('bend angle', { bendAngle: input.bendAngle + STEP.angle }, [depth, load, peak(1), deduction]);
    compare('thickness', { thickness: thickness * STEP.thickness }, [springback(-1), peak(1)]);
    compare('strength', { metal: stronger[which]! }, [springback(1), peak(1)]);
    if (i % CURVES !== 0) continue;
    curves++;
    const dip = along(input, words, breaks);
    greatestDip = Math.max(greatestDip, dip);
    if (dip > STILL) heldStrokes++;
  }
  return { answered, rough, breaks, curves, heldStrokes, greatestDip, fittedFalls, greatestFall };
};

/** Depth and released angle grow along the stroke; answers with the share by which the strip's own force fell before its peak, which only a nose that bears at two places may cause. */
const along = (input: AirBendInput, words: () => string, breaks: string[]): number => {
  const curve = airBendCurve(input, { step: 4 });
  if (!curve.ok) return 0;
  const { points: whole } = curve.value;
  const points = whole.filter((p) => p.bendAngleUnderLoad <= input.bendAngle);
  for (let k = 1; k < points.length; k++) {
    const [a, b] = [points[k - 1]!, points[k]!];
    if (b.depth < a.depth) breaks.push(`depth along the stroke at ${b.bendAngleUnderLoad} degrees: ${a.depth} then ${b.depth}, ${words()}`);
    if (b.bendAngleReleased < a.bendAngleReleased - 1e-9) breaks.push(`released bend angle at ${b.depth} mm: ${a.bendAngleReleased} then ${b.bendAngleReleased}, ${words()}`);
  }
  // the peak may lie past the bend asked for
  const peak = whole.reduce((best, p) => (p.forcePerLength > best.forcePerLength ? p : best));
  const held = Math.max(...points.map((p) => p.held));
  if (peak.noseBears === 'in the middle' && held > STILL) breaks.push(`force falls by ${held} of itself before its peak though the nose bears in the middle all the way, ${words()}`);
  return held;
};

/** What a sweep found in a line. */
export const sweepInWords = ({ answered, rough, breaks, curves, heldStrokes, greatestDip, fittedFalls, greatestFall }: SweepResult): string =>
  `forming sweep: ${answered} bends, ${rough} rough by their own warning, ${breaks.length} not monotone; ${heldStrokes} of ${curves} strokes are held, where the strip falls by ${(100 * greatestDip).toFixed(2)} % at most; ${fittedFalls} radii fall with V where the nose fits, by ${(100 * greatestFall).toFixed(2)} % at most`;
