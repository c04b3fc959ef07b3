import { type Rigid, apply, compose, shift } from '../geometry/index.js';
import type { Body } from './body.js';
import { boxGap, cornersOf } from './box.js';
import { type Kernel, type Manifold, distance, matrixOf, sharedBox } from './engine.js';
import { type Element, relOf } from './element.js';
import type { Phase } from './phase.js';
import {
  CONTACT_DEPTH, HORIZON, MEASURING, NOSE_DEPTH, NOSE_OVERLAP, ROUNDING,
} from './tolerances.js';
import { tooNear } from './stepLog.js';

/**
 * What is asked of a pair (docs/kinematics.md, 'What may touch'): 'clear' keeps the allowance; 'touch' lies or leans on
 * the body; 'nose' is the metal about the bend and the step's own punch; 'near' is what lies flat with that metal: it may
 * come near the punch without touching it; 'stop' is the sheet at the fingers.
 */
export type Rule = 'clear' | 'touch' | 'nose' | 'near' | 'stop';

export interface Question {
  readonly kernel: Kernel;
  readonly phase: Phase;
  readonly element: Element;
  readonly body: Body;
  readonly rule: Rule;
  /** mm from the bending plane within which nose and metal may touch. */
  readonly reach: number;
  /** How deep the sheet may stand in a finger. mm */
  readonly stopDepth: number;
  /** The body is the step's own punch or die. */
  readonly own: boolean;
}

/** What one look finds: the distance that is sure to be kept, and what is wrong. */
export interface Look {
  readonly gap: number;
  /** The space shared against the rule. */
  readonly shared: readonly [number, number, number] | null;
  /** Contact by purpose, but deeper than it may look: 'nose' within reach. */
  readonly deep?: boolean;
}

/** Faces are drawn in by no more than this share of the thickness. */
const THINNEST = 0.25;

/** How far the element's faces are drawn in for the rule: contact is allowed that deep. */
const thinnerFor = (rule: Rule, thickness: number): number =>
  rule === 'touch' ? Math.min(CONTACT_DEPTH, THINNEST * thickness) : 0;

/** The element's frame as seen by the bodies of the carrier. */
export const poseFor = (phase: Phase, element: Element, body: Body, s: number): Rigid => {
  const [along, back, up] = phase.offset(body.carrier, s);
  return compose(shift([-along, -back, -up]), compose(phase.root(element.wing, s), relOf(element, phase.angle(s))));
};

/** A distance that the boxes alone are sure of. */
export const boxLook = (q: Question, s: number, thickness: number): number => {
  const box = q.element.box(q.phase.angle(s), thinnerFor(q.rule, thickness));
  const sweep = q.phase.kind === 'straight' ? q.phase.sweep[q.body.carrier] : undefined;
  return boxGap(box, poseFor(q.phase, q.element, q.body, s), q.body.points, sweep);
};

const clearLook = (q: Question, s: number, against: Manifold): Look => {
  const { element, phase } = q;
  const [x, pose] = [phase.angle(s), poseFor(phase, element, q.body, s)];
  let solid = element.solid(x, 0, true);
  let gap = distance(solid, pose, against);
  if (tooNear(gap) && element.pierced) {
    solid = element.solid(x, 0, false);
    gap = distance(solid, pose, against);
  }
  if (gap > 0) return { gap, shared: null };
  const placed = solid.transform(matrixOf(pose));
  const shared = sharedBox(placed, against);
  placed.delete();
  return { gap, shared };
};

const sharedAt = (solid: Manifold, pose: Rigid, against: Manifold): readonly [number, number, number] | null => {
  const placed = solid.transform(matrixOf(pose));
  const shared = sharedBox(placed, against);
  placed.delete();
  return shared;
};

/** Sheet in its own die while it is bent. */
export const byPurpose = (q: Question): boolean => q.own && q.rule === 'touch' && q.phase.kind === 'turn';

const touchLook = (q: Question, s: number, against: Manifold, thickness: number): Look => {
  const { element, phase } = q;
  const [x, pose] = [phase.angle(s), poseFor(phase, element, q.body, s)];
  const thinner = thinnerFor(q.rule, thickness);
  const allowed = q.rule === 'stop' ? q.stopDepth : q.rule === 'near' ? NOSE_OVERLAP : ROUNDING;
  for (const filled of element.pierced ? [true, false] : [false]) {
    const solid = element.solid(x, thinner, filled);
    // contact by purpose is looked at in fixed steps: how far off is not asked
    const gap = byPurpose(q) ? 0 : distance(solid, pose, against);
    if (gap > 0) return { gap, shared: null };
    const shared = sharedAt(solid, pose, against);
    if (shared === null || shared[0] <= allowed) return { gap, shared: null };
    if (!filled) return { gap, shared };
  }
  return { gap: 0, shared: null };
};

/** Within reach the metal may press on the nose; beyond it nothing may be shared. */
const noseLookAt = (q: Question, s: number, against: Manifold, thickness: number, filled: boolean): Look => {
  const { element, phase, reach } = q;
  const [x, pose] = [phase.angle(s), poseFor(phase, element, q.body, s)];
  const thinner = Math.min(NOSE_DEPTH, THINNEST * thickness);
  const pressed = sharedAt(element.solid(x, thinner, filled), pose, against);
  if (pressed !== null && pressed[0] > ROUNDING) return { gap: 0, shared: pressed, deep: true };
  // a zone seldom reaches further than that
  const furthest = Math.max(...cornersOf(element.box(x, thinner)).map((p) => Math.abs(apply(pose, p)[1])));
  if (furthest + thinner <= reach) return { gap: HORIZON, shared: null };
  const placed = element.solid(x, 0, filled).transform(matrixOf(pose));
  let gap = HORIZON;
  let shared: Look['shared'] = null;
  for (const side of [1, -1]) {
    const far = placed.trimByPlane([0, side, 0], reach);
    if (!far.isEmpty()) {
      const here = far.minGap(against, HORIZON);
      gap = Math.min(gap, here);
      const overlap = here === 0 ? sharedBox(far, against) : null;
      if (overlap !== null && overlap[0] > NOSE_OVERLAP) shared = overlap;
    }
    far.delete();
  }
  placed.delete();
  return { gap, shared };
};

const noseLook = (q: Question, s: number, against: Manifold, thickness: number): Look => {
  const look = noseLookAt(q, s, against, thickness, true);
  return look.shared === null || !q.element.pierced ? look : noseLookAt(q, s, against, thickness, false);
};

/** Asks the kernel: `against` is the body, or what it covers in a straight phase. */
export const lookAt = (q: Question, s: number, against: Manifold, thickness: number): Look => {
  switch (q.rule) {
    case 'clear':
      return clearLook(q, s, against);
    case 'touch':
    case 'near':
    case 'stop':
      return touchLook(q, s, against, thickness);
    case 'nose':
      return noseLook(q, s, against, thickness);
  }
};

/** How deep contact may look under each rule, for the sentences. mm */
export const depthOf = (q: Question): number =>
  ({ clear: 0, touch: CONTACT_DEPTH, nose: NOSE_DEPTH, near: NOSE_OVERLAP, stop: q.stopDepth })[q.rule];

/** What is left of a distance once both bodies' chords and rounding are taken off. */
export const sure = (gap: number): number => gap - MEASURING;

