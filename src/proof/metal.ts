import { reversed, signedArea } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { type BendShape, shapeOf } from './bendShape.js';
import { type Box, boxOf } from './box.js';
import type { Kernel, Manifold, Pool } from './engine.js';
import { plateSolid } from './plateSolid.js';
import type { ZoneMesh } from './zoneMesh.js';
import { zoneMeshFor, zoneSolid } from './zoneSolid.js';

/** The part's metal as solids, each made once for what it depends on and freed with the pool. */
export interface Metal {
  readonly shapes: readonly BendShape[];
  readonly meshes: readonly ZoneMesh[];
  /** `filled`: without its holes. Faces drawn in by `thinner` mm. */
  plate(index: number, filled: boolean, thinner: number): Manifold;
  zone(index: number, x: number, thinner: number): Manifold;
  plateBox(index: number, thinner: number): Box;
  zoneBox(index: number, x: number, thinner: number): Box;
  /** Frees the zones made at other angles (radians) than `keep` (of all bends). */
  forgetZones(keep: readonly number[]): void;
}

interface Made {
  readonly solid: Manifold;
  readonly box: Box;
}

/** mm2: a plate smaller than this has no metal (two bends that meet line to line). */
const NO_AREA = 1e-6;

export const emptyPlate = (sheet: Developed, index: number): boolean =>
  Math.abs(signedArea(sheet.part.plates[index]!.outline)) < NO_AREA;

/** The plate's solid with what stands on it, each as the prism of what it covers, as high as it stands. */
const withFormed = (kernel: Kernel, flat: Manifold, sheet: Developed, index: number, thinner: number): Manifold => {
  const standing = (sheet.part.formed ?? []).filter(({ plate, height }) => plate === index && height > 2 * thinner);
  if (standing.length === 0) return flat;
  const bodies = standing.map(({ outline, side, height }) => {
    const body = plateSolid(kernel, outline, [], height - thinner);
    // from the plate's middle plane to the middle of what stands on its face, drawn in at its top alone
    const up = (sheet.part.thickness + height - thinner) / 2;
    const moved = body.translate([0, 0, side === 'A' ? up : -up]);
    body.delete();
    return moved;
  });
  const one = kernel.Manifold.union([flat, ...bodies]);
  for (const body of [flat, ...bodies]) body.delete();
  return one;
};

/** `most[i]` is the greatest angle (radians) that bend i reaches. */
export const makeMetal = (kernel: Kernel, pool: Pool, sheet: Developed, most: readonly number[]): Metal => {
  const shapes = sheet.part.bends.map((_, i) => shapeOf(sheet, i));
  const meshes = sheet.part.bends.map((bend, i) => zoneMeshFor(bend, shapes[i]!, most[i]!));
  const plates = new Map<string, Made>();
  const zones = new Map<string, Made & { readonly index: number; readonly x: number }>();
  const madePlate = (index: number, filled: boolean, thinner: number): Made => {
    const key = `${index}/${filled}/${thinner}`;
    const known = plates.get(key);
    if (known !== undefined) return known;
    const { outline, holes } = sheet.part.plates[index]!;
    const clockwise = holes.map((h) => (signedArea(h) > 0 ? reversed(h) : h));
    const flat = plateSolid(kernel, outline, filled ? [] : clockwise, sheet.part.thickness - 2 * thinner);
    const solid = withFormed(kernel, flat, sheet, index, thinner);
    const made = { solid: pool.keep(solid), box: boxOf(solid) };
    plates.set(key, made);
    return made;
  };
  const madeZone = (index: number, x: number, thinner: number): Made => {
    const key = `${index}/${x}/${thinner}`;
    const known = zones.get(key);
    if (known !== undefined) return known;
    const solid = zoneSolid(kernel, meshes[index]!, shapes[index]!, x, thinner);
    const made = { index, x, solid: pool.keep(solid), box: boxOf(solid) };
    zones.set(key, made);
    return made;
  };
  return {
    shapes,
    meshes,
    plate: (index, filled, thinner) => madePlate(index, filled, thinner).solid,
    zone: (index, x, thinner) => madeZone(index, x, thinner).solid,
    plateBox: (index, thinner) => madePlate(index, true, thinner).box,
    zoneBox: (index, x, thinner) => madeZone(index, x, thinner).box,
    forgetZones: (keep) => {
      for (const [key, { index, x, solid }] of zones) {
        if (x === keep[index]) continue;
        pool.free(solid);
        zones.delete(key);
      }
    },
  };
};
