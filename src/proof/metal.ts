import { reversed, signedArea } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { type BendShape, shapeOf } from './bendShape.js';
import type { Kernel, Manifold, Pool } from './engine.js';
import { plateSolid } from './plateSolid.js';
import type { ZoneMesh } from './zoneMesh.js';
import { zoneMeshFor, zoneSolid } from './zoneSolid.js';

/** The part's metal as solids, each made once for what it depends on and freed with the pool. */
export interface Metal {
  readonly shapes: readonly BendShape[];
  readonly meshes: readonly ZoneMesh[];
  /** Null where the plate has no area. `filled`: without its holes. Faces drawn in by `thinner` mm. */
  plate(index: number, filled: boolean, thinner: number): Manifold;
  zone(index: number, x: number, thinner: number): Manifold;
  /** Frees the zones made at other angles (radians) than `keep` (of all bends). */
  forgetZones(keep: readonly number[]): void;
}

/** mm2: a plate smaller than this has no metal (two bends that meet line to line). */
const NO_AREA = 1e-6;

export const emptyPlate = (sheet: Developed, index: number): boolean =>
  Math.abs(signedArea(sheet.part.plates[index]!.outline)) < NO_AREA;

/** `most[i]` is the greatest angle (radians) that bend i reaches. */
export const makeMetal = (kernel: Kernel, pool: Pool, sheet: Developed, most: readonly number[]): Metal => {
  const shapes = sheet.part.bends.map((_, i) => shapeOf(sheet, i));
  const meshes = sheet.part.bends.map((bend, i) => zoneMeshFor(bend, shapes[i]!, most[i]!));
  const plates = new Map<string, Manifold>();
  const zones = new Map<string, { readonly index: number; readonly x: number; readonly solid: Manifold }>();
  return {
    shapes,
    meshes,
    plate: (index, filled, thinner) => {
      const key = `${index}/${filled}/${thinner}`;
      let solid = plates.get(key);
      if (solid === undefined) {
        const { outline, holes } = sheet.part.plates[index]!;
        const clockwise = holes.map((h) => (signedArea(h) > 0 ? reversed(h) : h));
        solid = pool.keep(plateSolid(kernel, outline, filled ? [] : clockwise, sheet.part.thickness - 2 * thinner));
        plates.set(key, solid);
      }
      return solid;
    },
    zone: (index, x, thinner) => {
      const key = `${index}/${x}/${thinner}`;
      let made = zones.get(key);
      if (made === undefined) {
        made = { index, x, solid: pool.keep(zoneSolid(kernel, meshes[index]!, shapes[index]!, x, thinner)) };
        zones.set(key, made);
      }
      return made.solid;
    },
    forgetZones: (keep) => {
      for (const [key, { index, x, solid }] of zones) {
        if (x === keep[index]) continue;
        pool.free(solid);
        zones.delete(key);
      }
    },
  };
};
