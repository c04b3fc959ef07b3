import type { Planar } from '../geometry/index.js';
import type { Body } from './body.js';
import type { Pass } from './strike.js';
import type { View } from './views.js';

/** Upright boxes: least and greatest back, least and greatest up. mm */
interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Looks at where a turn's centre goes; between two of them it strays no further than they lie apart. */
const LOOKS = 4;

/** Where the tangent line of a turning wing goes, with room for what lies between the looks. Kept with the pass. */
const centres = new WeakMap<Pass, Box>();

const centresOf = (pass: Pass & { readonly kind: 'turn' }): Box => {
  let known = centres.get(pass);
  if (!known) {
    let [x0, x1, y0, y1, step] = [Infinity, -Infinity, Infinity, -Infinity, 0];
    let before: Planar | null = null;
    for (let k = 0; k <= LOOKS; k++) {
      const here = pass.at(pass.from + ((pass.to - pass.from) * k) / LOOKS);
      if (before) step = Math.max(step, Math.abs(here.x - before.x) + Math.abs(here.y - before.y));
      [x0, x1, y0, y1] = [Math.min(x0, here.x), Math.max(x1, here.x), Math.min(y0, here.y), Math.max(y1, here.y)];
      before = here;
    }
    known = { x0: x0 - step, x1: x1 + step, y0: y0 - step, y1: y1 + step };
    centres.set(pass, known);
  }
  return known;
};

/** The view's own box, carried by a pose and along a straight move. */
const carriedBox = ({ box: [b0, h0, b1, h1] }: View, { c, s, x, y }: Planar, by: readonly [number, number]): Box => {
  const xs = [c * b0 - s * h0, c * b0 - s * h1, c * b1 - s * h0, c * b1 - s * h1];
  const ys = [s * b0 + c * h0, s * b0 + c * h1, s * b1 + c * h0, s * b1 + c * h1];
  return {
    x0: x + Math.min(xs[0]!, xs[1]!, xs[2]!, xs[3]!) + Math.min(0, by[0]), x1: x + Math.max(xs[0]!, xs[1]!, xs[2]!, xs[3]!) + Math.max(0, by[0]),
    y0: y + Math.min(ys[0]!, ys[1]!, ys[2]!, ys[3]!) + Math.min(0, by[1]), y1: y + Math.max(ys[0]!, ys[1]!, ys[2]!, ys[3]!) + Math.max(0, by[1]),
  };
};

const apart = (one: Box, bodies: readonly Body[], room: number): boolean => {
  for (const { shape: { box } } of bodies) {
    if (one.x0 - room <= box[2] && one.x1 + room >= box[0] && one.y0 - room <= box[3] && one.y1 + room >= box[1]) return false;
  }
  return true;
};

/**
 * Boxes alone show that nothing of a view comes within `allowance` of the bodies on any of the passes. True is certain, false says
 * nothing. It settles most questions before they are asked: plates near the bend never come near the beam.
 */
export const outOfReach = (view: View, passes: readonly Pass[], bodies: readonly Body[], allowance: number): boolean =>
  passes.every((pass) => pass.kind === 'carry' ? apart(carriedBox(view, pass.pose, pass.by), bodies, allowance) : apart(centresOf(pass), bodies, allowance + view.reach));
