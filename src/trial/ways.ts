import type { Planar, Vec2 } from '../geometry/index.js';
import type { Pass } from './strike.js';
import { type Stroke, startOf, tipAt, touchOf, wingsAt } from './stroke.js';
import type { View } from './views.js';

/** How the sheet comes to its seat, or leaves it. Lifts and openings in mm. */
export type Way =
  | { readonly by: 'front'; readonly lift: number; readonly opening: number }
  | { readonly by: 'tilt'; readonly lift: number; readonly opening: number }
  | { readonly by: 'side'; readonly opening: number };

/** Passes of both wings in front of a body at rest. */
export interface Passes {
  readonly gauge: readonly Pass[];
  readonly front: readonly Pass[];
}

export const passesFor = (view: View, passes: Passes): readonly Pass[] => (view.onGaugeSide ? passes.gauge : passes.front);

/** How far the sheet is carried out in front. mm */
export const FRONT_TRAVEL = 3000;

const at = (pose: Planar, by: Vec2): Planar => ({ ...pose, x: pose.x + by[0], y: pose.y + by[1] });

/** `pose` turned by `degrees` about (0, y0), positive lifting the gauge side. */
export const tilted = (pose: Planar, degrees: number, y0: number): Planar => {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  const y = pose.y - y0;
  return { c: c * pose.c - s * pose.s, s: s * pose.c + c * pose.s, x: c * pose.x - s * y, y: y0 + s * pose.x + c * y };
};

const both = (wings: { readonly gauge: Planar; readonly front: Planar }, make: (pose: Planar, side: 'gauge' | 'front') => readonly Pass[]): Passes => ({
  gauge: make(wings.gauge, 'gauge'),
  front: make(wings.front, 'front'),
});

/** The way in, as passes by bodies that rest at `from` (0, up from the die top): the die at 0, the open punch higher. */
export const passesIn = (bend: Stroke, way: Way, from: number): Passes =>
  both(wingsAt(bend, startOf(bend)), (pose) => {
    const here = at(pose, [0, -from]);
    if (way.by === 'side') return [{ kind: 'carry', pose: here, by: [0, 0] }];
    return [
      { kind: 'carry', pose: at(here, [-FRONT_TRAVEL, way.lift]), by: [FRONT_TRAVEL, 0] },
      { kind: 'carry', pose: at(here, [0, way.lift]), by: [0, -way.lift] },
    ];
  });

/** The stroke from where the bend stands to under load, by the die at rest or (with `ram`) in the frame of the punch tip. */
export const passesStroke = (bend: Stroke, ram: boolean): Passes =>
  both(wingsAt(bend, startOf(bend)), (_, side) => [
    {
      kind: 'turn',
      from: startOf(bend),
      to: bend.bendAngleUnderLoad,
      at: (x) => (ram ? at(wingsAt(bend, x)[side], [0, -tipAt(bend, x)]) : wingsAt(bend, x)[side]),
    },
  ]);

/** The ram coming down from `opening` onto the sheet, seen from the punch tip. */
export const passesClose = (bend: Stroke, opening: number): Passes =>
  both(wingsAt(bend, startOf(bend)), (pose) => [{ kind: 'carry', pose: at(pose, [0, -opening]), by: [0, opening - touchOf(bend)] }]);

/** The ram going up from the released bend to `opening`, seen from the punch tip. */
export const passesOpen = (bend: Stroke, opening: number): Passes => {
  const tip = tipAt(bend, bend.bendAngle);
  return both(wingsAt(bend, bend.bendAngle), (pose) => [
    { kind: 'carry', pose: at(pose, [0, -tip]), by: [0, -Math.max(0, opening - tip)] },
  ]);
};

/** The way out of the released part, by bodies that rest at `from` up from the die top. */
export const passesOut = (bend: Stroke, way: Way, from: number): Passes =>
  both(wingsAt(bend, bend.bendAngle), (pose, side) => {
    const here = at(pose, [0, -from]);
    if (way.by === 'side') return [{ kind: 'carry', pose: here, by: [0, 0] }];
    const raised = at(here, [0, way.lift]);
    const up: Pass = { kind: 'carry', pose: here, by: [0, way.lift] };
    if (way.by === 'front') return [up, { kind: 'carry', pose: raised, by: [-FRONT_TRAVEL, 0] }];
    const half = bend.bendAngle / 2;
    const centre = tipAt(bend, bend.bendAngle) + way.lift;
    const turned = (x: number): Planar => tilted(at(wingsAt(bend, bend.bendAngle)[side], [0, way.lift]), -x, centre);
    return [
      up,
      { kind: 'turn', from: 0, to: half, at: (x) => at(turned(x), [0, -from]) },
      { kind: 'carry', pose: at(turned(half), [0, -from]), by: [-FRONT_TRAVEL, 0] },
    ];
  });

/** The same passes seen by bodies that stand displaced by (back, up). */
export const seenFrom = (passes: Passes, by: Vec2): Passes => {
  const move = (pass: Pass): Pass =>
    pass.kind === 'carry'
      ? { ...pass, pose: at(pass.pose, [-by[0], -by[1]]) }
      : { ...pass, at: (x) => at(pass.at(x), [-by[0], -by[1]]) };
  return { gauge: passes.gauge.map(move), front: passes.front.map(move) };
};
