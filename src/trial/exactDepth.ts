import { type Convex, type Interval, type Solid, type Vec2, type Vec3, hull } from '../geometry/index.js';
import { sweptBody } from './body.js';
import type { Conflict } from './conflict.js';
import { type Shift, leastShift } from './leastShift.js';
import { ON_DIE_TOP } from './limits.js';
import { placed } from './placed.js';
import type { Setting } from './setting.js';
import { waysFor } from './toolClearance.js';
import { contactReach, startOf } from './stroke.js';
import type { Piece } from './views.js';
import { type Passes, passesClose, passesFor, passesIn, passesOpen, passesOut, passesStroke } from './ways.js';

/** Looks over a turn, and halvings of the room between the deepest and its neighbours. */
const LOOKS = 48;
const HALVINGS = 12;
/** As the clearance asks: metal past its own tangent line by more than rounding. mm */
const OVER_THE_LINE = 0.05;

/** The outline (b, h) of the part of a convex solid with along and b in the given ranges; null when there is none. */
const outlineWithin = ({ corners, faces }: Solid, along: Interval, b: Interval): Convex | null => {
  const points: Vec2[] = [];
  for (const face of faces) {
    let ring: Vec3[] = face.map((i) => corners[i]!);
    for (const [axis, range] of [[0, along], [1, b]] as const) {
      for (const [sign, end] of [[1, range[1]], [-1, -range[0]]] as const) {
        if (!Number.isFinite(end)) continue;
        const over = (p: Vec3): number => sign * p[axis] - end;
        ring = ring.flatMap((p, i) => {
          const q = ring[(i + 1) % ring.length]!;
          const [dp, dq] = [over(p), over(q)];
          const s = dp / (dp - dq);
          const crossing: Vec3[] = dp <= 0 === dq <= 0 ? [] : [[p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s, p[2] + (q[2] - p[2]) * s]];
          return dp <= 0 ? [p, ...crossing] : crossing;
        });
      }
    }
    points.push(...ring.map((p): Vec2 => [p[1], p[2]]));
  }
  const outline = hull(points);
  return outline.length < 3 ? null : outline;
};

const EVERYWHERE: Interval = [-Infinity, Infinity];

/** What of a piece may not meet the body, as ranges of b; null when the piece meets it by purpose. */
const forbiddenPart = (setting: Setting, { body, phase }: Conflict, piece: Piece, onGaugeSide: boolean): Interval | null => {
  const { bend } = setting;
  const touching = phase !== 'way in' && phase !== 'way out';
  if (body === 'punch' && touching && piece.flat) return onGaugeSide ? [contactReach(bend), Infinity] : [-Infinity, -contactReach(bend)];
  if (body === 'die' && piece.lowest >= -bend.thickness / 2 - ON_DIE_TOP) {
    if (!piece.flat || (phase === 'way in' && startOf(bend) === 0)) return null;
    return onGaugeSide ? [-Infinity, -OVER_THE_LINE] : [OVER_THE_LINE, Infinity];
  }
  return EVERYWHERE;
};

const passesOf = (setting: Setting, { phase, body }: Conflict): Passes | null => {
  const { bend } = setting;
  const ram = body === 'punch' || body === 'beam';
  const { waysIn, waysOut } = waysFor(setting);
  const [wayIn, wayOut] = [waysIn[0]!, waysOut[0]!];
  if (phase === 'stroke') return passesStroke(bend, ram);
  if (phase === 'way in') return passesIn(bend, wayIn, ram ? wayIn.opening : 0);
  if (phase === 'ram closing') return passesClose(bend, wayIn.opening);
  if (phase === 'ram opening') return passesOpen(bend, wayOut.opening);
  return phase === 'way out' ? passesOut(bend, wayOut, ram ? wayOut.opening : 0) : null;
};

/**
 * How deep a plate stands in a tool or in the press over a whole phase, mm: the most, over all places on the way, of the least
 * shift in the cross-section that takes what stands over `need` clear. Negative: they come no nearer than that. What the
 * clearance gives is the first overlap that it meets; this is asked only of what is told. Null where the conflict is no matter of
 * a plate and such a body. `keepsRoom`: only the metal that must keep the allowance, so no arc that leaves the die top.
 */
export const exactDepth = (setting: Setting, conflict: Conflict, need: Interval, keepsRoom = false): number | null => {
  const { pair } = setting;
  const bodies = new Map([['punch', pair.punchBodies], ['die', pair.dieBodies], ['beam', pair.ramBodies], ['bed', pair.bedBodies]]).get(conflict.body);
  const view = conflict.view && setting.views.find((v) => v.plate === conflict.view!.plate);
  const passes = passesOf(setting, conflict);
  if (!bodies || !view || !passes) return null;
  const atTools = conflict.body === 'punch' || conflict.body === 'die';
  const outlines = view.pieces.flatMap((piece) => {
    if (keepsRoom && conflict.body === 'die' && piece.leavesTop) return [];
    const b = forbiddenPart(setting, conflict, piece, view.onGaugeSide);
    const outline = b && outlineWithin(piece.solid, atTools ? need : EVERYWHERE, b);
    return outline ? [outline] : [];
  });
  if (outlines.length === 0) return null;
  const still = bodies.map((b) => b.polygon);
  let deepest = -Infinity;
  const take = ({ by }: Shift): number => {
    deepest = Math.max(deepest, by);
    return by;
  };
  for (const pass of passesFor(view, passes)) {
    if (pass.kind === 'carry') {
      take(leastShift(outlines.map((o) => placed(o, pass.pose)), bodies.map((b) => sweptBody(b, [-pass.by[0], -pass.by[1]]).polygon)));
      continue;
    }
    const at = (x: number): number => take(leastShift(outlines.map((o) => placed(o, pass.at(x))), still));
    const step = (pass.to - pass.from) / LOOKS;
    const looks = Array.from({ length: LOOKS + 1 }, (_, k) => at(pass.from + k * step));
    let middle = pass.from + looks.indexOf(Math.max(...looks)) * step;
    for (let k = 0, room = step / 2; k < HALVINGS; k++, room /= 2) {
      const here = at(middle);
      const [before, after] = [Math.max(pass.from, middle - room), Math.min(pass.to, middle + room)];
      if (at(before) > here) middle = before;
      else if (at(after) > here) middle = after;
    }
  }
  return deepest;
};
