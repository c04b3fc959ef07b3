import { type Contour, type Vec2, type Vec3, arcOf, signedArea, vertex } from '../../geometry/index.js';
import type { Brep, Edge, EdgeUse, Face } from '../step/brep.js';

/** Bodies for tests: a section (outline counter-clockwise, holes clockwise) pushed along z from 0 to `length`. */
export const extruded = (section: readonly Contour[], length: number): Brep => {
  const edges: Edge[] = [];
  const faces: Face[] = [];
  const low: EdgeUse[][] = [];
  const high: EdgeUse[][] = [];
  for (const contour of section) {
    const n = contour.length;
    const first = edges.length;
    // for corner i: edge 3 i at the bottom, 3 i + 1 at the top, 3 i + 2 upright in the corner
    contour.forEach((v, i) => {
      const w = contour[(i + 1) % n]!;
      edges.push(flatEdge(v, w, 0), flatEdge(v, w, length));
      edges.push({ from: [v.x, v.y, 0], to: [v.x, v.y, length], curve: { kind: 'line' }, points: [[v.x, v.y, 0], [v.x, v.y, length]] });
    });
    contour.forEach((v, i) => {
      const w = contour[(i + 1) % n]!;
      const next = first + 3 * ((i + 1) % n);
      const own = first + 3 * i;
      const loops = [[{ edge: own, forward: true }, { edge: next + 2, forward: true }, { edge: own + 1, forward: false }, { edge: own + 2, forward: false }]];
      const chord = Math.hypot(w.x - v.x, w.y - v.y);
      if (v.bulge === 0) {
        const normal: Vec3 = [(w.y - v.y) / chord, -(w.x - v.x) / chord, 0];
        faces.push({ surface: { kind: 'plane', origin: [v.x, v.y, 0], normal }, area: chord * length, loops });
      } else {
        const { centre, radius } = arcOf([v.x, v.y], [w.x, w.y], v.bulge);
        const surface = { kind: 'cylinder' as const, origin: [centre[0], centre[1], 0] as const, axis: [0, 0, 1] as const, radius, hollow: v.bulge < 0 };
        faces.push({ surface, area: 4 * Math.atan(Math.abs(v.bulge)) * radius * length, loops });
      }
    });
    low.push(contour.map((_, i) => ({ edge: first + 3 * i, forward: false })).reverse());
    high.push(contour.map((_, i) => ({ edge: first + 3 * i + 1, forward: true })));
  }
  const area = section.reduce((sum, c) => sum + signedArea(c), 0);
  faces.push({ surface: { kind: 'plane', origin: [0, 0, 0], normal: [0, 0, -1] }, area, loops: low });
  faces.push({ surface: { kind: 'plane', origin: [0, 0, length], normal: [0, 0, 1] }, area, loops: high });
  return { faces, edges, volume: area * length, solid: true };
};

const flatEdge = (v: Contour[number], w: Contour[number], z: number): Edge => {
  const [from, to]: [Vec3, Vec3] = [[v.x, v.y, z], [w.x, w.y, z]];
  if (v.bulge === 0) return { from, to, curve: { kind: 'line' }, points: [from, to] };
  const { centre, radius } = arcOf([v.x, v.y], [w.x, w.y], v.bulge);
  const sweep = 4 * Math.atan(v.bulge);
  const start = Math.atan2(v.y - centre[1], v.x - centre[0]);
  const points = Array.from({ length: 41 }, (_, k): Vec3 => {
    if (k === 0) return from;
    if (k === 40) return to;
    const a = start + (sweep * k) / 40;
    return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a), z];
  });
  const axis: Vec3 = [0, 0, Math.sign(sweep)];
  return { from, to, curve: { kind: 'circle', centre: [centre[0], centre[1], z], axis, radius, sweep: Math.abs(sweep) }, points };
};

/** A flat length (mm), or a turn of `angle` degrees (positive to the left) with an inside radius. */
export type Step = number | { readonly angle: number; readonly radius: number };

/** The section of a bent strip that starts along +x, its middle line on the given steps. */
export const strip = (thickness: number, steps: readonly Step[]): Contour => {
  const right: { p: Vec2; bulge: number }[] = [];
  const left: { p: Vec2; bulge: number }[] = [];
  let [x, y, heading] = [0, 0, 0];
  const mark = (bulge: number): void => {
    const n: Vec2 = [-Math.sin(heading), Math.cos(heading)];
    const h = thickness / 2;
    right.push({ p: [x - n[0] * h, y - n[1] * h], bulge });
    left.push({ p: [x + n[0] * h, y + n[1] * h], bulge });
  };
  for (const step of steps) {
    if (typeof step === 'number') {
      mark(0);
      [x, y] = [x + step * Math.cos(heading), y + step * Math.sin(heading)];
      continue;
    }
    const turn = (step.angle * Math.PI) / 180;
    mark(Math.tan(turn / 4));
    const r = (step.radius + thickness / 2) * Math.sign(turn);
    const centre: Vec2 = [x - r * Math.sin(heading), y + r * Math.cos(heading)];
    heading += turn;
    [x, y] = [centre[0] + r * Math.sin(heading), centre[1] - r * Math.cos(heading)];
  }
  mark(0);
  const forth = right.map(({ p, bulge }) => vertex(p[0], p[1], bulge));
  // back along the left side: each edge now leaves the corner that it reached before
  const back = left.map(({ p }, i) => vertex(p[0], p[1], i === 0 ? 0 : -left[i - 1]!.bulge)).reverse();
  return [...forth, ...back].map((v) => (v.bulge === 0 ? vertex(v.x, v.y) : v));
};
