import { Clipper, FillRule, type PathsD } from 'clipper2-ts';
import type { Vec2 } from '../geometry/index.js';
import { type Occluder, nearness } from './occluder.js';
import { IN_FRONT } from './visibleSpans.js';

/** Decimals of a mm of paper that the polygon library keeps: 1e-5 mm, a hundred times finer than the SVG's numbers. */
const DECIMALS = 5;
/** mm2 of paper: smaller islands are rounding along shared edges. */
const NO_AREA = 1e-4;

const paths = (rings: readonly (readonly Vec2[])[]): PathsD =>
  rings.map((ring) => ring.map(([x, y]) => ({ x, y })));

/** The ring's part where a x + b y + c > 0; joined along the cut line, which keeps areas right for non-zero filling. */
const half = (ring: readonly Vec2[], a: number, b: number, c: number): Vec2[] => {
  const kept: Vec2[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const [hp, hq] = [a * p[0] + b * p[1] + c, a * q[0] + b * q[1] + c];
    if (hp > 0) kept.push(p);
    if (hp > 0 !== hq > 0) {
      const s = hp / (hp - hq);
      kept.push([p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s]);
    }
  });
  return kept;
};

/** Rings run the same way for outlines, the other way for holes, as non-zero filling wants it. */
const oriented = (rings: readonly (readonly Vec2[])[]): Vec2[][] =>
  rings.map((ring, i) => {
    let twice = 0;
    ring.forEach((p, k) => {
      const q = ring[(k + 1) % ring.length]!;
      twice += p[0] * q[1] - p[1] * q[0];
    });
    return twice > 0 === (i === 0) ? [...ring] : [...ring].reverse();
  });

/** The part of `face`, as rings, over which no face of `others` is nearer to the eye. */
export const visibleRegion = (face: Occluder, others: readonly Occluder[]): Vec2[][] => {
  const before: Vec2[][] = [];
  for (const other of others) {
    if (other === face) continue;
    const [f, o] = [face.box, other.box];
    if (o[0] > f[2] || o[2] < f[0] || o[1] > f[3] || o[3] < f[1]) continue;
    const [a, b, c] = [other.a - face.a, other.b - face.b, other.c - face.c - IN_FRONT];
    const reach = face.box;
    const anywhere = [reach[0], reach[2]].some((x) =>
      [reach[1], reach[3]].some((y) => nearness(other, x, y) > nearness(face, x, y) + IN_FRONT),
    );
    if (!anywhere) continue;
    before.push(...oriented(other.rings).map((ring) => half(ring, a, b, c)).filter((ring) => ring.length >= 3));
  }
  const subject = paths(oriented(face.rings));
  const left =
    before.length === 0 ? subject : Clipper.differenceD(subject, paths(before), FillRule.NonZero, DECIMALS);
  return rings(left);
};

/** One area from several. */
export const joinRegions = (regions: readonly (readonly (readonly Vec2[])[])[]): Vec2[][] =>
  rings(Clipper.unionD(paths(regions.flat()), [], FillRule.NonZero, DECIMALS));

const rings = (from: PathsD): Vec2[][] =>
  from.filter((path) => Math.abs(Clipper.areaD(path)) > NO_AREA).map((path) => path.map(({ x, y }): Vec2 => [x, y]));
