/** The allowance rule that a nominal blank is made by; `k` belongs to the K-factor. */
export interface RuleChoice {
  readonly rule: string;
  readonly k: number;
}

export const DEFAULT_RULE: RuleChoice = { rule: 'K-factor', k: 0.44 };

export const RULES: readonly (readonly [id: string, name: string])[] = [
  ['K-factor', 'K-factor'],
  ['din-6935', 'DIN 6935'],
  ['aviation-handbook', 'Aviation handbook'],
];

export const ruleQuery = ({ rule, k }: RuleChoice): string =>
  new URLSearchParams(rule === 'K-factor' ? { rule, k: String(k) } : { rule }).toString();
