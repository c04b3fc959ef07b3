import { metalById } from '../metal/index.js';
import { blank } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';

/** kg: a sheet heavier than this asks for help (common practice, no source; local limits may be lower). */
const HEAVY = 20;
/** mm: a sheet longer than this asks for help whatever it weighs (common practice, no source). */
const UNWIELDY = 2000;

/** What there is to lift: kg of the blank, null where the metal's density is not known; mm of its longest side, null where the part has no blank. */
export interface Lift {
  readonly mass: number | null;
  readonly longest: number | null;
  /** 'not known' where neither figure tells that one person is enough. */
  readonly help: 'asked' | 'not asked' | 'not known';
}

export const liftOf = (trial: Trial): Lift => {
  const flat = blank(trial.sheet);
  if (!flat.ok) return { mass: null, longest: null, help: 'not known' };
  const { area, thickness, length: longest } = flat.value;
  const density = trial.metal.density ?? metalById(trial.metal.id)?.density;
  const mass = density === undefined ? null : area * thickness * density * 1e-9;
  const asked = (mass ?? 0) > HEAVY || longest > UNWIELDY || trial.lifting?.help === true;
  return { mass, longest, help: asked ? 'asked' : mass === null ? 'not known' : 'not asked' };
};
