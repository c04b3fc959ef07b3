import { type Rigid, type Vec2, type Vec3, add3, apply, cross3, dot3, flatten, invert, length3, scale3, sub3, turn } from '../../geometry/index.js';
import type { Developed, Feature } from '../../sheet/index.js';

/** A line of sight: from the eye's side, `direction` unit, into the scene. */
export interface Ray {
  readonly origin: Vec3;
  readonly direction: Vec3;
}

/** mm between the chords and the arcs of an outline that is touched. */
const CHORD = 0.1;
/** An edge that lies this many thicknesses behind the face that was touched is hidden by it. */
const BEHIND = 1.5;
/** mm: an edge this near to a bend's line is no free edge. */
const ON_BEND = 2e-3;

const covers = (rings: readonly (readonly Vec2[])[], [x, y]: Vec2): boolean => {
  let inside = false;
  for (const ring of rings) {
    ring.forEach(([px, py], i) => {
      const [qx, qy] = ring[(i + 1) % ring.length]!;
      if (py > y !== qy > y && x < px + ((y - py) / (qy - py)) * (qx - px)) inside = !inside;
    });
  }
  return inside;
};

/** The straight edges of a plate's outline that no bend's line lies on, by their ends. */
export const freeEdges = ({ part }: Developed, plate: number): (readonly [Vec2, Vec2])[] => {
  const { outline } = part.plates[plate]!;
  const lines = part.bends.flatMap(({ sides }) => sides.filter((side) => side.plate === plate).map((side) => side.line));
  return outline.flatMap((v, i) => {
    const w = outline[(i + 1) % outline.length]!;
    if (v.bulge !== 0) return [];
    const on = lines.some(({ from, to }) => {
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const off = (x: number, y: number): number => Math.abs((dx * (y - from[1]) - dy * (x - from[0])) / Math.hypot(dx, dy));
      return off(v.x, v.y) < ON_BEND && off(w.x, w.y) < ON_BEND;
    });
    return on ? [] : [[[v.x, v.y], [w.x, w.y]] as const];
  });
};

const middle = ([p, q]: readonly [Vec2, Vec2]): Vec2 => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];

/** How near a ray passes a stretch (mm), and how far along the ray that is. */
const toStretch = ({ origin, direction }: Ray, a: Vec3, b: Vec3): { readonly off: number; readonly depth: number } => {
  const along = sub3(b, a);
  const across = cross3(along, direction);
  const square = dot3(across, across);
  const reach = sub3(origin, a);
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, dot3(cross3(reach, direction), across) / square));
  const p = add3(a, scale3(along, share));
  const depth = dot3(sub3(p, origin), direction);
  return { off: length3(sub3(sub3(p, origin), scale3(direction, depth))), depth };
};

/** What a ray touches first: a free straight edge within `near` mm of it that nothing hides, else a face; null where it passes by. */
export const pickFeature = (sheet: Developed, poses: readonly Rigid[], ray: Ray, near: number): Feature | null => {
  const half = sheet.part.thickness / 2;
  let face: { readonly feature: Feature; readonly depth: number } | null = null;
  sheet.part.plates.forEach(({ outline, holes }, plate) => {
    const back = invert(poses[plate]!);
    const [o, d] = [apply(back, ray.origin), turn(back, ray.direction)];
    if (Math.abs(d[2]) < 1e-9) return;
    const rings = [outline, ...holes].map((contour) => flatten(contour, CHORD));
    for (const side of ['A', 'B'] as const) {
      const depth = ((side === 'A' ? half : -half) - o[2]) / d[2];
      const at: Vec2 = [o[0] + depth * d[0], o[1] + depth * d[1]];
      if ((face === null || depth < face.depth) && covers(rings, at)) face = { feature: { kind: 'face', plate, side }, depth };
    }
  });
  const touched = face as { readonly feature: Feature; readonly depth: number } | null;
  let edge: { readonly feature: Feature; readonly off: number } | null = null;
  sheet.part.plates.forEach((_, plate) => {
    for (const ends of freeEdges(sheet, plate)) {
      const [a, b] = ends.map(([x, y]) => apply(poses[plate]!, [x, y, 0])) as [Vec3, Vec3];
      const { off, depth } = toStretch(ray, a, b);
      if (off > near + half || (edge !== null && off >= edge.off)) continue;
      if (touched !== null && depth > touched.depth + BEHIND * 2 * half) continue;
      edge = { feature: { kind: 'edge', plate, at: middle(ends) }, off };
    }
  });
  return (edge as { readonly feature: Feature } | null)?.feature ?? touched?.feature ?? null;
};
