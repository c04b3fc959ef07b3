import { type Vec2, type Vec3, dot3 } from '../geometry/index.js';
import type { Body, Face } from './body.js';
import { cropRing } from './cropItems.js';
import { hatchLines } from './hatchLines.js';
import { EDGE_ON, type Occluder, occluderOf } from './occluder.js';
import { type FillName, LETTERS, type PenName } from './pens.js';
import { type Item, area, strokes, text } from './picture.js';
import { roomiestPoint } from './roomiestPoint.js';
import { type Projection, type View, project } from './view.js';
import { joinRegions, visibleRegion } from './visibleRegion.js';
import { visibleSpans } from './visibleSpans.js';

/** Where on the paper a scene goes: it is made as large as this box (x, y, width, height in mm) allows. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** mm of paper between hatch lines. */
const HATCH = 1.3;
/** A face narrower than this on the paper (mm) is not hatched: a facet of a small bend would show as specks. */
const TOO_NARROW = 1.3;
/** A face tilted further to the line of sight than this sine is too narrow to hatch or to bear a letter. */
const TOO_STEEP = 0.03;
/** mm of paper about a letter's middle that must be free for it. */
const LETTER_ROOM = LETTERS.side * 0.55;
/** Letters on no more than this many plates a side. */
const LETTERED = 3;

/** The projection that shows all the points as large as the box allows, in its middle; no larger than `most` mm per mm. */
export const fitTo = (view: View, points: readonly Vec3[], box: Box, most = Infinity): Projection => {
  let [r0, u0, r1, u1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of points) {
    const [r, u] = [dot3(p, view.right), dot3(p, view.up)];
    [r0, u0, r1, u1] = [Math.min(r0, r), Math.min(u0, u), Math.max(r1, r), Math.max(u1, u)];
  }
  const scale = Math.min(box.width / Math.max(r1 - r0, 1e-9), box.height / Math.max(u1 - u0, 1e-9), most);
  return {
    view,
    scale,
    origin: [
      box.x + box.width / 2 - (scale * (r0 + r1)) / 2,
      box.y + box.height / 2 + (scale * (u0 + u1)) / 2,
    ],
  };
};

export const pointsOf = (bodies: readonly Body[]): Vec3[] =>
  bodies.flatMap((body) => body.faces.flatMap((face) => face.loops.flat()));

interface Seen {
  readonly face: Face;
  readonly occluder: Occluder;
}

/** Area over longest edge. */
const breadth = (ring: readonly Vec2[]): number => {
  let [twice, longest] = [0, 1e-9];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    twice += p[0] * q[1] - p[1] * q[0];
    longest = Math.max(longest, Math.hypot(q[0] - p[0], q[1] - p[1]));
  });
  return Math.abs(twice) / 2 / longest;
};

const seenFaces = (bodies: readonly Body[], to: Projection): Seen[] => {
  const { right, up, towards } = to.view;
  const seen: Seen[] = [];
  for (const body of bodies) {
    for (const face of body.faces) {
      const normal: Vec3 = [dot3(face.normal, right), -dot3(face.normal, up), dot3(face.normal, towards)];
      if (normal[2] <= EDGE_ON) continue;
      const occluder = occluderOf(face.loops.map((loop) => loop.map((p) => project(to, p))), normal);
      if (occluder) seen.push({ face, occluder });
    }
  }
  return seen;
};

const fillsOf = (seen: readonly Seen[]): Item[] => {
  const names = new Set(seen.flatMap(({ face }) => (face.fill ? [face.fill] : [])));
  return [...names].sort().flatMap((name: FillName) => {
    const others = seen.filter(({ face }) => face.fill !== name).map(({ occluder }) => occluder);
    const regions = seen
      .filter(({ face }) => face.fill === name)
      .map(({ occluder }) => visibleRegion(occluder, others));
    const rings = joinRegions(regions);
    return rings.length === 0 ? [] : [area(name, ...rings)];
  });
};

