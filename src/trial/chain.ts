import { IDENTITY, type Rigid, apply, compose, invert, turn } from '../geometry/index.js';
import { type BendDeviation, type Developed, type Feature, NO_DEVIATION, acrossBend, deviated, featurePlane, path } from '../sheet/index.js';

/** A deviation to first order: for each source (id) what its half range makes of it; of a source not known, what one unit does. */
export type Chain = ReadonlyMap<string, number>;

/** The sum of chains times factors. */
export const sumOfChains = (...parts: readonly (readonly [Chain, number])[]): Chain => {
  const sum = new Map<string, number>();
  for (const [chain, factor] of parts) {
    if (factor === 0) continue;
    for (const [id, size] of chain) sum.set(id, (sum.get(id) ?? 0) + size * factor);
  }
  return sum;
};

/** How each bend that is made came out, as chains: mm, radians, degrees, mm. */
export interface BendChains {
  readonly shift: Chain;
  readonly skew: Chain;
  readonly angle: Chain;
  readonly deduction: Chain;
}

/** Steps of the difference quotients: far over rounding, far under where the second order shows. mm, radians, degrees, mm */
const PROBE: BendDeviation = { shift: 1e-3, skew: 1e-5, angle: 1e-3, deduction: 1e-3 };
const THICKNESS_PROBE = 1e-4;
const PARTS = ['shift', 'skew', 'angle', 'deduction'] as const;

/** How a length of the (partly) folded part changes with each bend that it depends on, and with the thickness. */
export interface Slopes {
  readonly bends: ReadonlyMap<number, BendDeviation>;
  readonly thickness: number;
}

/** Poses of the plates on the way from `root` to another, as `fold` gives them; the other plates' are left out. */
export const foldTo = (sheet: Developed, isMade: (bend: number) => boolean, root: number, to: number): readonly Rigid[] => {
  const poses: Rigid[] = [];
  poses[root] = IDENTITY;
  let here = root;
  for (const bend of path(sheet.part, root, to)) {
    const { sides, bendAngle } = sheet.part.bends[bend]!;
    const forward = sides[0].plate === here;
    const step = acrossBend(sheet, bend, isMade(bend) ? bendAngle : 0);
    const next = sides[forward ? 1 : 0].plate;
    poses[next] = compose(poses[here]!, forward ? step : invert(step));
    here = next;
  }
  return poses;
};

/**
 * The difference quotients of lengths that are read between the plates `root` and `to` and depend on the bends `over`; bends that
 * are not made stay flat.
 */
export const slopesOf = (
  sheet: Developed, isMade: (bend: number) => boolean, root: number, to: number, over: readonly number[],
  reads: readonly ((sheet: Developed, poses: readonly Rigid[]) => number)[],
): readonly Slopes[] => {
  const at = (bend: number, deviation: BendDeviation, thicker: number): readonly number[] => {
    const other = deviated(sheet, (b) => (b === bend ? deviation : NO_DEVIATION), thicker);
    const poses = foldTo(other, isMade, root, to);
    return reads.map((read) => read(other, poses));
  };
  const quotients = (bend: number, deviation: BendDeviation, thicker: number, step: number): readonly number[] => {
    const opposite: BendDeviation = { shift: -deviation.shift, skew: -deviation.skew, angle: -deviation.angle, deduction: -deviation.deduction };
    const [more, less] = [at(bend, deviation, thicker), at(bend, opposite, -thicker)];
    return more.map((m, i) => (m - less[i]!) / (2 * step));
  };
  const byBend = over.filter(isMade).map((bend) => ({ bend, by: PARTS.map((part) => quotients(bend, { ...NO_DEVIATION, [part]: PROBE[part] }, 0, PROBE[part])) }));
  const byThickness = quotients(-1, NO_DEVIATION, THICKNESS_PROBE, THICKNESS_PROBE);
  return reads.map((_, i) => ({
    bends: new Map(byBend.map(({ bend, by }) => [bend, { shift: by[0]![i]!, skew: by[1]![i]!, angle: by[2]![i]!, deduction: by[3]![i]! }])),
    thickness: byThickness[i]!,
  }));
};

/** A length's deviation from those of the bends that it depends on and the thickness. */
export const chainOf = (slopes: Slopes, made: (bend: number) => BendChains, thickness: Chain): Chain =>
  sumOfChains(
    [thickness, slopes.thickness],
    ...[...slopes.bends].flatMap(([bend, slope]) => PARTS.map((part) => [made(bend)[part], slope[part]] as const)),
  );

/**
 * mm behind the wing's tangent line at which a finger meets a feature, at a place along the bed and a height over the wing's middle
 * plane; `into` from the root plate's frame to (along, back, height).
 */
export const backOf = (sheet: Developed, poses: readonly Rigid[], into: Rigid, feature: Feature, along: number, height: number): number => {
  const plane = featurePlane(sheet, feature);
  const pose = compose(into, poses[feature.plate]!);
  const n = turn(pose, plane.normal);
  const p = apply(pose, plane.point);
  return p[1] - (n[0] * (along - p[0]) + n[2] * (height - p[2])) / n[1];
};
