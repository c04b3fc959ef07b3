import type { Joint } from './joints.js';
import type { Slab } from './slabs.js';

/** A slab reached over a joint from its parent; the root has no joint. */
export interface Branch {
  readonly slab: number;
  readonly parent?: { readonly slab: number; readonly joint: Joint };
}

/** The slabs that hang together with the largest one, parents first, or the joint that closes a ring. */
export const growTree = (slabs: readonly Slab[], joints: readonly Joint[]): { readonly branches: readonly Branch[] } | { readonly closedBy: Joint } => {
  const root = slabs.reduce((best, slab, i) => (slab.area > slabs[best]!.area ? i : best), 0);
  const branches: Branch[] = [{ slab: root }];
  const reached = new Set([root]);
  for (const { slab, parent } of branches) {
    for (const joint of joints) {
      if (!joint.slabs.includes(slab) || joint === parent?.joint) continue;
      const other = joint.slabs[0] === slab ? joint.slabs[1] : joint.slabs[0];
      if (reached.has(other)) return { closedBy: joint };
      reached.add(other);
      branches.push({ slab: other, parent: { slab, joint } });
    }
  }
  return { branches };
};
