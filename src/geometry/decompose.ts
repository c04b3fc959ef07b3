import earcut from 'earcut';
import type { Convex } from './convex.js';
import { type Vec2, cross2, sub2 } from './vec.js';

/** How far (mm2 of twice the corner's triangle) a merged piece may bend inwards by rounding. */
const INWARD = 1e-9;

const isConvexAt = (ring: readonly number[], i: number, at: (k: number) => Vec2): boolean => {
  const a = at(ring[(i + ring.length - 1) % ring.length]!);
  const b = at(ring[i]!);
  const c = at(ring[(i + 1) % ring.length]!);
  return cross2(sub2(b, a), sub2(c, b)) >= -INWARD;
};

/** Two rings that share the edge a-b (in ring one as a, b) sewn into one; null when the result is not convex. */
const sewn = (one: readonly number[], two: readonly number[], a: number, b: number, at: (k: number) => Vec2): number[] | null => {
  const i = one.indexOf(b);
  const j = two.indexOf(a);
  const ring = [...one.slice(i), ...one.slice(0, i)]; // b ... a
  const other = [...two.slice(j), ...two.slice(0, j)]; // a ... b
  const joined = [...ring, ...other.slice(1, -1)];
  return joined.every((_, k) => isConvexAt(joined, k, at)) ? joined : null;
};

/**
 * A polygon with holes as convex pieces that fill it exactly: triangles by ear cutting, then sewn along shared
 * edges while the result stays convex (Hertel and Mehlhorn: at most four times the least number of pieces).
 */
export const convexPieces = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[] = []): readonly Convex[] => {
  const points = [...outline, ...holes.flat()];
  const starts: number[] = [];
  let count = outline.length;
  for (const hole of holes) {
    starts.push(count);
    count += hole.length;
  }
  const at = (k: number): Vec2 => points[k]!;
  const triangles = earcut(points.flat(), starts, 2);
  const rings: (number[] | null)[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const t = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    const turned = cross2(sub2(at(t[1]!), at(t[0]!)), sub2(at(t[2]!), at(t[0]!)));
    if (turned === 0) continue;
    rings.push(turned > 0 ? t : [t[0]!, t[2]!, t[1]!]);
  }
  // edge "a,b" -> the ring in which it runs from a to b
  const owner = new Map<string, number>();
  rings.forEach((ring, r) => ring!.forEach((a, i) => owner.set(`${a},${ring![(i + 1) % ring!.length]!}`, r)));
  for (const key of [...owner.keys()]) {
    const [a, b] = key.split(',').map(Number) as [number, number];
    const r = owner.get(key);
    const s = owner.get(`${b},${a}`);
    if (r === undefined || s === undefined || r === s) continue;
    const joined = sewn(rings[r]!, rings[s]!, a, b, at);
    if (!joined) continue;
    owner.delete(key);
    owner.delete(`${b},${a}`);
    rings[r] = joined;
    rings[s] = null;
    joined.forEach((p, i) => owner.set(`${p},${joined[(i + 1) % joined.length]!}`, r));
  }
  return rings.filter((ring): ring is number[] => ring !== null).map((ring) => ring.map(at));
};
