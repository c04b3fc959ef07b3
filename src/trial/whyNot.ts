import type { Machine } from '../shop/index.js';
import type { Part } from '../sheet/index.js';
import type { Attempt } from './attempt.js';
import { measuring } from './measuring.js';
import { type Untold, asItIs, noStopIn, reasonOf, reasonsFrom } from './reasons.js';
import type { Twice } from './states.js';
import { nearestFirst, tell } from './toldReasons.js';
import { tooLong } from './tooLong.js';
import type { Reason } from './trial.js';

/** Gathers what closes every order, for each set of tools by itself, to be told at the end. */
export interface WhyNot {
  /** `unheld`: a dimension that the plan found does not hold where its stations stand. */
  readonly add: (attempt: Attempt, unheld: Reason | null) => void;
  /** No set of tools was refused for anything yet. */
  readonly isEmpty: () => boolean;
  /** Something was left open: by time, by what nobody measured, by a layout that another order may do without. */
  readonly undecided: () => boolean;
  /** The most telling first; `first` and `last` are told before and after what the tools are refused for. */
  readonly reasons: (first: readonly Reason[], last: readonly Reason[]) => readonly Reason[];
  /** The first stroke that nothing but the want of a stop refuses, told or not. */
  readonly unstopped: () => Reason | null;
}

/** `limit`: the computing time that a search may have run into, s. */
export const createWhyNot = (part: Part, machine: Machine, twice: Twice, limit: number): WhyNot => {
  const byTools: (readonly Untold[])[] = [];
  const outOfTime: Reason[] = [];
  const weak: Reason[] = [];
  let unstopped: Reason | null = null;
  let undecided = false;
  return {
    add: ({ tooling, groups, within, result }, unheld) => {
      if (unheld) {
        undecided = true;
        byTools.push([asItIs(unheld)]);
      }
      if (result.kind === 'undecided') {
        undecided = true;
        outOfTime.unshift({ code: 'limit', bends: [], sentence: `The computing time of ${limit.toFixed(0)} s ended before an order was found or ruled out with V ${tooling.v}.` });
      }
      if (result.kind !== 'none') return;
      weak.push(...tooling.tooWeak);
      if (within.reason) {
        byTools.push([asItIs(within.reason)]);
        undecided ||= within.notKnown;
        return;
      }
      if (result.layout) {
        undecided ||= !tooLong(tooling, machine);
        byTools.push([asItIs(reasonOf(part, groups[0]!, tooling.pairs[0]!, { ...result.layout, note: result.layout.note ?? '' }, 0))]);
      }
      unstopped ??= noStopIn(tooling.sheet.part, groups, tooling.pairs, result.blocked);
      byTools.push(reasonsFrom(tooling.sheet.part, groups, tooling.pairs, result.blocked, measuring(tooling, groups, twice, machine)));
    },
    isEmpty: () => byTools.length === 0,
    undecided: () => undecided,
    reasons: (first, last) => tell([...[...first, ...outOfTime].map(asItIs), ...nearestFirst(byTools), ...[...weak, ...last].map(asItIs)]),
    unstopped: () => unstopped,
  };
};
