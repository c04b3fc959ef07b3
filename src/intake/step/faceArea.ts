import { type Vec3, cross3, dot3, sub3, unit3 } from '../../geometry/index.js';
import type { Edge, EdgeUse, Surface } from './brep.js';

/** The segment between a circular edge and its chord, as seen along `normal`: positive where the arc lies to the right. mm2 */
const beyondChord = ({ curve }: Edge, normal: Vec3): number =>
  curve.kind === 'circle' ? (curve.radius ** 2 / 2) * (curve.sweep - Math.sin(curve.sweep)) * Math.sign(dot3(curve.axis, normal)) : 0;

const planeArea = (loops: readonly (readonly EdgeUse[])[], edges: readonly Edge[], normal: Vec3): number => {
  let twice = 0;
  let arcs = 0;
  const pole = loops[0]?.[0] === undefined ? undefined : edges[loops[0][0].edge]!.from;
  if (pole === undefined) return 0;
  for (const { edge: index, forward } of loops.flat()) {
    const edge = edges[index]!;
    const sense = forward ? 1 : -1;
    const points = edge.curve.kind === 'other' ? edge.points : [edge.from, edge.to];
    for (let i = 0; i + 1 < points.length; i++) twice += sense * dot3(cross3(sub3(points[i]!, pole), sub3(points[i + 1]!, pole)), normal);
    arcs += sense * beyondChord(edge, normal);
  }
  return twice / 2 + arcs;
};

/** Area under a loop of a cylinder: radius times the integral of height over angle. A seam has no angle and adds nothing. */
const cylinderArea = (loops: readonly (readonly EdgeUse[])[], edges: readonly Edge[], { origin, axis, radius, hollow }: { origin: Vec3; axis: Vec3; radius: number; hollow: boolean }): number => {
  const z = unit3(axis);
  const x = unit3(cross3(Math.abs(z[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0], z));
  const y = cross3(z, x);
  let sum = 0;
  for (const { edge: index, forward } of loops.flat()) {
    const { points } = edges[index]!;
    const at = points.map((p) => {
      const r = sub3(p, origin);
      return [Math.atan2(dot3(r, y), dot3(r, x)), dot3(r, z)] as const;
    });
    for (let i = 0; i + 1 < at.length; i++) {
      const turned = at[i + 1]![0] - at[i]![0];
      const short = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
      sum += (forward ? 1 : -1) * short * ((at[i]![1] + at[i + 1]![1]) / 2);
    }
  }
  // seen from outside, against the axis' sense is to the left
  return (hollow ? 1 : -1) * radius * sum;
};

/**
 * mm2 of a plane or cylinder face from its loops (Green's theorem), exact for lines and arcs; negative where the loops run the wrong way
 * about the metal; undefined for other surfaces.
 */
export const signedFaceArea = (surface: Surface, loops: readonly (readonly EdgeUse[])[], edges: readonly Edge[]): number | undefined =>
  surface.kind === 'plane' ? planeArea(loops, edges, surface.normal) : surface.kind === 'cylinder' ? cylinderArea(loops, edges, surface) : undefined;
