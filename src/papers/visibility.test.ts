import earcut from 'earcut';
import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type Rigid, type Vec2, type Vec3, add3, cross3, dot3, scale3, sub3, unit3, vertex } from '../geometry/index.js';
import { type Body, type Face, bodyOf, moveBody } from './body.js';
import { drawScene } from './drawScene.js';
import { extrude } from './extrude.js';
import { type Occluder, occluderOf } from './occluder.js';
import { type Projection, project, viewFrom } from './view.js';
import { visibleSpans } from './visibleSpans.js';

// The naive twin: rays from points to the eye against triangles in space, nothing shared with the code under test.

type Triangle = readonly [Vec3, Vec3, Vec3];

const trianglesOf = (bodies: readonly Body[]): Triangle[] =>
  bodies.flatMap((body) =>
    body.faces.flatMap((face): Triangle[] => {
      const n = face.normal.map(Math.abs);
      const drop = n.indexOf(Math.max(...n));
      const keep = [0, 1, 2].filter((k) => k !== drop) as [0 | 1 | 2, 0 | 1 | 2];
      const all = face.loops.flat();
      const holes = face.loops.slice(1).map((_, k) => face.loops.slice(0, k + 1).flat().length);
      const indices = earcut(all.flatMap((p) => keep.map((k) => p[k])), holes.length > 0 ? holes : undefined);
      const out: Triangle[] = [];
      for (let i = 0; i < indices.length; i += 3) out.push([all[indices[i]!]!, all[indices[i + 1]!]!, all[indices[i + 2]!]!]);
      return out;
    }),
  );

interface Hit {
  /** How far along the ray, and how near to the triangle's rim (least barycentric coordinate). */
  readonly at: number;
  readonly rim: number;
}

const hit = (from: Vec3, way: Vec3, [a, b, c]: Triangle): Hit | null => {
  const [e1, e2] = [sub3(b, a), sub3(c, a)];
  const p = cross3(way, e2);
  const det = dot3(e1, p);
  if (Math.abs(det) < 1e-9) return null;
  const s = sub3(from, a);
  const u = dot3(s, p) / det;
  const q = cross3(s, e1);
  const v = dot3(way, q) / det;
  return { at: dot3(e2, q) / det, rim: Math.min(u, v, 1 - u - v) };
};

/** Too near a triangle's rim, or to a face's own plane, for two ways of reckoning to agree; such points are counted and left out. */
const RIM = 1e-6;
const OWN = 1e-4;

const judge = (p: Vec3, way: Vec3, triangles: readonly Triangle[]): 'seen' | 'hidden' | 'too close' => {
  let close = false;
  for (const t of triangles) {
    const h = hit(p, way, t);
    if (!h || h.rim < -RIM || h.at < -OWN) continue;
    if (h.at > OWN && h.rim > RIM) return 'hidden';
    // its own faces meet the ray at once: they do not hide it
    if (h.at > OWN) close = true;
    else if (h.at > 1e-7) close = true;
  }
  return close ? 'too close' : 'seen';
};

const randomPose = (random: () => number): Rigid => {
  const r = (): number => random() * 2 - 1;
  const x = unit3([r(), r(), r()]);
  const z = unit3(cross3(x, [r(), r(), r()]));
  return { x, y: cross3(z, x), z, o: [r() * 60, r() * 60, r() * 60] };
};

/** A square frame: two faces with a hole, inner and outer sides. */
const frame = (name: string, r: number, hole: number, thick: number): Body => {
  const square = (half: number, z: number): Vec3[] => [[-half, -half, z], [half, -half, z], [half, half, z], [-half, half, z]];
  const common = { surface: 'flat', curved: false, fill: 'tool' } as const;
  const sides = (half: number, outwards: 1 | -1): Face[] =>
    square(half, 0).map((p, i) => {
      const q = square(half, 0)[(i + 1) % 4]!;
      const up = (v: Vec3): Vec3 => [v[0], v[1], thick];
      const loop = [p, q, up(q), up(p)];
      const n = unit3([q[1] - p[1], p[0] - q[0], 0]);
      return { ...common, loops: [outwards === 1 ? loop : loop.reverse()], normal: scale3(n, outwards) };
    });
  return bodyOf(name, [
    { ...common, loops: [square(r, thick), square(hole, thick).reverse()], normal: [0, 0, 1] },
    { ...common, loops: [square(r, 0).reverse(), square(hole, 0)], normal: [0, 0, -1] },
    ...sides(r, 1),
    ...sides(hole, -1),
  ]);
};

