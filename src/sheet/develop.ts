import { type AllowanceRule, allowanceByRule, closedHemDeduction, dinK, setback } from '../forming/index.js';
import type { Developed } from './developed.js';
import type { Bend, Part } from './part.js';

/**
 * A hem of an inside radius up to this many thicknesses counts as closed: its length comes from the hem rule, since K at a
 * radius of nothing says little. Common practice, no source.
 */
const CLOSED_HEM = 0.25;

const allowanceOf = (bend: Bend, thickness: number, rule: AllowanceRule): number => {
  const { bendAngle, insideRadius } = bend;
  if (bend.kind === 'hem' && insideRadius <= CLOSED_HEM * thickness) {
    return 2 * setback(insideRadius, thickness, bendAngle) - closedHemDeduction(thickness);
  }
  // below r/s = 10^-1.3 the standard's k would fall under 0, a neutral line inside the bend's hollow: held at 0
  if (rule.name === 'DIN 6935' && !(dinK(insideRadius, thickness) > 0)) {
    return allowanceByRule({ name: 'K-factor', k: 0 }, insideRadius, thickness, bendAngle);
  }
  return allowanceByRule(rule, insideRadius, thickness, bendAngle);
};

/**
 * The part with the flat length that each bend takes up by a named rule: a nominal development. Closed hems follow the
 * hem rule (0.43 thickness less than the outside lengths; common practice, no source) whatever the rule for bends.
 *
 * @example develop(part, { name: 'K-factor', k: 0.44 })
 */
export const develop = (part: Part, rule: AllowanceRule): Developed => ({
  part,
  allowances: part.bends.map((bend) => allowanceOf(bend, part.thickness, rule)),
});

/** A rule as it is printed beside a nominal blank. */
export const ruleInWords = (rule: AllowanceRule): string => (rule.name === 'K-factor' ? `K-factor ${rule.k}` : rule.name);
