import type { Metal } from '../metal/index.js';
import { type Section, sectionOf } from './strip/index.js';

/** What a metal's section answers, kept with the metal: the same metal gives the same section. */
const kept = new WeakMap<Metal, Section>();

/** The bending section of a metal; some milliseconds the first time. */
export const metalSection = (metal: Metal): Section => {
  const known = kept.get(metal);
  if (known !== undefined) return known;
  const section = sectionOf(metal.curve, metal.modulus, metal.poisson);
  kept.set(metal, section);
  return section;
};
