import type { FitVerdict } from '../fit/index.js';

/**
 * Exit code of a command that was asked whether parts are made, a row of verdicts for each, one by each machine; no verdict for what no brake
 * bends. 0: every part is made as it stands on at least one machine. 3: a part is made so on none, or only with a remedy. 4: neither is decided.
 */
export const exitCodeOf = (parts: readonly (readonly FitVerdict[])[]): 0 | 3 | 4 => {
  const not = parts.filter((verdicts) => !verdicts.includes('makes'));
  const open = (verdicts: readonly FitVerdict[]): boolean => verdicts.includes('not decided') || verdicts.includes('not tried');
  return not.length === 0 ? 0 : not.every(open) ? 4 : 3;
};
