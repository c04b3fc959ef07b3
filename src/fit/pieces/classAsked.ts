import type { GeneralClass } from '../../metal/index.js';
import type { Trial } from '../../trial/index.js';

/** As a trial's record says who asks for a dimension's tolerance. */
const ASKED = /^class ([fmcv])(?:,| has no figure)/;

/**
 * The class of general tolerances that a trial was asked to hold, as its dimensions' record tells it: where some have a class of their own, the one that
 * most of them are held to, the finer of two that hold as many. Null where no class was asked.
 */
export const classAsked = ({ dimensions = [] }: Pick<Trial, 'dimensions'>): GeneralClass | null => {
  const asked = dimensions.flatMap(({ askedBy }) => ASKED.exec(askedBy)?.[1] ?? []);
  const count = (cls: GeneralClass): number => asked.filter((it) => it === cls).length;
  const [most] = (['f', 'm', 'c', 'v'] as const).filter((cls) => count(cls) > 0).sort((a, b) => count(b) - count(a));
  return most ?? null;
};
