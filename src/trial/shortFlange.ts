import { type Convex, type Interval, hull } from '../geometry/index.js';
import { bentPieces } from './bentPieces.js';
import type { Conflict } from './conflict.js';
import { listed } from './listed.js';
import { type ReachStretch, reachAlong, reachHeld, reachesFor, shortStretches } from './reachAlong.js';
import type { Setting } from './setting.js';
import type { Tooling } from './tooling.js';
import type { View } from './views.js';

const flatsKept = new WeakMap<View, readonly Convex[]>();

/** What lies flat with the wing on a view's side: (along, away from the bend's tangent line), mm. */
const flatsOf = (view: View): readonly Convex[] => {
  const known = flatsKept.get(view);
  if (known) return known;
  const flats = view.pieces.filter((p) => p.flat).map((p) => hull(p.solid.corners.map(([u, b]) => [u, view.onGaugeSide ? b : -b])));
  flatsKept.set(view, flats);
  return flats;
};

const besideKept = new WeakMap<View, Map<number, readonly (readonly ReachStretch[])[]>>();

/** How far the plate beside a bend reaches, along each piece of its metal: the same in every fold. */
const plateReach = (view: View, bend: number, pieces: readonly Interval[]): readonly (readonly ReachStretch[])[] => {
  const kept = besideKept.get(view) ?? new Map<number, readonly (readonly ReachStretch[])[]>();
  besideKept.set(view, kept);
  const known = kept.get(bend) ?? pieces.map((piece) => reachAlong(flatsOf(view), piece));
  kept.set(bend, known);
  return known;
};

interface Short {
  readonly view: View;
  readonly bend: number;
  /** mm from the tangent line that a V could ask at most; and, where more is there elsewhere along the bend, how long it is short. */
  readonly held: number;
  readonly along: number | null;
}

/** Where the flat beside a bend of the stroke falls most short of `least` mm from its tangent line; null where nothing does. */
const mostShort = ({ sheet: { part }, seat, group, views }: Setting, least: number, v: number): Short | null => {
  let worst: Short | null = null;
  const pieces = bentPieces(part, seat, group);
  for (const [i, bend] of group.bends.entries()) {
    for (const view of views) {
      if (!view.wing || !part.bends[bend]!.sides.some(({ plate }) => plate === view.plate)) continue;
      if (plateReach(view, bend, pieces[i]!).every((reach) => reachesFor(reach, least, v))) continue;
      // the plate alone is too short: what lies flat beyond it counts as well
      const flats = views.filter((other) => other.onGaugeSide === view.onGaugeSide).flatMap(flatsOf);
      for (const piece of pieces[i]!) {
        const reach = reachAlong(flats, piece);
        if (reachesFor(reach, least, v)) continue;
        const held = reachHeld(reach, v);
        if (worst && worst.held <= held) continue;
        const partly = reach.some(({ atFrom, atTo }) => Math.max(atFrom, atTo) >= least);
        worst = { view, bend, held, along: partly ? shortStretches(reach, least).reduce((sum, [from, to]) => sum + to - from, 0) : null };
      }
    }
  }
  return worst;
};

const conflictOf = ({ view, held }: Short, least: number, note: string): Conflict => ({ code: 'short flange', body: 'die', phase: 'set-up', by: least - held, view, note });

/** Along how much of its bend a flange is short, where it is not all along. */
const alongOf = ({ bend, along }: Short, { group, sheet }: Setting): string =>
  `${group.bends.length > 1 ? ` of ${sheet.part.bends[bend]!.id}` : ''}${along === null ? '' : `, short over ${along.toFixed(0)} mm of it,`}`;

/** Does the metal on both sides of every bend of the stroke reach as far as its V asks? What falls short, or null. */
export const shortFlange = (setting: Setting, tooling: Tooling): Conflict | null => {
  const [first] = setting.group.bends;
  const { air, die, tipRadius } = tooling.forming[first!]!;
  const unlike = setting.group.bends.find((b) => tooling.forming[b]!.die.id !== die.id || tooling.forming[b]!.tipRadius !== tipRadius);
  if (unlike !== undefined) {
    const ids = setting.group.bends.map((b) => setting.sheet.part.bends[b]!.id);
    return { code: 'no tool', body: 'die', phase: 'set-up', by: 0, view: null, note: `${listed(ids)} are bent in unlike tools, so no one stroke makes them` };
  }
  // minFlange is an outside length: the flat length on one side is half the deduction less
  const least = air.minFlange - air.deduction / 2;
  const half = tooling.sheet.allowances[first!]! / 2;
  const short = mostShort(setting, least - half, die.v);
  return short && conflictOf(short, least - half, `the flat beside the bend${alongOf(short, setting)} reaches ${(short.held + half).toFixed(1)} mm from its middle and this V asks ${least.toFixed(1)} mm`);
};

/** Thicknesses that each flange beside an offset lies on its land past the bend, or the tool does not hold it. Common practice, no source. */
const HELD = 2;

/** The same of an offset tool, which holds a flange under its land. */
export const shortHold = (setting: Setting): Conflict | null => {
  const least = HELD * setting.bend.thickness;
  const short = mostShort(setting, least, 2 * least);
  return short && conflictOf(short, least, `the flange beside the offset${short.along === null ? '' : `, short over ${short.along.toFixed(0)} mm of it,`} lies flat for ${short.held.toFixed(1)} mm and its tool holds ${least.toFixed(1)} mm`);
};
