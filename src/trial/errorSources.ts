import { type Metal, thicknessTolerance } from '../metal/index.js';
import { type Known, type Machine, bestPlace } from '../shop/index.js';
import { type VBend, insideRadiusAt } from './vBend.js';

/**
 * Where a deviation comes from. 'systematic' is the same on every part of the batch, so a correction after the first piece takes
 * it away; 'scatter' stays.
 */
export interface ErrorSource {
  readonly id: string;
  readonly what: string;
  /** The stroke or set-up that it belongs to, '' for what all share. */
  readonly at: string;
  readonly kind: 'systematic' | 'scatter';
  /** Plus and minus so much; null where nobody measured it. */
  readonly half: number | null;
  readonly unit: string;
  readonly mark: string;
}

const HABIT = 'common practice, no source';

/** Half ranges of what no machine record states. Common practice, no source. */
const USUAL = {
  /** mm of a cut edge's place, each edge by itself. */
  edge: 0.1,
  /** mm of the gauge's zero, as set by touching. */
  xZero: 0.1,
  /** mm that a sheet's edge lies off the finger: burr and the push of the hand. */
  play: 0.03,
  /** mm over 1,000 mm that the two fingers stand out of line with the bending plane. */
  squareness: 0.1,
  /** mm: what a micrometer in the shop reads; the thickness is measured before the first piece. */
  thicknessRead: 0.02,
  /** Share of the standard's range that one batch of sheets fills. */
  thicknessInBatch: 0.25,
  /** Share of the thickness where no standard is named. */
  thicknessUnnamed: 0.02,
  /** Share by which strength differs within a batch. */
  strengthInBatch: 0.04,
  /** Degrees of bend angle left after the test strip: what a protractor reads. */
  angleRead: 0.5,
  /** mm of deduction left after the test strip: what a caliper reads over two flanges, where measured pieces did not differ by more. */
  deductionRead: 0.1,
  /** mm by eye to a scribed line. */
  scribed: 0.5,
  /** mm of the sheet's place along the bed, set by eye to the mark of its left end. */
  sideways: 0.5,
  /** mm over the length of contact by which a sheet held against one finger is out of square. */
  heldSquare: 0.1,
} as const;

/** Width of the sheets that the thickness table is asked for. mm */
const SHEET_WIDTH = 1250;

const known = (figure: Known): Pick<ErrorSource, 'half' | 'mark'> =>
  figure.source === 'not known' ? { half: null, mark: 'not known' } : { half: figure.value, mark: `${figure.source}` };

/** What wear of bed and ram seats leaves of the depth along one stroke, plus and minus; null where it was not measured. */
export interface SeatsLeft {
  readonly half: number | null;
  readonly mark: string;
}

const whole = (along: number): string => along.toFixed(0);

/** At the best place along the bed for a bend of this length: what a search may count on before the stations stand. Undefined where nothing is to be counted. */
export const seatsAtBest = (machine: Machine, length: number): SeatsLeft | undefined => {
  if (machine.seats?.source !== 'measured') return machine.condition === 'new' && machine.seats === undefined ? undefined : { half: null, mark: 'not known' };
  const place = bestPlace(machine, length);
  if (place === null) return { half: null, mark: 'not known so far along the bed' };
  const { fit, window: [from, to] } = place;
  return { half: fit.left, mark: `measured; least from ${whole(from)} to ${whole(to)} mm of the bed's middle` };
};

/** A figure that older records do not hold: taken as usual on a new machine, not known on a used one. */
const knownOr = (figure: Known | undefined, machine: Machine, usual: number): Pick<ErrorSource, 'half' | 'mark'> => {
  if (figure) return known(figure);
  return machine.condition === 'new' ? { half: usual, mark: HABIT } : { half: null, mark: 'not known' };
};

