import type { Machine } from '../../src/shop/index.js';
import type { Searched } from '../../src/trial/index.js';
import { bitsOf } from '../../src/trial/groups.js';
import { type Leg, legOf } from './leg.js';
import { STATION } from './timeModel.js';

/** An order of strokes to be found, as plain data: which strokes may be made in which fold, and what changes cost. */
export interface Problem {
  /** What each group makes, as bits: bends, or their second states; `full` is all of them. */
  readonly bits: readonly number[];
  /** Bits that must be there before a group's stroke (a hem is closed after its pre-bend). */
  readonly needs: readonly number[];
  readonly full: number;
  /** The strokes that may be made with these bends made. */
  readonly legs: (mask: number) => readonly Leg[];
  readonly together: (a: number, b: number) => boolean;
  /** s per part of setting up one station. */
  readonly share: number;
  readonly handling: number;
  /** s for setting an axis by hand; 0 where a motor does it. */
  readonly byHand: { readonly x: number; readonly r: number };
}

type Task = Searched['task'];

/** Is it a fold at all (nothing made whose need is not), the stroke not yet made, and what it needs there? */
export const mayCome = (bits: readonly number[], needs: readonly number[], group: number, mask: number): boolean =>
  (mask & bits[group]!) === 0 && (mask & needs[group]!) === needs[group] && bits.every((b, g) => (mask & b) === 0 || (mask & needs[g]!) === needs[g]);

/** `answer`: who says whether a stroke may be made; the planner's own asker, or another judge. */
export const problemOf = (task: Task, machine: Machine, quantity: number, answer: Task['answer'] = task.answer): Problem => {
  const bits = task.groups.map(bitsOf);
  const needs = task.groups.map((g) => g.needs ?? 0);
  const known = new Map<number, readonly Leg[]>();
  const hand = (axis: Machine['gauge']['x']): number => (axis.drive === 'by hand' ? axis.seconds : 0);
  return {
    bits,
    needs,
    full: bits.reduce((a, b) => a | b, 0),
    legs: (mask) => {
      let legs = known.get(mask);
      if (!legs) {
        legs = task.actions.flatMap((action) => {
          if (!mayCome(bits, needs, action.group, mask)) return [];
          const said = answer(action, mask);
          return said.ok ? [legOf(task, action, said.option)] : [];
        });
        known.set(mask, legs);
      }
      return legs;
    },
    together: task.together,
    share: STATION / quantity,
    handling: task.handling,
    byHand: { x: hand(machine.gauge.x), r: hand(machine.gauge.r) },
  };
};

/** Places of an axis that differ by less need no new setting. mm */
const SAME_PLACE = 0.05;

/** What hand-set axes cost between two strokes. s */
export const handSeconds = ({ byHand }: Problem, before: Leg['stop'], after: Leg['stop']): number => {
  if (!before || !after) return 0;
  return (Math.abs(before.x - after.x) > SAME_PLACE ? byHand.x : 0) + (Math.abs(before.r - after.r) > SAME_PLACE ? byHand.r : 0);
};
