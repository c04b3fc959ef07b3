import type { AllowanceRule } from './allowance.js';

/** The K-factor that a nominal blank takes when no rule is named: that of the published pairs in the test data. */
export const DEFAULT_K = 0.44;

/** The rules that a person can name beside a K-factor, by the word typed. */
export const NAMED_RULES: Readonly<Record<string, AllowanceRule>> = {
  'din-6935': { name: 'DIN 6935' },
  'aviation-handbook': { name: 'aviation handbook' },
  'naval-handbook': { name: 'naval handbook' },
  'machinist-soft': { name: 'machinist handbook', group: 'soft' },
  'machinist-medium': { name: 'machinist handbook', group: 'medium' },
  'machinist-hard': { name: 'machinist handbook', group: 'hard' },
  'textbook-k': { name: 'textbook K' },
};

/** The rule of that word; undefined where there is none. */
export const ruleNamed = (name: string): AllowanceRule | undefined => (Object.hasOwn(NAMED_RULES, name) ? NAMED_RULES[name] : undefined);
