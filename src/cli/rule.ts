import type { AllowanceRule } from '../forming/index.js';
import { Fault } from './fault.js';

/** The rules that --rule takes, by the word typed. */
const rules: Readonly<Record<string, AllowanceRule>> = {
  'din-6935': { name: 'DIN 6935' },
  'aviation-handbook': { name: 'aviation handbook' },
  'machinist-soft': { name: 'machinist handbook', group: 'soft' },
  'machinist-medium': { name: 'machinist handbook', group: 'medium' },
  'machinist-hard': { name: 'machinist handbook', group: 'hard' },
  'textbook-k': { name: 'textbook K' },
};

export const RULE_NAMES = Object.keys(rules).join(', ');

/** The K-factor that a nominal blank takes when none is named: that of the published pairs in the test data. */
export const DEFAULT_K = 0.44;

export interface RuleOptions {
  readonly k?: string;
  readonly rule?: string;
}

/** The allowance rule that the options name. */
export const ruleOf = ({ k, rule }: RuleOptions): AllowanceRule => {
  if (k !== undefined && rule !== undefined) throw new Fault('--k and --rule: give one of the two.');
  if (rule !== undefined) {
    const found = rules[rule];
    if (found === undefined) throw new Fault(`--rule ${rule}: no such rule; there are ${RULE_NAMES}.`);
    return found;
  }
  if (k === undefined) return { name: 'K-factor', k: DEFAULT_K };
  const value = Number(k);
  if (k.trim() === '' || !(value >= 0 && value <= 0.6)) {
    throw new Fault(`--k ${k}: a K-factor is a number from 0 to 0.6 (neutral line from the inside face over thickness).`);
  }
  return { name: 'K-factor', k: value };
};