/** The sources of one trial: those shared by every stroke, and those of one stroke, finger, edge or set-up. */
export const errorSources = (machine: Machine, metal: Metal, thickness: number) => {
  const range = thicknessTolerance(metal.thicknessStandard, thickness, SHEET_WIDTH);
  const batch = range ? ((range.plus - range.minus) / 2) * USUAL.thicknessInBatch : thickness * USUAL.thicknessUnnamed;
  const made = new Map<string, ErrorSource>();
  const keep = (source: ErrorSource): ErrorSource => {
    const old = made.get(source.id);
    if (old) return old;
    made.set(source.id, source);
    return source;
  };
  const { repeatability, gauge } = machine;
  return {
    get: (id: string): ErrorSource => made.get(id)!,
    thickness: keep({
      id: 'thickness', what: 'thickness within the batch', at: '', kind: 'scatter', half: batch, unit: 'mm',
      mark: range ? `a quarter of the range of ${range.source}; the share is ${HABIT}` : HABIT,
    }),
    thicknessRead: keep({ id: 'thickness read', what: 'thickness as measured beforehand', at: '', unit: 'mm', kind: 'systematic', half: USUAL.thicknessRead, mark: HABIT }),
    strength: keep({ id: 'strength', what: 'strength within the batch', at: '', unit: 'share', kind: 'scatter', half: USUAL.strengthInBatch, mark: HABIT }),
    xZero: keep({ id: 'x zero', what: 'zero of the X axis', at: '', unit: 'mm', kind: 'systematic', half: USUAL.xZero, mark: HABIT }),
    squareness: keep({ id: 'squareness', what: 'squareness of the gauge', at: '', unit: 'mm over 1,000 mm', kind: 'systematic', ...knownOr(gauge.squareness, machine, USUAL.squareness) }),
    ram: (step: string): ErrorSource => keep({ id: `ram|${step}`, what: 'repeatability of the ram', at: step, unit: 'mm', kind: 'scatter', ...known(repeatability.ram) }),
    seats: (step: string, left: SeatsLeft): ErrorSource => keep({ id: `seats|${step}`, what: 'wear of bed and ram seats', at: step, unit: 'mm', kind: 'scatter', ...left }),
    x: (step: string): ErrorSource => keep({ id: `x|${step}`, what: 'repeatability of X', at: step, unit: 'mm', kind: 'scatter', ...known(repeatability.x) }),
    r: (step: string): ErrorSource => keep({ id: `r|${step}`, what: 'repeatability of R', at: step, unit: 'mm', kind: 'scatter', ...known(repeatability.r) }),
    play: (step: string, finger: number): ErrorSource =>
      keep({ id: `play|${step}|${finger}`, what: 'play and touch of a finger', at: step, unit: 'mm', kind: 'scatter', ...knownOr(gauge.play, machine, USUAL.play) }),
    edge: (name: string): ErrorSource => keep({ id: `edge|${name}`, what: 'cut of an edge', at: name, unit: 'mm', kind: 'scatter', half: USUAL.edge, mark: HABIT }),
    scribed: (step: string): ErrorSource => keep({ id: `scribed|${step}`, what: 'placing by eye', at: step, unit: 'mm', kind: 'scatter', half: USUAL.scribed, mark: HABIT }),
    sideways: (step: string): ErrorSource => keep({ id: `sideways|${step}`, what: 'place along the bed, at a tapered edge', at: step, unit: 'mm', kind: 'scatter', half: USUAL.sideways, mark: HABIT }),
    heldSquare: (step: string): ErrorSource => keep({ id: `square|${step}`, what: 'holding square against one short stop', at: step, unit: 'mm over its length', kind: 'scatter', half: USUAL.heldSquare, mark: HABIT }),
    angle: (setup: string): ErrorSource => keep({ id: `angle|${setup}`, what: 'bend angle left by the test strip', at: setup, unit: 'degrees', kind: 'systematic', half: USUAL.angleRead, mark: HABIT }),
    /** `spread`: mm, plus and minus, of the pieces that the deduction was measured on; null where that is not known. */
    deduction: (setup: string, spread: number | null): ErrorSource => keep({
      id: `deduction|${setup}`, what: 'deduction left by the test strip', at: setup, unit: 'mm', kind: 'systematic',
      ...(spread !== null && spread > USUAL.deductionRead ? { half: spread, mark: 'measured' } : { half: USUAL.deductionRead, mark: HABIT }),
    }),
  };
};

export type ErrorSources = ReturnType<typeof errorSources>;

/**
 * By how many degrees the released bend angle changes: for each mm that the tip stands lower over the die seat, each mm that the
 * sheet is thicker under a tip that comes to the same place, and with the strength's share. The stroke's geometry with the inside
 * radius held (docs/kinematics.md); springback goes with the strength and against the thickness.
 */
export const angleSlopes = (bend: VBend): { readonly ram: number; readonly thickness: number; readonly strength: number } => {
  const half = (bend.bendAngleUnderLoad * Math.PI) / 360;
  const inside = insideRadiusAt(bend, bend.bendAngleUnderLoad);
  // depth = c tan b - (Ri + t + rd)(1 / cos b - 1)
  const byHalf = (bend.halfOpening - (inside + bend.thickness + bend.shoulderRadius) * Math.sin(half)) / Math.cos(half) ** 2;
  const byDepth = 360 / Math.PI / byHalf;
  const springback = bend.bendAngleUnderLoad - bend.bendAngle;
  return { ram: byDepth, thickness: byDepth / Math.cos(half) + springback / bend.thickness, strength: -springback };
};
