import type { Vec2 } from '../geometry/index.js';
import type { Box } from './drawScene.js';
import { type Item, patchOf } from './picture.js';

/** The part of the line inside the box. */
const cropLine = (p: Vec2, q: Vec2, box: Box): [Vec2, Vec2] | null => {
  let [low, high] = [0, 1];
  const sides: readonly [number, number][] = [
    [p[0] - box.x, q[0] - box.x],
    [box.x + box.width - p[0], box.x + box.width - q[0]],
    [p[1] - box.y, q[1] - box.y],
    [box.y + box.height - p[1], box.y + box.height - q[1]],
  ];
  for (const [a, b] of sides) {
    if (a < 0 && b < 0) return null;
    if (a < 0) low = Math.max(low, a / (a - b));
    if (b < 0) high = Math.min(high, a / (a - b));
  }
  if (low >= high) return null;
  const at = (s: number): Vec2 => [p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s];
  return [at(low), at(high)];
};

const cropLines = (lines: readonly (readonly [Vec2, Vec2])[], box: Box): [Vec2, Vec2][] =>
  lines.flatMap(([p, q]) => {
    const kept = cropLine(p, q, box);
    return kept ? [kept] : [];
  });

/** The ring's part inside the box, joined along the box's rim. */
export const cropRing = (ring: readonly Vec2[], box: Box): Vec2[] => {
  const inside: readonly ((p: Vec2) => number)[] = [
    (p) => p[0] - box.x,
    (p) => box.x + box.width - p[0],
    (p) => p[1] - box.y,
    (p) => box.y + box.height - p[1],
  ];
  let kept: Vec2[] = [...ring];
  for (const side of inside) {
    const next: Vec2[] = [];
    kept.forEach((p, i) => {
      const q = kept[(i + 1) % kept.length]!;
      const [a, b] = [side(p), side(q)];
      if (a >= 0) next.push(p);
      if (a >= 0 !== b >= 0) next.push([p[0] + ((q[0] - p[0]) * a) / (a - b), p[1] + ((q[1] - p[1]) * a) / (a - b)]);
    });
    kept = next;
  }
  return kept;
};

/** What lies inside the box: lines and areas cut at its rim, texts kept only when they fit wholly. */
export const cropItems = (items: readonly Item[], box: Box): Item[] =>
  items.flatMap((item): Item[] => {
    switch (item.kind) {
      case 'strokes':
        return [{ ...item, lines: cropLines(item.lines, box) }];
      case 'polyline': {
        const corners = item.closed ? [...item.points, item.points[0]!] : item.points;
        const lines = corners.slice(1).map((q, i) => [corners[i]!, q] as const);
        return [{ kind: 'strokes', lines: cropLines(lines, box), pen: item.pen }];
      }
      case 'area': {
        const rings = item.rings.map((ring) => cropRing(ring, box)).filter((ring) => ring.length >= 3);
        return rings.length > 0 ? [{ ...item, rings }] : [];
      }
      case 'text': {
        const fits = patchOf(item).every(
          ([x, y]) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height,
        );
        return fits ? [item] : [];
      }
      case 'group':
        return [{ ...item, items: cropItems(item.items, box) }];
    }
  });
