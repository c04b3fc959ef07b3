import type { Brep } from '../step/brep.js';
import { SAME_LENGTH } from '../tolerances.js';
import type { Joint } from './joints.js';
import { mayVary } from './pairs.js';
import { type Reason, faceNumber } from './judge.js';
import { contactsOf, slabByFace } from './links.js';
import { type Patch, sameLine } from './patches.js';
import type { Slab } from './slabs.js';

/** A bend that begins on a plate of the part and ends on none (a rolled edge, two bends with no flat between them). */
export const loosePatch = (
  brep: Brep,
  users: readonly (readonly number[])[],
  slabs: readonly Slab[],
  patches: readonly Patch[],
  joints: readonly Joint[],
  reached: ReadonlySet<number>,
  thickness: number,
): Reason | undefined => {
  const used = new Set(joints.flatMap((j) => (j.drawn.kind === 'round' ? [...j.drawn.inside, ...j.drawn.outside] : [])));
  const bySkin = slabByFace(slabs);
  for (const inner of patches) {
    if (!inner.hollow || used.has(inner)) continue;
    const outer = patches.find(
      (p) => !p.hollow && !used.has(p) && sameLine(inner, p) && Math.abs(p.radius - inner.radius - thickness) <= Math.max(2 * SAME_LENGTH, mayVary(thickness)),
    );
    if (!outer) continue;
    const touching = (patch: Patch): Set<number> =>
      new Set(contactsOf(brep, users, bySkin, slabs, patch).map((c) => c.slab).filter((s) => reached.has(s)));
    const [a, b] = [touching(inner), touching(outer)];
    if (![...a].some((s) => b.has(s))) continue;
    const faces = [inner.faces[0]!, outer.faces[0]!].map(faceNumber);
    return {
      code: 'bend without plate',
      sentence: `The bend of inside radius ${inner.radius.toFixed(2)} mm at faces ${faces[0]} and ${faces[1]} begins on a plate and ends on none.`,
      faces,
      measure: inner.radius,
    };
  }
  return undefined;
};