/** Frames, notched blocks, wedges and slabs in any position, free to run through each other. */
const randomScene = (random: () => number, count: number): Body[] =>
  Array.from({ length: count }, (_, k) => {
    const [w, h, n] = [20 + random() * 60, 10 + random() * 50, 3 + random() * 8];
    const notched = [vertex(0, 0), vertex(w, 0), vertex(w, h), vertex(w - n, h), vertex(w - n, n), vertex(n, n), vertex(n, h), vertex(0, h)];
    const wedge = [vertex(0, 0), vertex(w, 0), vertex(w / 3, h)];
    const slab = [vertex(0, 0), vertex(w, 0), vertex(w, 1 + random()), vertex(0, 1 + random())];
    const round = [vertex(0, 0), vertex(w, 0, 0.5), vertex(w, h), vertex(0, h)];
    if (k % 5 === 4) return moveBody(randomPose(random), frame(`frame ${k}`, w, w * 0.7, n));
    const profile = [notched, wedge, slab, round][k % 5]!;
    return moveBody(randomPose(random), extrude(`body ${k}`, profile, -10 - random() * 30, 10 + random() * 30, k % 2 === 0 ? 'tool' : 'bed'));
  });

const occludersOf = (bodies: readonly Body[], to: Projection): Occluder[] =>
  bodies.flatMap((body) =>
    body.faces.flatMap((face) => {
      const n: Vec3 = [dot3(face.normal, to.view.right), -dot3(face.normal, to.view.up), dot3(face.normal, to.view.towards)];
      return occluderOf(face.loops.map((loop) => loop.map((p) => project(to, p))), n) ?? [];
    }),
  );

describe('hidden lines against rays', () => {
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    it(`every sampled point of every edge is drawn exactly when the eye sees it (seed ${seed})`, () => {
      const random = mulberry32(seed);
      const bodies = randomScene(random, 9);
      const to: Projection = { view: viewFrom(random() * 360, 10 + random() * 70), scale: 0.5 + random(), origin: [0, 0] };
      const occluders = occludersOf(bodies, to);
      const triangles = trianglesOf(bodies);
      let [seen, hidden, skipped] = [0, 0, 0];
      const wrong: string[] = [];
      for (const body of bodies) {
        for (const edge of body.edges) {
          if (edge.normals.every((n) => dot3(n, to.view.towards) <= 1e-5)) continue;
          const spans = visibleSpans(project(to, edge.from), project(to, edge.to), occluders);
          for (let k = 0; k < 9; k++) {
            const s = 0.02 + random() * 0.96;
            if (spans.some(([a, b]) => Math.abs(a - s) < 1e-5 || Math.abs(b - s) < 1e-5)) {
              skipped++;
              continue;
            }
            const p = add3(edge.from, scale3(sub3(edge.to, edge.from), s));
            const truth = judge(p, to.view.towards, triangles);
            if (truth === 'too close') skipped++;
            else {
              if (truth === 'seen') seen++;
              else hidden++;
              const drawn = spans.some(([a, b]) => s > a && s < b);
              if (drawn !== (truth === 'seen')) wrong.push(`${body.name} at ${p.map((v) => v.toFixed(4)).join()} is ${truth}`);
            }
          }
        }
      }
      expect(wrong).toEqual([]);
      // the test must have looked at both kinds, and left out next to nothing
      expect(seen).toBeGreaterThan(150);
      expect(hidden).toBeGreaterThan(150);
      expect(skipped).toBeLessThan((seen + hidden) * 0.02);
    });

    it(`every sampled point of the paper bears the tint of the nearest face (seed ${seed})`, () => {
      const random = mulberry32(seed + 100);
      const bodies = randomScene(random, 6);
      const to: Projection = { view: viewFrom(random() * 360, 10 + random() * 70), scale: 1, origin: [0, 0] };
      const items = drawScene(bodies, to);
      const corners = bodies.flatMap((b) => b.faces.flatMap((f) => f.loops.flat())).map((p) => project(to, p));
      const [x0, x1] = [Math.min(...corners.map((p) => p[0])), Math.max(...corners.map((p) => p[0]))];
      const [y0, y1] = [Math.min(...corners.map((p) => p[1])), Math.max(...corners.map((p) => p[1]))];
      const faces = bodies.flatMap((b) => b.faces.map((face) => ({ fill: face.fill!, triangles: trianglesOf([{ ...b, faces: [face] }]) })));
      let looked = 0;
      for (let k = 0; k < 600; k++) {
        const [px, py] = [x0 + random() * (x1 - x0), y0 + random() * (y1 - y0)];
        const far: Vec3 = add3(add3(scale3(to.view.right, px), scale3(to.view.up, -py)), scale3(to.view.towards, -1000));
        const hits = faces
          .flatMap(({ fill, triangles }) => triangles.flatMap((t) => hit(far, to.view.towards, t) ?? []).filter((h) => h.rim > -1e-4).map((h) => ({ ...h, fill })))
          .sort((a, b) => b.at - a.at);
        const next = hits.find((h) => h.fill !== hits[0]!.fill);
        // near a rim or a line where two bodies cross, a hundredth of a mm decides: left out
        if (hits.some((h) => h.rim < 2e-3) || (next && hits[0]!.at - next.at < 0.05)) continue;
        looked++;
        const inside = (rings: readonly (readonly Vec2[])[]): boolean => {
          let odd = false;
          for (const ring of rings) {
            ring.forEach((p, i) => {
              const q = ring[(i + 1) % ring.length]!;
              if (p[1] > py !== q[1] > py && px < p[0] + ((q[0] - p[0]) * (py - p[1])) / (q[1] - p[1])) odd = !odd;
            });
          }
          return odd;
        };
        const bears = items.flatMap((item) => (item.kind === 'area' && inside(item.rings) ? [item.fill] : []));
        expect(bears, `at ${px}, ${py}`).toEqual(hits.length > 0 ? [hits[0]!.fill] : []);
      }
      expect(looked).toBeGreaterThan(300);
    });
  }
});

