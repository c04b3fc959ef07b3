import type { AllowanceRule } from '../../forming/index.js';
import { HttpError } from '../httpError.js';
import { defaultK } from '../limits.js';

const rules: Readonly<Record<string, AllowanceRule>> = {
  'din-6935': { name: 'DIN 6935' },
  'aviation-handbook': { name: 'aviation handbook' },
  'machinist-soft': { name: 'machinist handbook', group: 'soft' },
  'machinist-medium': { name: 'machinist handbook', group: 'medium' },
  'machinist-hard': { name: 'machinist handbook', group: 'hard' },
  'textbook-k': { name: 'textbook K' },
};
const names = ['K-factor', ...Object.keys(rules)].join(', ');

/** The allowance rule that a query names; a K-factor of `defaultK` when it names none. */
export const ruleOf = ({ rule, k }: { readonly rule?: string; readonly k?: string }): AllowanceRule => {
  if (rule !== undefined && rule !== 'K-factor') {
    const known = Object.hasOwn(rules, rule) ? rules[rule] : undefined;
    if (known === undefined) throw new HttpError(400, `There is no rule '${rule}'; there are ${names}.`);
    if (k !== undefined) throw new HttpError(400, `'k' goes with the rule K-factor, not with '${rule}'.`);
    return known;
  }
  const value = k === undefined ? defaultK : Number(k);
  if (k?.trim() === '' || !(value >= 0 && value <= 0.6)) {
    throw new HttpError(400, `'k' is a number from 0 to 0.6 (neutral line from the inside face over thickness), not '${k}'.`);
  }
  return { name: 'K-factor', k: value };
};

/** The revision that a query names; undefined for the latest. */
export const revisionOf = (text: string | undefined): number | undefined => {
  if (text === undefined) return undefined;
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new HttpError(400, `'revision' is a whole number from 1, not '${text}'.`);
  return Number(text);
};
