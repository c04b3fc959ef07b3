import type { FitVerdict } from '../fit/index.js';

/** A verdict's sign on a terminal, which may have no others than ASCII's. */
export const VERDICT_SIGN: Readonly<Record<FitVerdict, string>> = {
  makes: '[+]', 'makes with remedy': '[~]', 'does not make': '[-]', 'not decided': '[?]', 'not tried': '[ ]',
};
