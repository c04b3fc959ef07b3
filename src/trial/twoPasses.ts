import type { Part } from '../sheet/index.js';
import { groupsOf } from './groups.js';
import type { Twice } from './states.js';
import type { Reason } from './trial.js';

/** A bend to be made in two passes: first to a smaller bend angle (degrees, released; half of it by default), finished by a later stroke. */
export interface InTwo {
  readonly bend: string;
  readonly first?: number;
}

/** A pass of fewer degrees than this is no bend that a stroke makes by itself: springback alone is of that size. Common practice, no source. */
const LEAST_PASS = 10;

/** Bends asked for in two passes, all of a stroke with the one that is named; or why one cannot be. */
export const twiceOf = (part: Part, asked: readonly InTwo[]): { readonly twice: Twice } | { readonly fault: Reason } => {
  const twice = new Map<number, number>();
  for (const { bend, first: wished } of asked) {
    const index = part.bends.findIndex((b) => b.id === bend);
    const it = part.bends[index];
    if (!it) return { fault: { code: 'no order', bends: [], sentence: `The part has no bend ${bend} to be made in two passes; its bends are ${part.bends.map((b) => b.id).join(', ')}.` } };
    if (it.kind !== 'bend') return { fault: { code: 'no order', bends: [bend], sentence: `Bend ${bend} is no plain bend and is not made in two passes of a V: it has strokes of its own.` } };
    const first = wished ?? it.bendAngle / 2;
    const most = it.bendAngle - LEAST_PASS;
    if (first < LEAST_PASS || first > most) {
      return { fault: { code: 'no order', bends: [bend], by: first < LEAST_PASS ? LEAST_PASS - first : first - most, sentence: `Bend ${bend} of ${it.bendAngle} degrees bend angle is begun to between ${LEAST_PASS} and ${most.toFixed(0)} degrees, not to ${first}.` } };
    }
    for (const other of groupsOf(part).find((g) => g.bends.includes(index))!.bends) twice.set(other, first);
  }
  return { twice };
};

/** Which bends are made in two passes, in words. */
export const inTwoWords = (part: Part, twice: Twice): string =>
  [...twice].map(([bend, first]) => `${part.bends[bend]!.id} in two passes, first to ${first.toFixed(0)} degrees of bend angle`).join(', ');
