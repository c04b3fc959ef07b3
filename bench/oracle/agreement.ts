import { type Searched, type Trial, type TrialInput, planTrial } from '../../src/trial/index.js';
import { type BestOrder, everyOrder } from './everyOrder.js';
import { mixedInteger } from './mixedInteger.js';
import { type Problem, problemOf } from './problem.js';
import { recordSeconds } from './recordSeconds.js';

/** Costs that differ by less are one: the planner leaves orders within a hundred-thousandth unsearched, the model is written to seven decimals. s */
const SAME = 1e-4;
/** What the depth of the forming calculation and that of the pose formula may differ by in a whole record. s */
export const RECORD = 0.05;

export interface Compared {
  readonly trial: Trial;
  /** What does not agree, in words; empty when all does. */
  readonly wrong: readonly string[];
  /** Searches compared, and how many of them the planner itself does not claim to have proven. */
  readonly searches: number;
  readonly notClaimed: number;
  /** How many the mixed-integer solver settled, and gave up. */
  readonly settled: number;
  readonly gaveUp: number;
}

const said = (x: { readonly seconds: number } | null): string => (x ? `${x.seconds.toFixed(5)} s` : 'no order');

/** What the layout of the plan kept added to its strokes' own seconds: dies that had to be raised. */
const risen = ({ task, result }: Searched, { stations, steps }: Trial): number => {
  const walks = steps.filter((s, i) => i > 0 && s.station !== steps[i - 1]!.station).length;
  const stood = result.kind === 'plan' ? task.finish(result.plan, { stations: stations.length, walks }) : null;
  return stood?.ok ? stood.seconds : 0;
};

const bySearch = (searched: Searched, best: BestOrder | null, trial: Trial): { readonly wrong: string | null; readonly claimed: boolean } => {
  const { result, tooling } = searched;
  const at = `V ${tooling.v}: every order gives ${said(best)},`;
  if (result.kind === 'undecided') return { wrong: null, claimed: false };
  if (result.kind === 'none') {
    if (!best) return { wrong: null, claimed: true };
    return result.layout ? { wrong: null, claimed: false } : { wrong: `${at} the planner none`, claimed: true };
  }
  if (!best || result.seconds - risen(searched, trial) < best.seconds - SAME) return { wrong: `${at} the planner ${said(result)}`, claimed: result.proven };
  if (result.proven) return { wrong: result.seconds > best.seconds + SAME ? `${at} the planner ${said(result)} and calls it proven` : null, claimed: true };
  return { wrong: result.bound > best.seconds + SAME ? `${at} the planner's bound is ${result.bound.toFixed(5)} s` : null, claimed: false };
};

/** s by which a trial's own seconds miss those of its steps as they are written; null where the last search gave no plan. */
export const recordMiss = (last: Searched | undefined, trial: Trial): number | null => {
  if (last?.result.kind !== 'plan' || trial.steps.length === 0) return null;
  return trial.seconds - recordSeconds(trial, last.task.handling, last.result.plan.map((p) => p.action.towards));
};

/**
 * Plans a part and holds every search that it took against subset dynamic programming and, where `limit` (s) is given, against
 * a mixed-integer solver; and the plan's seconds against its own record.
 */
export const compare = async (input: TrialInput, limit: number | null, now: () => number): Promise<Compared> => {
  const all: Searched[] = [];
  const trial = planTrial(input, { now, onSearch: (searched) => void all.push(searched) });
  const wrong: string[] = [];
  let [notClaimed, settled, gaveUp] = [0, 0, 0];
  for (const searched of all) {
    const problem: Problem = problemOf(searched.task, input.machine, input.quantity);
    const best = everyOrder(problem);
    const verdict = bySearch(searched, best, trial);
    if (verdict.wrong) wrong.push(verdict.wrong);
    if (!verdict.claimed) notClaimed++;
    if (limit === null) continue;
    const mixed = await mixedInteger(problem, limit);
    if (mixed.kind === 'gave up') gaveUp++;
    else settled++;
    const same = mixed.kind === 'gave up' || (mixed.kind === 'none' ? best === null : best !== null && Math.abs(mixed.seconds - best.seconds) <= SAME);
    if (!same) wrong.push(`V ${searched.tooling.v}: every order gives ${said(best)}, the mixed-integer model ${mixed.kind === 'best' ? said(mixed) : 'no order'}`);
  }
  const miss = recordMiss(all[all.length - 1], trial);
  if (miss !== null && Math.abs(miss) > RECORD) wrong.push(`the record's steps take ${(trial.seconds - miss).toFixed(3)} s, the trial says ${trial.seconds.toFixed(3)} s`);
  return { trial, wrong, searches: all.length, notClaimed, settled, gaveUp };
};
