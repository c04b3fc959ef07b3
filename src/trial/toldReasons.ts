import type { Untold } from './reasons.js';
import type { Reason } from './trial.js';

/** More reasons than these nobody reads. */
const MOST_TOLD = 6;

/** Tools with which some flange is too short come last: where others got further, what stopped those is worth more. */
export const nearestFirst = (byTools: readonly (readonly Untold[])[]): readonly Untold[] => {
  const tooShort = (told: readonly Untold[]): boolean => told.some(({ code }) => code === 'short flange');
  return [...byTools.filter((t) => !tooShort(t)), ...byTools.filter(tooShort)].flat();
};

/** Each subject once: another V that fails in the same place is not told again. */
export const tell = (reasons: readonly Untold[]): Reason[] => {
  const first = new Map<string, Untold>();
  for (const r of reasons) if (!first.has(r.about)) first.set(r.about, r);
  const told = new Map<string, Reason>();
  for (const { tell: say } of first.values()) {
    if (told.size >= MOST_TOLD) break;
    const reason = say();
    if (!told.has(reason.sentence)) told.set(reason.sentence, reason);
  }
  return [...told.values()];
};
