import { type AllowanceRule, DEFAULT_K, NAMED_RULES, ruleNamed } from '../../forming/index.js';
import type { Part } from '../../sheet/index.js';
import { HttpError } from '../httpError.js';

const names = ['K-factor', ...Object.keys(NAMED_RULES)].join(', ');

/** The allowance rule that a query names; when it names none the part's own, else a K-factor of `DEFAULT_K`. */
export const ruleOf = ({ rule, k }: { readonly rule?: string; readonly k?: string }, part: Part): AllowanceRule => {
  if (rule === undefined && k === undefined && part.rule !== undefined) return part.rule;
  if (rule !== undefined && rule !== 'K-factor') {
    const known = ruleNamed(rule);
    if (known === undefined) throw new HttpError(400, `There is no rule '${rule}'; there are ${names}.`);
    if (k !== undefined) throw new HttpError(400, `'k' goes with the rule K-factor, not with '${rule}'.`);
    return known;
  }
  const value = k === undefined ? DEFAULT_K : Number(k);
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