const lettersOf = (seen: readonly Seen[], window: Box | null): Item[] => {
  const all = seen.map(({ occluder }) => occluder);
  const places = new Map<string, { at: Vec2; room: number; side: string }>();
  for (const { face, occluder } of seen) {
    if (!face.letter || 1 / Math.hypot(occluder.a, occluder.b, 1) < TOO_STEEP) continue;
    const [x0, y0, x1, y1] = occluder.box;
    if (Math.min(x1 - x0, y1 - y0) < LETTERS.side * 0.8) continue;
    const region = visibleRegion(occluder, all);
    const shown = window ? region.map((ring) => cropRing(ring, window)).filter((ring) => ring.length >= 3) : region;
    const place = roomiestPoint(shown, LETTER_ROOM * 1.3);
    if (!place || place.room < LETTER_ROOM) continue;
    const key = `${face.letter.side}${face.letter.plate}`;
    const met = places.get(key);
    if (!met || place.room > met.room) places.set(key, { ...place, side: face.letter.side });
  }
  const sorted = [...places.values()].sort((p, q) => q.room - p.room);
  return (['A', 'B'] as const).flatMap((side) =>
    sorted
      .filter((place) => place.side === side)
      .slice(0, LETTERED)
      .map(({ at }) =>
        text([at[0], at[1] + LETTERS.side * 0.36], side, LETTERS.side, { bold: true, patch: side === 'B' }),
      ),
  );
};

/**
 * Draws the bodies on the paper with hidden surfaces removed: only what the eye sees is in the result, lines cut where
 * a face hides them, hatching and tints to the seen part of their faces. Bodies must be closed (faces seen from outside
 * only) and must not overlap each other, else the lines in which they cross are missing. Letters are set inside `window` when only that
 * part of the paper will be kept.
 */
export const drawScene = (bodies: readonly Body[], to: Projection, window: Box | null = null): Item[] => {
  const seen = seenFaces(bodies, to);
  const occluders = seen.map(({ occluder }) => occluder);
  const byPen = new Map<PenName, (readonly [Vec2, Vec2])[]>();
  const labels: Item[] = [];
  const drawn = new Set<string>();
  /** Draws what is seen of the line and tells whether that is all of it. */
  const draw = (pen: PenName, p: Vec3, q: Vec3): boolean => {
    const spans = visibleSpans(p, q, occluders);
    for (const [s, t] of spans) {
      const at = (k: number): Vec2 => [p[0] + (q[0] - p[0]) * k, p[1] + (q[1] - p[1]) * k];
      const line = [at(s), at(t)] as const;
      const key = `${pen} ${line.map((c) => c.map((v) => v.toFixed(3)).join()).sort().join(' ')}`;
      if (drawn.has(key)) continue;
      drawn.add(key);
      const lines = byPen.get(pen);
      if (lines) lines.push(line);
      else byPen.set(pen, [line]);
    }
    return spans.length === 1 && spans[0]![0] === 0 && spans[0]![1] === 1;
  };
  const faces = (n: Vec3): boolean => dot3(n, to.view.towards) > EDGE_ON;
  for (const { face, occluder } of seen) {
    if (!face.hatch) continue;
    if (1 / Math.hypot(occluder.a, occluder.b, 1) < TOO_STEEP || breadth(occluder.rings[0]!) < TOO_NARROW) continue;
    const direction: Vec2 = [dot3(face.hatch, to.view.right), -dot3(face.hatch, to.view.up)];
    for (const [p, q] of hatchLines(occluder, direction, HATCH)) draw('hatch', p, q);
  }
  for (const body of bodies) {
    for (const mark of body.marks) {
      if (!faces(mark.normal)) continue;
      const [from, end] = [project(to, mark.from), project(to, mark.to)];
      if (!draw(mark.pen, from, end) || mark.label === undefined) continue;
      labels.push(text([end[0], end[1] + LETTERS.small * 0.95], mark.label, LETTERS.small));
    }
    for (const edge of body.edges) {
      const front = edge.normals.filter(faces).length;
      if (front === 0) continue;
      const silhouette = front < edge.normals.length || edge.normals.length === 1;
      if (!silhouette && (edge.kind === 'smooth' || (edge.kind === 'tangent' && !body.tangents))) continue;
      const pen = silhouette ? 'outline' : edge.kind === 'tangent' ? 'tangent' : 'edge';
      draw(pen, project(to, edge.from), project(to, edge.to));
    }
  }
  const order: readonly PenName[] = ['hatch', 'tangent', 'thin', 'centre', 'edge', 'outline', 'accent', 'warning'];
  return [
    ...fillsOf(seen),
    ...order.flatMap((pen) => (byPen.has(pen) ? [strokes(pen, byPen.get(pen)!)] : [])),
    ...labels,
    ...lettersOf(seen, window),
  ];
};
