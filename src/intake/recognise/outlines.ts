import type { Vec3 } from '../../geometry/index.js';
import type { Outlines } from '../refusal.js';
import type { Brep } from '../step/brep.js';
import { boundaryLoops } from './loops.js';

/** A picture of more edges than this tells no more: the shortest are left out. */
const MOST_EDGES = 3000;

/** Thousandths of a millimetre are finer than any picture. */
const rounded = ([x, y, z]: Vec3): Vec3 => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000, Math.round(z * 1000) / 1000];

const size = (points: readonly Vec3[]): number => {
  const reach = ([0, 1, 2] as const).map((k) => Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k])));
  return Math.hypot(...reach);
};

/** A body's edges as chords, and the outlines of some of its faces (numbered from 1): what a picture of a refusal is drawn from. */
export const outlinesOf = (brep: Brep, faces: readonly number[]): Outlines => {
  const edges = brep.edges.map(({ points }) => points.map(rounded));
  const drawn = edges.length <= MOST_EDGES ? edges : [...edges].sort((a, b) => size(b) - size(a)).slice(0, MOST_EDGES);
  return {
    edges: drawn,
    marked: faces.flatMap((number) => {
      const face = brep.faces[number - 1];
      if (!face) return [];
      const loops = boundaryLoops(brep, [number - 1]).map((loop) => loop.flatMap((run) => run.points.slice(0, -1).map(rounded)));
      return [{ face: number, ...(face.surface.kind === 'plane' ? { normal: face.surface.normal } : {}), loops: loops.filter((loop) => loop.length > 2) }];
    }),
  };
};
