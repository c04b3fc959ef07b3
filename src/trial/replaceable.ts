import type { Rack } from '../shop/index.js';
import { SAME_COST } from './completed.js';
import type { Replaceable, TrialInput } from './input.js';
import type { Layout } from './layout.js';
import { isScribed, sameFeature } from './stopChoice.js';
import type { Planned, SearchTask } from './task.js';
import { type WithinTolerance, asksTolerance } from './tolerance.js';
import type { Trial } from './trial.js';

/** What is kept of a search that gave a plan. */
interface Searched {
  readonly task: SearchTask;
  readonly within: Pick<WithinTolerance, 'whereItStands'>;
  readonly raised: (step: Planned, riser: number) => Planned | null;
  readonly force: (step: Planned) => number;
}

/** What a layout for several parts asks of a plan. `record` makes the trial on a layout. */
export const replaceable = (
  input: TrialInput, { task, within, raised, force }: Searched, plan: readonly Planned[], own: Layout,
  record: (layout: Layout, rack: Rack) => Trial,
): Replaceable => {
  const alike = ({ group, gaugeSide }: Planned['action']): readonly Planned['action'][] => task.actions.filter((a) => a.group === group && a.gaugeSide === gaugeSide);
  const withPair = (step: Planned, pair: number): Planned | null => {
    if (pair === step.action.pair) return step;
    const action = alike(step.action).find((a) => a.pair === pair);
    if (!action || !task.allows(action, step.mask)) return null;
    const answer = task.answer(action, step.mask);
    if (!answer.ok) return null;
    const same = [answer.option, ...answer.others()].find((o) => sameFeature(o.stop.feature, step.option.stop.feature));
    // another stop may break a tolerance that this one was taken for
    const option = same ?? (asksTolerance(input) || isScribed(answer.option.stop) ? null : answer.option);
    return option && { ...step, action, option };
  };
  return {
    plan, stations: own.placements.map(({ station }) => station), raised, force, withPair,
    pairsFor: ({ action }) => alike(action).map(({ pair }) => pair),
    place: (layout, rack) => {
      const unheld = within.whereItStands(layout);
      if (unheld) return unheld;
      const trial = record(layout, rack);
      return { ...trial, proven: trial.proven && trial.seconds <= trial.bound + SAME_COST };
    },
  };
};
