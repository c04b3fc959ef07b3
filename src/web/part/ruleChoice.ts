import { type AllowanceRule, DEFAULT_K, NAMED_RULES, ruleNamed } from '../../forming/index.js';
import { ruleInWords } from '../../sheet/index.js';

/** The allowance rule that a nominal blank is made by; `k` belongs to the K-factor. */
export interface RuleChoice {
  readonly rule: string;
  readonly k: number;
}

const wordOf = (rule: AllowanceRule): string | undefined =>
  Object.entries(NAMED_RULES).find(([, known]) => JSON.stringify(known) === JSON.stringify(rule))?.[0];

const named = (rule: AllowanceRule): string => (rule.name === 'machinist handbook' ? `machinist handbook, ${rule.group}` : ruleInWords(rule));

export const RULES: readonly (readonly [id: string, name: string])[] = [
  ['K-factor', 'K-factor'],
  ...Object.entries(NAMED_RULES).map(([id, rule]) => [id, named(rule).replace(/^[a-z]/, (c) => c.toUpperCase())] as const),
];

/** The choice that stands for a rule; a K-factor of `DEFAULT_K` for none. */
export const ruleChoice = (rule: AllowanceRule | undefined): RuleChoice =>
  rule === undefined || rule.name === 'K-factor' ? { rule: 'K-factor', k: rule?.k ?? DEFAULT_K } : { rule: wordOf(rule) ?? 'din-6935', k: DEFAULT_K };

export const ruleQuery = ({ rule, k }: RuleChoice): string =>
  new URLSearchParams(rule === 'K-factor' ? { rule, k: String(k) } : { rule }).toString();

/** Rules as one list of words: K-factors in use and the named ones. */
const KS = [0.33, 0.38, 0.4, 0.42, 0.44, 0.45, 0.5];
export const choiceOf = (rule: AllowanceRule | undefined): string => (rule === undefined ? `k ${DEFAULT_K}` : rule.name === 'K-factor' ? `k ${rule.k}` : (wordOf(rule) ?? 'din-6935'));
export const ruleOfChoice = (choice: string): AllowanceRule => ruleNamed(choice) ?? { name: 'K-factor', k: Number(choice.slice(2)) };
export const ruleChoices = (rule: AllowanceRule | undefined): readonly (readonly [string, string])[] => {
  const own = rule?.name === 'K-factor' ? [rule.k] : [];
  const ks = [...new Set([...KS, ...own])].sort((a, b) => a - b);
  return [...ks.map((k) => [`k ${k}`, `K-factor ${k}`] as const), ...RULES.slice(1)];
};
