import type { Planar } from '../geometry/index.js';
import { type ArcRun, type Developed, arcRuns } from '../sheet/index.js';
import type { Pair } from './bodies.js';
import { BASE_ALLOWANCE } from './limits.js';

/** Closing a pre-bent hem between a flat punch and an anvil: what the poses of docs/kinematics.md, 'Closing a hem', need. */
export interface HemClose {
  readonly kind: 'hem close';
  readonly thickness: number;
  /** Flat length of the hem's zone, mm. */
  readonly allowance: number;
  /** Degrees of bend angle: pre-bent, closed and (no springback is counted) under load. */
  readonly from: number;
  readonly bendAngle: number;
  readonly bendAngleUnderLoad: number;
  /** The arc at a bend angle (degrees), from the lying plate to the hem's flange. */
  readonly runsAt: (x: number) => readonly ArcRun[];
  /** back of the tangent line of the plate that lies on the anvil. mm */
  readonly lineBack: number;
  /** How far the hem's flange reaches from its tangent line, mm. */
  readonly flange: number;
  /** Half width of the punch's face, mm. */
  readonly face: number;
}

/** The fold stands this far behind the punch's back, so that a finger that touches it keeps its distance from the punch. mm */
const FOLD_BEHIND = BASE_ALLOWANCE + 0.05;

interface Place {
  readonly back: number;
  readonly up: number;
  /** Radians turned through. */
  readonly turned: number;
}

/** The middle surface's places at the ends of the runs, from the lying plate's line: (0, 0) level, towards the gauge. */
const placesAlong = (runs: readonly ArcRun[]): readonly Place[] => {
  const places: Place[] = [{ back: 0, up: 0, turned: 0 }];
  for (const { length, turned, shift } of runs) {
    const { back, up, turned: before } = places[places.length - 1]!;
    const after = before + turned;
    // a chord of the arc: 2 r sin(half), its direction the mean of both tangents
    const half = turned / 2;
    const chord = turned === 0 ? length : (length / turned + shift) * 2 * Math.sin(half);
    places.push({ back: back + chord * Math.cos(before + half), up: up + chord * Math.sin(before + half), turned: after });
  }
  return places;
};

/** mm that the fold reaches past the lying plate's line, and the height of its outermost point over that plate's middle plane. */
export const foldOf = (runs: readonly ArcRun[], thickness: number): { readonly past: number; readonly up: number } => {
  const places = placesAlong(runs);
  for (const [i, { length, turned, shift }] of runs.entries()) {
    const from = places[i]!;
    const upright = Math.PI / 2;
    if (from.turned > upright || from.turned + turned < upright) continue;
    const radius = length / turned + shift;
    return {
      past: from.back + radius * (Math.sin(upright) - Math.sin(from.turned)) + thickness / 2,
      up: from.up + radius * (Math.cos(from.turned) - Math.cos(upright)),
    };
  }
  const last = places[places.length - 1]!;
  return { past: last.back, up: last.up };
};

export const hemCloseOf = (sheet: Developed, bend: number, pair: Pair, flange: number): HemClose => {
  const { bendAngle, hem } = sheet.part.bends[bend]!;
  if (!hem) throw new Error('only a hem that tools have pre-bent is closed');
  const { thickness } = sheet.part;
  const backs = pair.punch.profile.map((v) => (pair.punchFacing === 'reversed' ? -v.x : v.x));
  const foot = pair.punch.profile.filter((v) => v.y < FOOT).map((v) => Math.abs(v.x));
  const runsAt = (x: number): readonly ArcRun[] => arcRuns(sheet, bend, x);
  return {
    kind: 'hem close', thickness, allowance: sheet.allowances[bend]!, from: hem.preBendAngle, bendAngle, bendAngleUnderLoad: bendAngle,
    runsAt, flange, face: Math.max(...foot),
    lineBack: Math.max(...backs) + FOLD_BEHIND - foldOf(runsAt(hem.preBendAngle), thickness).past,
  };
};

/** A flattening punch's lowest corners are those of its face. mm */
const FOOT = 0.01;

/** As `wingsAt` of a V bend: the front wing lies on the anvil, the gauge side's is the hem's flange. */
export const hemWingsAt = (close: HemClose, x: number): { readonly gauge: Planar; readonly front: Planar } => {
  const end = placesAlong(close.runsAt(x)).at(-1)!;
  const up = close.thickness / 2;
  return {
    gauge: { c: Math.cos(end.turned), s: Math.sin(end.turned), x: close.lineBack + end.back, y: up + end.up },
    front: { c: 1, s: 0, x: close.lineBack, y: up },
  };
};

/**
 * Up of the punch's face from the anvil's top when it rests on the hem's flange at bend angle x: on the flange's end, or,
 * where that stands out in front of the face, on what lies under the face's front edge. mm
 */
export const hemTipAt = (close: HemClose, x: number): number => {
  const { gauge } = hemWingsAt(close, x);
  const half = close.thickness / 2;
  const outer = { back: gauge.x + half * gauge.s, up: gauge.y - half * gauge.c };
  const reach = Math.min(close.flange, Math.max(0, (outer.back + close.face) / -gauge.c));
  return outer.up + reach * gauge.s;
};
