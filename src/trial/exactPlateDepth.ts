import { moved } from '../geometry/index.js';
import type { Conflict } from './conflict.js';
import { apart, axesAt, axesOf, frontInGauge, motionOf } from './plateClearance.js';
import type { Setting } from './setting.js';
import { startOf } from './stroke.js';

/** Looks over the bend, and halvings of the room between the deepest and its neighbours. */
const LOOKS = 48;
const HALVINGS = 12;

/**
 * How deep two plates of the part stand in each other over the whole bend, mm: the most of the least shift in space that parts
 * two of their convex pieces. The clearance stops at the first overlap that is too deep; this is asked only of what is told.
 */
export const exactPlateDepth = (setting: Setting, { code, view: told, body }: Conflict): number | null => {
  const gauge = told && setting.views.find((v) => v.plate === told.plate);
  const front = setting.views.find((v) => v.plate === Number(body.split(' ')[1]));
  if (code !== 'plate on plate' || !gauge || !front) return null;
  const { bend } = setting;
  let deepest = -Infinity;
  const take = (x: number): number => {
    const at = motionOf(frontInGauge(bend, x));
    let here = -Infinity;
    for (const b of front.pieces) {
      const [solid, axes] = [moved(b.solid, at), axesAt(axesOf(b.solid), at)];
      for (const a of gauge.pieces) {
        if (a.along[0] <= b.along[1] && b.along[0] <= a.along[1]) here = Math.max(here, -apart(a.solid, solid, axesOf(a.solid), axes));
      }
    }
    deepest = Math.max(deepest, here);
    return here;
  };
  const [from, to] = [startOf(bend), bend.bendAngleUnderLoad];
  const step = (to - from) / LOOKS;
  const looks = Array.from({ length: LOOKS + 1 }, (_, k) => take(from + k * step));
  let middle = from + looks.indexOf(Math.max(...looks)) * step;
  for (let k = 0, room = step / 2; k < HALVINGS; k++, room /= 2) {
    const here = take(middle);
    const [before, after] = [Math.max(from, middle - room), Math.min(to, middle + room)];
    if (take(before) > here) middle = before;
    else if (take(after) > here) middle = after;
  }
  return deepest;
};
