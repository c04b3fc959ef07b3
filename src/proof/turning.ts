import { type Rigid, apply, compose, invert } from '../geometry/index.js';
import { type Box, boxGap, cornersOf } from './box.js';
import { distance, matrixOf, sharedBox } from './engine.js';
import { type Element, relOf } from './element.js';
import { type Look, type Question, boxLook, byPurpose, depthOf, lookAt, poseFor, sure } from './pair.js';
import type { TurnPhase } from './phase.js';
import { type StepLog, find, gapSentence, mm, noteGap, sizes, tooNear } from './stepLog.js';
import { sharedDepth } from './sharedDepth.js';
import { CLEAR_FLOOR, CONTACT_STEP, MOST_MOTION, NEAR, NOSE_STEP, PLATE_DEPTH, TOUCH_FLOOR, TURN_FLOOR } from './tolerances.js';

/** Halvings that find how far a turn may go on: a millionth of the phase. */
const HALVINGS = 20;

/** The furthest s up to which `travel` from `s` stays within `reach`. */
const advance = (s: number, reach: number, travel: (s0: number, s1: number) => number): number => {
  if (travel(s, 1) <= reach) return 1;
  let [low, high] = [s, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (travel(s, middle) <= reach) low = middle;
    else high = middle;
  }
  return low;
};

/** Turns are about lines along the bed, so what is apart along the bed stays so. mm */
const apartAlong = (a: readonly [number, number], b: readonly [number, number]): number => Math.max(a[0] - b[1], b[0] - a[1]);

const span = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

const spanOf = (box: Box, pose: Rigid): readonly [number, number] => span(cornersOf(box).map((p) => apply(pose, p)[0]));

/** The least step of s that a pair takes under a rule, where the distance found would allow less. */
const least = (phase: TurnPhase, degrees: number): number => (phase.degrees === 0 ? 1 : degrees / Math.abs(phase.degrees));

/** Degrees of the least step under a rule that asks no allowance. */
const stepOf = (q: Question): number =>
  byPurpose(q) ? CONTACT_STEP : q.rule === 'nose' || q.rule === 'near' ? NOSE_STEP : TURN_FLOOR;

/** One pair over a turn, pose by pose: the next pose lies no further off than the distance found is sure of. */
export const checkTurn = (q: Question, thickness: number, log: StepLog): void => {
  const { element, body, rule } = q;
  const phase = q.phase as TurnPhase;
  const pose = poseFor(phase, element, body, 0);
  const along = apartAlong(spanOf(element.box(phase.angle(0), 0), pose), span(body.points.map((p) => p[0])));
  if (rule === 'clear' ? along >= NEAR && along >= log.smallest : along > 0) return;

  const travel = (s0: number, s1: number): number => phase.travel(element, body.carrier, s0, s1);
  let worst: { readonly look: Look; readonly s: number } | null = null;
  for (let s = 0; ; ) {
    const box = rule === 'nose' ? 0 : boxLook(q, s, thickness);
    const passed = rule === 'clear' ? box >= NEAR && box >= log.smallest : box >= TOUCH_FLOOR;
    const look: Look = passed ? { gap: box, shared: null } : lookAt(q, s, body.solid, thickness);
    if (rule === 'clear' && !passed) noteGap(log, phase.name, phase.at(s), element.name, body.name, look.gap);
    if (rule === 'clear' ? tooNear(look.gap) && look.gap < (worst?.look.gap ?? Infinity) : look.shared !== null && worst === null) {
      worst = { look, s };
    }
    if (s === 1) break;
    const floor = rule === 'clear' ? CLEAR_FLOOR : TOUCH_FLOOR;
    const reach = Math.min(MOST_MOTION, Math.max(sure(look.gap), floor));
    let next = advance(s, reach, travel);
    // contact by purpose, and metal that may come near without an allowance, is looked at in stated steps at most
    if (rule !== 'clear') next = Math.max(next, s + least(phase, stepOf(q)));
    if (rule === 'nose') next = Math.min(next, s + least(phase, CONTACT_STEP));
    next = Math.min(1, next);
    if (rule === 'clear') log.largestMotion = Math.max(log.largestMotion, travel(s, next));
    s = next;
  }
  if (worst === null) return;
  const { look, s } = worst;
  const at = phase.at(s);
  if (rule === 'clear') {
    find(log, phase.name, at, gapSentence(element.name, body.name, look.gap, look.shared));
    return;
  }
  const how = rule === 'nose' && look.deep !== true ? 'beyond the reach of the stroke' : `deeper than ${mm(depthOf(q))} mm`;
  find(log, phase.name, at, `${element.name} runs into ${body.name} ${how}; they share a space of ${sizes(look.shared!)}.`);
};

/** Two pieces of the part that move against each other in a bend: they may meet, but not run into each other. */
export const checkPlates = (
  phase: TurnPhase,
  a: Element,
  b: Element,
  travel: (x0: number, x1: number) => number,
  log: StepLog,
): void => {
  const poseOf = (e: Element, s: number): Rigid => compose(phase.root(e.wing, s), relOf(e, phase.angle(s)));
  const [spanA, spanB] = [a, b].map((e) => spanOf(e.box(phase.angle(0), 0), poseOf(e, 0)));
  if (apartAlong(spanA!, spanB!) > 0) return;
  for (let s = 0; ; ) {
    const x = phase.angle(s);
    const seen = compose(invert(poseOf(a, s)), poseOf(b, s));
    const box = boxGap(b.box(x, 0), seen, cornersOf(a.box(x, 0)));
    let gap = box;
    if (box < TOUCH_FLOOR) {
      const [solidA, solidB] = [a.solid(x, 0, false), b.solid(x, 0, false)];
      gap = distance(solidB, seen, solidA);
      if (gap === 0) {
        const placed = solidB.transform(matrixOf(seen));
        const shared = sharedBox(placed, solidA);
        // the box alone settles most: only where it is thicker than allowed is the depth itself asked
        const depth = shared !== null && shared[0] > PLATE_DEPTH ? sharedDepth(placed, solidA) : 0;
        placed.delete();
        if (shared !== null && depth > PLATE_DEPTH) {
          find(log, phase.name, phase.at(s), `${a.name} runs into ${b.name} by ${mm(depth)} mm; they share a space of ${sizes(shared)}.`);
          return;
        }
      }
    }
    if (s === 1) return;
    const next = advance(s, Math.min(MOST_MOTION, Math.max(sure(gap), TOUCH_FLOOR)), (s0, s1) => travel(phase.angle(s0), phase.angle(s1)));
    s = Math.min(1, Math.max(next, s + least(phase, TURN_FLOOR)));
  }
};
