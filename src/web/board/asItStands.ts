import type { TrialRecord } from '../../store/index.js';

/** Trials of what stands on the floor. A fit keeps those with an option fitted, and with what the buyer has, under the same machine's id. */
export const asItStands = <T extends Pick<TrialRecord, 'whose' | 'option'>>(trials: readonly T[]): readonly T[] =>
  trials.filter(({ whose, option }) => whose === 'ours' && option === null);
