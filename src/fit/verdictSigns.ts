import type { FitVerdict } from './fitCell.js';

/** A verdict's sign, which stands beside its word on every page and paper: never a colour alone. */
export const VERDICT_SIGNS: Readonly<Record<FitVerdict, string>> = {
  makes: '✓',
  'makes with remedy': '↻',
  'does not make': '✕',
  'not decided': '?',
  'not tried': '–',
};