describe('hidden lines by hand', () => {
  /** Straight from the front: the paper's x is the scene's x, its y is -z, nearness is -y. */
  const front: Projection = { view: viewFrom(0, 0), scale: 1, origin: [0, 0] };
  /** A square plate in front (y = -10) from (-5, -5) to (5, 5), with a square hole from (-2, -2) to (2, 2). */
  const ring = (r: number): Vec3[] => [[-r, -10, -r], [r, -10, -r], [r, -10, r], [-r, -10, r]];
  const plate = occluderOf([ring(5), [...ring(2)].reverse()].map((loop) => loop.map((p) => project(front, p))), [0, 0, 1])!;
  const spans = (p: Vec3, q: Vec3): number[][] => visibleSpans(project(front, p), project(front, q), [plate]).map((s) => [...s]);

  it('a line behind a plate with a hole is seen beside the plate and through the hole', () => {
    // from x = -10 to 10: seen to -5, from -2 to 2, from 5
    const found = spans([-10, 0, 0], [10, 0, 0]);
    expect(found.length).toBe(3);
    [[0, 0.25], [0.4, 0.6], [0.75, 1]].forEach(([a, b], i) => {
      expect(found[i]![0]).toBeCloseTo(a!, 9);
      expect(found[i]![1]).toBeCloseTo(b!, 9);
    });
  });

  it('a line in front of it, and its own rim, are seen whole', () => {
    expect(spans([-10, -20, 0], [10, -20, 0])).toEqual([[0, 1]]);
    expect(spans([-5, -10, -5], [5, -10, -5])).toEqual([[0, 1]]);
  });

  it('a line that pierces it is seen up to where it pierces', () => {
    // from (3, -20) in front to (4, 0) behind at z = 3: it passes y = -10 half-way
    const found = spans([3, -20, 3], [4, 0, 3]);
    expect(found.length).toBe(1);
    expect(found[0]![0]).toBe(0);
    expect(found[0]![1]).toBeCloseTo(0.5, 6);
  });

  it('nothing shines through the joint of two faces', () => {
    const half = (x0: number, x1: number): Occluder =>
      occluderOf([([[x0, -10, -5], [x1, -10, -5], [x1, -10, 5], [x0, -10, 5]] as Vec3[]).map((p) => project(front, p))], [0, 0, 1])!;
    expect(visibleSpans(project(front, [0, 0, -4]), project(front, [0, 0, 4]), [half(-5, 0), half(0, 5)])).toEqual([]);
  });

  it('a cube from a corner shows nine edges, three of them inside its outline', () => {
    const cube = extrude('cube', [vertex(0, 0), vertex(10, 0), vertex(10, 10), vertex(0, 10)], 0, 10, 'tool');
    const items = drawScene([cube], { view: viewFrom(40, 30), scale: 1, origin: [0, 0] });
    const count = (pen: string): number => items.flatMap((item) => (item.kind === 'strokes' && item.pen === pen ? item.lines : [])).length;
    expect([count('outline'), count('edge')]).toEqual([6, 3]);
  });
});
