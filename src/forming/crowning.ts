import { type Beam, beamDeflection, type SpreadLoad } from './beam.js';

/** The line that a crowning device lifts the bed to: a parabola, or the shape of the evenly loaded beam. */
export type CrowningShape = 'parabola' | 'evenly loaded beam';

export interface CrowningDevice {
  readonly shape: CrowningShape;
  /** mm of bed that it lifts, about the middle. */
  readonly length: number;
}

export interface Crowning {
  /** Middle of the piece against the line through its ends, ram and bed together, nothing done about it, mm. */
  readonly uncrowned: number;
  /** Lift of the device at the middle of the bed that leaves least, mm; 0 without a device. */
  readonly setting: number;
  /** What is left, mm: the greatest distance from the line through the piece's ends. */
  readonly residual: number;
}

/** Places along the piece at which the gap is looked at. */
const PLACES = 41;

/**
 * How much ram and bed give way along the piece, and the crowning for this length and this place along the bed. A tilt
 * of the ram is left out: it is set by its two axes. Without a device the residual is all of it: shims, or the angle
 * spread in words.
 */
export const crowningFor = (ram: Beam, bed: Beam, load: SpreadLoad, device: CrowningDevice | null): Crowning => {
  const places = Array.from({ length: PLACES }, (_, i) => load.from + ((load.to - load.from) * i) / (PLACES - 1));
  const gap = offLine(places.map((at) => beamDeflection(ram, load, at).total + beamDeflection(bed, load, at).total));
  const worst = (values: readonly number[]): number => values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const middle = gap[(PLACES - 1) / 2]!;
  if (device === null) return { uncrowned: middle, setting: 0, residual: worst(gap) };
  const lift = offLine(places.map((at) => liftOf(device, at)));
  const setting = Math.max(0, dot(gap, lift) / Math.max(dot(lift, lift), Number.MIN_VALUE));
  return { uncrowned: middle, setting, residual: worst(gap.map((v, i) => v - setting * lift[i]!)) };
};

/** Lift of a device set to one at the middle. */
const liftOf = ({ shape, length }: CrowningDevice, at: number): number => {
  const u = Math.min(1, Math.abs((2 * at) / length));
  if (shape === 'parabola') return 1 - u * u;
  // 5/384-beam: 1 - 6/5 u^2 + 1/5 u^4
  return 1 - (6 / 5) * u * u + (1 / 5) * u ** 4;
};

/** Values less the line through the first and the last. */
const offLine = (values: readonly number[]): number[] => {
  const last = values.length - 1;
  return values.map((v, i) => v - values[0]! - ((values[last]! - values[0]!) * i) / last);
};

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * b[i]!, 0);
