import { type Grain, type Mark, minimumRadius } from '../metal/index.js';
import type { AirBend, AirBendSetup } from './airBendTypes.js';
import type { Beam } from './beam.js';
import { type Crowning, type CrowningDevice, crowningFor } from './crowning.js';
import { cylinderForces } from './cylinders.js';
import { minimumFlange } from './minimumFlange.js';
import { depthSensitivity } from './vee.js';

/** One limit of a step with its margin: positive means it holds, in `unit`. */
export interface StepLimit {
  readonly name: string;
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
  readonly unit: string;
  readonly holds: boolean;
  readonly mark: Mark | 'statics' | 'machine data' | 'geometry';
  readonly source: string;
}

/** A bend as it is to be made: where along the bed, on what. mm, N. */
export interface StepSituation {
  readonly setup: AirBendSetup;
  readonly bend: AirBend;
  /** Pieces of bend line that are bent in this stroke, each from and to in mm along the bed from its middle. */
  readonly pieces: readonly { readonly from: number; readonly to: number }[];
  readonly machine: {
    readonly rating: number;
    readonly ratingPerLength: number;
    readonly cylinderSpacing: number;
    readonly ram?: Beam;
    readonly bed?: Beam;
    readonly crowning?: CrowningDevice | null;
  };
  /** N/mm */
  readonly punchRating: number;
  readonly dieRating: number;
  /** Shortest flange at this bend, outside, in the bend's deduction convention. */
  readonly flange?: number;
  readonly grain?: Grain;
  /** Nearest edge of a hole or cut-out to the bend's tangent line. */
  readonly holeDistance?: number;
  /** Degrees that the angle may be off along the bend, and who says so. */
  readonly angleTolerance?: number;
  readonly angleToleranceSource?: string;
}

/** Nearest hole: this many thicknesses plus the inside radius from the inside face's tangent. Common practice, no source. */
const HOLE_FACTOR = 2.5;

/** All limits of a step, the tightest first. */
export const stepLimits = (s: StepSituation): readonly StepLimit[] => {
  const { bend, setup, machine } = s;
  const length = s.pieces.reduce((sum, p) => sum + p.to - p.from, 0);
  const force = bend.peakForcePerLength * length;
  const at = s.pieces.reduce((sum, p) => sum + ((p.from + p.to) / 2) * (p.to - p.from), 0) / length;
  const limits: StepLimit[] = [
    atMost('force against the machine', force, machine.rating, 'N', 'machine data', "the machine's rating"),
    atMost('force per length on bed and ram', bend.peakForcePerLength, machine.ratingPerLength, 'N/mm', 'machine data', "the machine's rating per length"),
    atMost('force per length on the punch', bend.peakForcePerLength, s.punchRating, 'N/mm', 'machine data', "the punch's rating"),
    atMost('force per length on the die', bend.peakForcePerLength, s.dieRating, 'N/mm', 'machine data', "the die's rating"),
    ...cylinderLimits(force, at, machine),
    atLeast('included angle under load over the die', bend.includedAngleUnderLoad, setup.dieAngle, 'degrees', 'geometry', 'under the die\'s own angle it is bottoming'),
  ];
  if (s.flange !== undefined) limits.push(...flangeLimits(s, s.flange));
  const least = minimumRadius(setup.metal, setup.thickness, s.grain ?? 'along', bend.bendAngleReleased);
  if (least !== null) {
    limits.push(atLeast(`inside radius ${s.grain ?? 'along'} the grain`, bend.insideRadius, least.radius, 'mm', least.mark, s.grain === undefined ? `${least.source}; the rolling direction is not told, so the worse is taken` : least.source));
  }
  if (s.holeDistance !== undefined) {
    limits.push(atLeast('hole or cut-out to the bend line', s.holeDistance, HOLE_FACTOR * setup.thickness + bend.insideRadius, 'mm', 'common practice', '2.5 t + inside radius; nearer holes are drawn out of round'));
  }
  const crowning = crowningOf(s);
  if (crowning !== null && s.angleTolerance !== undefined) {
    const spread = crowning.residual * degreesPerMm(s);
    limits.push(atMost('angle spread along the bend by deflection', spread, s.angleTolerance, 'degrees', 'statics', `Timoshenko beams of ram and bed, shear included, after crowning${s.angleToleranceSource === undefined ? '' : `; against ${s.angleToleranceSource}`}`));
  }
  return limits.sort((a, b) => a.margin / Math.abs(a.limit || 1) - b.margin / Math.abs(b.limit || 1));
};

/** Degrees of bend angle that a mm of depth is worth at the end of the stroke. */
export const degreesPerMm = ({ setup, bend }: Pick<StepSituation, 'setup' | 'bend'>): number =>
  depthSensitivity(setup, setup.thickness, bend.insideRadius, bend.bendAngleUnderLoad);

/** Crowning for a step, from its outermost ends; null without beam sections. */
export const crowningOf = (s: StepSituation): Crowning | null => {
  const { ram, bed, crowning } = s.machine;
  if (ram === undefined || bed === undefined) return null;
  const from = Math.min(...s.pieces.map((p) => p.from));
  const to = Math.max(...s.pieces.map((p) => p.to));
  const length = s.pieces.reduce((sum, p) => sum + p.to - p.from, 0);
  return crowningFor(ram, bed, { force: s.bend.peakForcePerLength * length, from, to }, crowning ?? null);
};

const cylinderLimits = (force: number, at: number, machine: StepSituation['machine']): StepLimit[] => {
  const { left, right } = cylinderForces(force, at, machine.cylinderSpacing);
  const source = 'statics of two cylinders; each bears half the rating';
  return [
    atMost('force on the fuller cylinder', Math.max(left, right), machine.rating / 2, 'N', 'statics', source),
    atLeast('force on the emptier cylinder', Math.min(left, right), 0, 'N', 'statics', 'a cylinder that would pull means the ram is levered up'),
  ];
};

const flangeLimits = (s: StepSituation, flange: number): StepLimit[] => {
  const { bend, setup } = s;
  const half = ((bend.bendAngleReleased / 2) * Math.PI) / 180;
  const overTangent = bend.bendAngleReleased <= 90 ? 0 : (bend.insideRadius + setup.thickness) * (Math.tan(half) - 1);
  const min = minimumFlange(setup, {
    bendAngleUnderLoad: bend.bendAngleUnderLoad,
    deduction: bend.deduction + 2 * overTangent,
    overTangent,
  });
  const source = 'geometry of edge and shoulder, with 0.07 V kept beyond it (common practice, no source)';
  return [
    atLeast('flange at the start of the stroke', flange, min.atStart + min.margin, 'mm', 'geometry', source),
    atLeast('flange at the end of the stroke', flange, min.atEnd + min.margin, 'mm', 'geometry', source),
  ];
};

const atMost = (name: string, value: number, limit: number, unit: string, mark: StepLimit['mark'], source: string): StepLimit => ({
  name, value, limit, margin: limit - value, unit, holds: value <= limit, mark, source,
});

const atLeast = (name: string, value: number, limit: number, unit: string, mark: StepLimit['mark'], source: string): StepLimit => ({
  name, value, limit, margin: value - limit, unit, holds: value >= limit, mark, source,
});
