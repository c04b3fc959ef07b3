import { answerInWords } from '../fit/index.js';
import { standsStill } from '../shop/index.js';
import type { StoredTrial } from '../store/index.js';
import type { Trial } from '../trial/index.js';
import type { FitView } from './fitTask.js';
import type { Shop } from './shopKeeper.js';

/** A trial as its sheet tells it: what the floor says today of its machine stands before what was known when it was planned. */
export const toldToday = (stored: StoredTrial, floor: Floor, trial = stored.trial): Trial =>
  ({ ...trial, warnings: [...new Set([...bewareToday(stored, floor), ...trial.warnings])] });

type Floor = Pick<Shop, 'machines'>;

/**
 * What the floor says today that everybody who works on a trial's machine must read, a sentence each: what was found since it was planned counts.
 * Of a machine that is not on the floor, what the trial knows.
 */
export const bewareToday = ({ whose, machineId, trial: { machine } }: Pick<StoredTrial, 'whose' | 'machineId' | 'trial'>, { machines }: Floor): readonly string[] =>
  ((whose !== 'the buyer\'s' && machines.find(({ id }) => id === machineId)) || machine).beware ?? [];

/** A fit with what the floor says today of each machine of ours that stands still; those of the buyer's as they were handed in. */
export const fitToday = (view: FitView, { machines }: Floor): FitView => {
  const heads = view.machines.map(({ standsStill: then, ...head }) => {
    const now = head.whose === 'the buyer\'s' ? undefined : machines.find(({ id }) => id === head.machineId);
    const still = now ? standsStill(now) : then ?? [];
    return { ...head, ...(still.length > 0 && { standsStill: still }) };
  });
  return { ...view, machines: heads, answer: answerInWords({ ...view, machines: heads }) };
};
