import { type AllowanceRule, DEFAULT_K, NAMED_RULES, ruleNamed } from '../forming/index.js';
import type { Part } from '../sheet/index.js';
import { Fault } from './fault.js';

export const RULE_NAMES = Object.keys(NAMED_RULES).join(', ');

export interface RuleOptions {
  readonly k?: string;
  readonly rule?: string;
}

/** The rule for the blank of a part: the one named, else the part's own, else a K-factor of `DEFAULT_K`. */
export const ruleFor = (part: Part, options: RuleOptions): AllowanceRule => ruleOf(options) ?? part.rule ?? { name: 'K-factor', k: DEFAULT_K };

/** The allowance rule that the options name; undefined where they name none. */
export const ruleOf = ({ k, rule }: RuleOptions): AllowanceRule | undefined => {
  if (k !== undefined && rule !== undefined) throw new Fault('--k and --rule: give one of the two.');
  if (rule !== undefined) {
    const found = ruleNamed(rule);
    if (found === undefined) throw new Fault(`--rule ${rule}: no such rule; there are ${RULE_NAMES}.`);
    return found;
  }
  if (k === undefined) return undefined;
  const value = Number(k);
  if (k.trim() === '' || !(value >= 0 && value <= 0.6)) {
    throw new Fault(`--k ${k}: a K-factor is a number from 0 to 0.6 (neutral line from the inside face over thickness).`);
  }
  return { name: 'K-factor', k: value };
};
