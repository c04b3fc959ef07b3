import type { Brep } from '../step/brep.js';
import { SAME_LENGTH } from '../tolerances.js';
import { type Reason, faceNumber } from './judge.js';
import type { Patch } from './patches.js';
import { opposite } from './pairs.js';

/**
 * A hem drawn fully closed: its two layers are one body, so there is one outer half cylinder of one thickness' radius
 * and, either side of it, planes two thicknesses apart. What lies between the layers is not in the file.
 */
export const fusedHem = (brep: Brep, users: readonly (readonly number[])[], patches: readonly Patch[], thickness: number): Reason | undefined => {
  for (const patch of patches) {
    if (patch.hollow || Math.abs(patch.radius - thickness) > SAME_LENGTH) continue;
    const edges = new Set(patch.faces.flatMap((f) => brep.faces[f]!.loops.flat().map((u) => u.edge)));
    const straight = [...edges].filter((e) => brep.edges[e]!.curve.kind === 'line');
    const beside = straight.flatMap((e) => users[e]!.filter((f) => !patch.faces.includes(f) && brep.faces[f]!.surface.kind === 'plane'));
    const normalOf = (f: number): readonly [number, number, number] => {
      const surface = brep.faces[f]!.surface;
      return surface.kind === 'plane' ? surface.normal : [0, 0, 0];
    };
    const pair = beside.flatMap((f) => beside.filter((g) => g > f && opposite(normalOf(f), normalOf(g))).map((g) => [f, g] as const))[0];
    if (!pair) continue;
    const faces = [patch.faces[0]!, ...pair].map(faceNumber);
    return {
      code: 'fused hem',
      sentence: `Face ${faces[0]} is the outside of a hem drawn fully closed, its layers fused to ${(2 * thickness).toFixed(2)} mm: draw it with a gap, however small, so that its inside can be read.`,
      faces,
      measure: 2 * thickness,
    };
  }
  return undefined;
};
