import { type Contour, signedArea } from '../geometry/index.js';
import { contourFault } from './contourFault.js';
import { DRAWN_TO } from './drawnTo.js';
import { gooseneckPunch, vDie } from './profiles.js';
import type { Die, Punch, Segment } from './tool.js';

/** kg per metre and mm2 of steel. */
const STEEL = 7.85e-3;

/**
 * N/mm2 at which the neck of an invented gooseneck is rated, bending and pressing together. The demo rack's own goosenecks come to
 * 107 and 139 by the same sum. Common practice, no source: a toolmaker's own rating replaces it.
 */
const NECK_STRESS = 100;
/** mm across the neck of an invented gooseneck, as the demo rack's deep one has. */
const NECK = 30;

/** A family as part of an id. @example idOf('tang A') // 'tang-A' */
const idOf = (family: string): string => family.replaceAll(' ', '-');

const sizes = (...list: readonly (readonly [number, number])[]): Segment[] => list.map(([length, count]) => ({ length, count }));
/** Any length from 20 mm up in 5 mm steps, to over 3 m. */
const LENGTHS = sizes([10, 1], [15, 1], [20, 2], [25, 1], [30, 1], [35, 1], [40, 1], [45, 1], [50, 2], [100, 2], [150, 1], [200, 2], [300, 1], [400, 1], [500, 4]);

/**
 * A gooseneck that no rack holds: its neck's front face stands `relief` mm behind the bending plane, its shoulder `height` mm over
 * the tip. A generic shape of our own to plan with, not anybody's tool; null where no sound outline comes of it.
 */
export const inventedGooseneck = ({ relief, height, tipRadius, tang, price }: {
  readonly relief: number; readonly height: number; readonly tipRadius: number; readonly tang: string; readonly price?: number;
}): Punch | null => {
  const nose = { height, tipRadius, includedAngle: 85 };
  const neckBack = relief + NECK;
  const profile = gooseneckPunch(nose, {
    noseFront: 5, noseFrontTo: 14, noseBack: 22, throat: relief, throatFrom: Math.max(52, 2 * relief), throatTo: height - 90,
    // the neck's back stands over the wing of a square bend, which rises at 45 degrees
    neckBack, neckFrom: neckBack + 22, neckTo: height - 70, shoulderWidth: 34, shoulderFront: height - 45, shoulderBack: height - 30,
  });
  if (height - 90 <= Math.max(52, 2 * relief) || neckBack + 22 >= height - 70 || contourFault(profile) !== undefined) return null;
  const lever = relief + NECK / 2;
  const rating = Math.floor(NECK_STRESS / (1 / NECK + (6 * lever) / NECK ** 2));
  return {
    kind: 'punch', shape: 'gooseneck', id: `beyond-gooseneck-${relief}-${height}-tip-${tipRadius}-${idOf(tang)}`,
    name: `Gooseneck beyond the rack, ${tang}, tip radius ${tipRadius} mm, relief ${relief} mm, height ${height} mm`, demo: true, profile, height, rating, tang,
    reversible: true, segments: LENGTHS, weight: signedArea(profile) * STEEL, ...(price !== undefined && { price }), tipRadius, includedAngle: 85,
  };
};

/** A V die that no rack holds. mm and degrees included, V between sharp corners; rated like the demo rack's dies of that size. */
export const inventedDie = ({ v, includedAngle, height, seat, price }: {
  readonly v: number; readonly includedAngle: number; readonly height: number; readonly seat: string; readonly price?: number;
}): Die | null => {
  const die = {
    kind: 'die', shape: 'V', id: `beyond-die-v${v}-${includedAngle}-${height}-${idOf(seat)}`,
    name: `V ${v} die beyond the rack, ${seat}, ${includedAngle} degrees included`,
    demo: true, height, rating: Math.round(Math.min(1600, 200 + 25 * v)), tang: seat, reversible: true, segments: LENGTHS, ...(price !== undefined && { price }),
    v, vConvention: 'sharp', includedAngle, shoulderRadius: Math.max(0.4, v / 10),
  } as const;
  const topWidth = 1.6 * v + 6;
  const profile = vDie(die, { topWidth, baseWidth: Math.max(topWidth, 30), stepAt: 30, flat: Math.max(0.6, v / 20) });
  return contourFault(profile) === undefined ? { ...die, profile, weight: signedArea(profile) * STEEL } : null;
};

/**
 * A punch hung from an adapter of `raise` mm that the clamp of family `tang` holds: its shoulder stands so much higher, the adapter drawn as
 * the shoulder's block going on up. Null where the outline has no edge at its top to hang from.
 */
export const onAdapter = (punch: Punch, tang: string, raise: number): Punch | null => {
  const { profile, height } = punch;
  const atTop = (i: number): boolean => Math.abs(profile.at(i % profile.length)!.y - height) <= DRAWN_TO;
  const raised = profile.flatMap((v, i): Contour => {
    if (!atTop(i)) return [v];
    const [before, last] = [profile.at(i - 1)!, !atTop(i + 1)];
    // a rounded corner under the top stays as it is: stretched with the block it would be another arc
    return [
      ...(before.bulge !== 0 && !atTop(i - 1 + profile.length) ? [{ ...v, bulge: 0 }] : []),
      { ...v, y: v.y + raise, bulge: last ? 0 : v.bulge },
      ...(last && v.bulge !== 0 ? [v] : []),
    ];
  });
  return raised.filter(({ y }) => y > height + raise / 2).length < 2 || contourFault(raised) !== undefined ? null : {
    ...punch, tang, id: `${punch.id}-on-adapter-${idOf(tang)}`, name: `${punch.name}, on an adapter from ${punch.tang} to ${tang}`, height: height + raise, profile: raised,
  };
};
