import type { Bend } from '../sheet/index.js';
import { type BendShape, zonePoint } from './bendShape.js';
import { type Kernel, type Manifold } from './engine.js';
import { CHORD_ERROR } from './tolerances.js';
import { type ZoneMesh, zoneMesh } from './zoneMesh.js';

/**
 * The zone cut into so many strips that at no bend angle up to `most` (radians) its outer face leaves the cylinder by
 * more than the chord error: radius times angle squared over 8, the radius being a / x - neutral + t.
 */
export const zoneMeshFor = (bend: Bend, shape: BendShape, most: number): ZoneMesh => {
  // a hem turns most in its middle: that part is cut as finely as it asks
  const curved = shape.hem === undefined ? shape.a : Math.min(shape.hem.pre, shape.hem.closed);
  const reach = curved * most + shape.thickness * most * most;
  return zoneMesh(bend.zone, Math.max(2, Math.ceil((shape.a / curved) * Math.sqrt(reach / (8 * CHORD_ERROR)))));
};

/** The curved metal at the bend angle x (radians) in the frame of side 0, each face drawn in by `thinner`. mm */
export const zoneSolid = (kernel: Kernel, mesh: ZoneMesh, shape: BendShape, x: number, thinner = 0): Manifold => {
  // single precision: coordinates are kept small by counting u from the middle of the metal
  const { middle } = mesh;
  const half = shape.thickness / 2 - thinner;
  const places = new Float32Array(mesh.vertices.length * 3);
  mesh.vertices.forEach((v, i) => places.set(zonePoint(shape, x, v.u - middle, v.f, v.side * half), 3 * i));
  const skin = new kernel.Mesh({ numProp: 3, vertProperties: places, triVerts: Uint32Array.from(mesh.triangles.flat()) });
  const centred = kernel.Manifold.ofMesh(skin);
  const solid = centred.translate([middle, 0, 0]);
  centred.delete();
  return solid;
};
