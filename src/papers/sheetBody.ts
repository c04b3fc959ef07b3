import {
  type Rigid, type Vec2, type Vec3, add3, apply, cross3, dot2, dot3, left2, length2, scale3, sub2, sub3, turn, unit2, unit3,
} from '../geometry/index.js';
import { type Developed, type FoldedStrip, type Line, fold, foldedZone } from '../sheet/index.js';
import { type Body, type Face, type Mark, bodyOf, edgeKey } from './body.js';
import { flatRing } from './flatRing.js';
import type { PenName } from './pens.js';
import { standingFaces } from './standingFaces.js';

/** mm by which a hole's rim may leave its chords in a picture. */
const CHORD = 0.05;
/** Degrees of bend to a facet. */
const FACET = 14;
/** mm: a corner this close to a bend's tangent line lies on it; readers place them to a micrometre. */
const ON_LINE = 2e-3;

/** One piece of metal with matching corners on both faces. `arc` numbers the arc of each rim piece, -1 when straight. */
interface Skin {
  readonly A: readonly (readonly Vec3[])[];
  readonly B: readonly (readonly Vec3[])[];
  readonly arcs: readonly (readonly string[])[];
  readonly surface: string;
  readonly curved: boolean;
  readonly hatch: Vec3;
  readonly plate?: number;
}

const STRAIGHT = '';

interface Rim {
  readonly points: Vec2[];
  readonly arcs: string[];
}

/** Where a point lies along a bend's line, or null when it lies off it. */
const alongLine = (line: Line, p: Vec2): number | null => {
  const u = unit2(sub2(line.to, line.from));
  const d = sub2(p, line.from);
  return Math.abs(dot2(d, left2(u))) <= ON_LINE ? dot2(d, u) : null;
};

/** Adds the places `us` on the bend's line to the rim as corners. */
const splitRim = (rim: Rim, line: Line, us: readonly number[]): Rim => {
  const points: Vec2[] = [];
  const arcs: string[] = [];
  const u = unit2(sub2(line.to, line.from));
  rim.points.forEach((p, i) => {
    const q = rim.points[(i + 1) % rim.points.length]!;
    points.push(p);
    arcs.push(rim.arcs[i]!);
    const [a, b] = [alongLine(line, p), alongLine(line, q)];
    if (rim.arcs[i] !== STRAIGHT || a === null || b === null) return;
    const between = us.filter((s) => (s - a) * (s - b) < 0 && Math.abs(s - a) > ON_LINE && Math.abs(s - b) > ON_LINE);
    between.sort((s, t) => (a < b ? s - t : t - s));
    for (const s of between) {
      points.push([line.from[0] + u[0] * s, line.from[1] + u[1] * s]);
      arcs.push(STRAIGHT);
    }
  });
  return { points, arcs };
};

/** The edge from p to q of a strip (u from a to b) with the places `us` between added. */
const splitEdge = (p: Vec3, q: Vec3, a: number, b: number, us: readonly number[]): Vec3[] => {
  const between = us.filter((s) => (s - a) * (s - b) < 0 && Math.abs(s - a) > ON_LINE && Math.abs(s - b) > ON_LINE);
  between.sort((s, t) => (a < b ? s - t : t - s));
  return [p, ...between.map((s) => add3(p, scale3(sub3(q, p), (s - a) / (b - a))))];
};

const levelName = (bend: number, f: number): string => `${bend} at ${f}`;

/**
 * All places along each level of each bend where some piece has a corner, so that pieces which meet there share
 * corners: strips with strips, and strips with the plates' rims.
 */
const cornersByLevel = (sheet: Developed, strips: readonly (readonly FoldedStrip[])[], rims: readonly (readonly Rim[])[]) => {
  const corners = new Map<string, number[]>();
  const add = (key: string, ...us: readonly number[]): void => {
    corners.set(key, [...(corners.get(key) ?? []), ...us]);
  };
  sheet.part.bends.forEach((bend, b) => {
    for (const strip of strips[b]!) {
      for (const end of [0, 1] as const) add(levelName(b, strip.f[end]), strip.from[end], strip.to[end]);
    }
    for (const end of [0, 1] as const) {
      const side = bend.sides[end];
      for (const rim of rims[side.plate]!) {
        for (const p of rim.points) {
          const at = alongLine(side.line, p);
          if (at !== null) add(levelName(b, end), at);
        }
      }
    }
  });
  return corners;
};

const plateSkins = (sheet: Developed, rims: readonly (readonly Rim[])[], poses: readonly Rigid[]): Skin[] => {
  const half = sheet.part.thickness / 2;
  return rims.map((loops, plate) => {
    const at = (z: number) => loops.map((rim) => rim.points.map((p): Vec3 => apply(poses[plate]!, [p[0], p[1], z])));
    return {
      A: at(half),
      B: at(-half),
      arcs: loops.map((rim) => rim.arcs),
      surface: `plate ${plate}`,
      curved: false,
      hatch: turn(poses[plate]!, [Math.SQRT1_2, Math.SQRT1_2, 0]),
      plate,
    };
  });
};

const zoneSkins = (
  bend: number, strips: readonly FoldedStrip[], pose: Rigid, angle: number, corners: ReadonlyMap<string, readonly number[]>,
): Skin[] =>
  strips.map((strip) => {
    const [low, high] = strip.f.map((f) => corners.get(levelName(bend, f)) ?? []) as [readonly number[], readonly number[]];
    const loop = ([p, q, r, s]: FoldedStrip['A']): Vec3[] =>
      [
        ...splitEdge(p, q, strip.from[0], strip.to[0], low),
        q,
        ...splitEdge(r, s, strip.to[1], strip.from[1], high),
        s,
      ].map((point) => apply(pose, point));
    const A = loop(strip.A);
    const across = sub3(apply(pose, strip.A[3]), apply(pose, strip.A[0]));
    const along = sub3(apply(pose, strip.A[1]), apply(pose, strip.A[0]));
    return {
      A: [A],
      B: [loop(strip.B)],
      arcs: [A.map(() => `bend ${bend} cut`)],
      surface: `bend ${bend}`,
      curved: angle !== 0,
      hatch: unit3(add3(unit3(along), unit3(across))),
    };
  });

const normalOf = (loop: readonly Vec3[]): Vec3 => {
  // Newell: sums over all corners, so no three of them need be far from one line
  let n: Vec3 = [0, 0, 0];
  loop.forEach((p, i) => {
    n = add3(n, cross3(sub3(p, loop[0]!), sub3(loop[(i + 1) % loop.length]!, loop[0]!)));
  });
  return unit3(n);
};

/** mm: four corners further from one plane than this are drawn as two triangles. */
const PLANE = 1e-7;

const rimFaces = (corners: readonly [Vec3, Vec3, Vec3, Vec3], surface: string): Face[] => {
  const normal = normalOf(corners);
  const flat = corners.every((p) => Math.abs(dot3(sub3(p, corners[0]), normal)) < PLANE);
  const [p, q, r, s] = corners;
  const loops = flat ? [corners] : [[p, q, r], [p, r, s]];
  return loops.map((loop) => ({ loops: [loop], normal: normalOf(loop), surface, curved: surface !== STRAIGHT }));
};

const facesOf = (skins: readonly Skin[]): Face[] => {
  const met = new Map<string, number>();
  const visit = (look: (p: Vec3, q: Vec3, skin: Skin, loop: number, i: number) => void): void => {
    for (const skin of skins) {
      skin.A.forEach((ring, loop) =>
        ring.forEach((p, i) => look(p, ring[(i + 1) % ring.length]!, skin, loop, i)),
      );
    }
  };
  visit((p, q) => met.set(edgeKey(p, q), (met.get(edgeKey(p, q)) ?? 0) + 1));
  const faces: Face[] = skins.flatMap(({ A, B, surface, curved, hatch, plate }) => [
    {
      loops: A,
      normal: normalOf(A[0]!),
      surface: `${surface} A`,
      curved,
      ...(plate === undefined ? {} : { letter: { side: 'A' as const, plate } }),
    },
    {
      loops: B.map((ring) => [...ring].reverse()),
      normal: scale3(normalOf(B[0]!), -1),
      surface: `${surface} B`,
      curved,
      hatch,
      ...(plate === undefined ? {} : { letter: { side: 'B' as const, plate } }),
    },
  ]);
  visit((p, q, skin, loop, i) => {
    if (met.get(edgeKey(p, q)) !== 1) return;
    const ring = skin.B[loop]!;
    faces.push(...rimFaces([ring[i]!, ring[(i + 1) % ring.length]!, q, p], skin.arcs[loop]![i]!));
  });
  return faces;
};

/** The middle line of a flat bend on both faces, where there is metal. */
const bendLine = (strips: readonly FoldedStrip[], pose: Rigid, pen: PenName): Mark[] =>
  strips
    .filter((strip) => strip.f[1] === 0.5)
    .flatMap(({ A, B }) => {
      const up = unit3(sub3(A[2], B[2]));
      return [
        { from: apply(pose, A[2]), to: apply(pose, A[3]), normal: turn(pose, up), pen },
        { from: apply(pose, B[2]), to: apply(pose, B[3]), normal: turn(pose, scale3(up, -1)), pen },
      ];
    });

/** Two corners of one rim in the same place make no edge. */
const tidy = (points: readonly Vec2[], arcs: readonly string[]): Rim => {
  const kept = points.map((p, i) => length2(sub2(points[(i + 1) % points.length]!, p)) > 1e-6);
  return { points: points.filter((_, i) => kept[i]), arcs: arcs.filter((_, i) => kept[i]) };
};

/**
 * The sheet, partly folded, with what stands on its plates, as a closed body in the frame of plate `root`: bend i turned through `angles[i]` degrees.
 * The B side is hatched; flat bends bear their line, those of `running` in the accent.
 */
export const sheetBody = (sheet: Developed, angles: readonly number[], root = 0, running: readonly number[] = []): Body => {
  const { part } = sheet;
  const { poses } = fold(sheet, angles, root);
  const strips = part.bends.map((_, b) => foldedZone(sheet, b, angles[b]!, 2 * Math.ceil(Math.max(angles[b]!, 1) / (2 * FACET))));
  const bare = part.plates.map((plate, p) =>
    [plate.outline, ...plate.holes].map((contour, l): Rim => {
      const ring = flatRing(contour, CHORD);
      return tidy(ring.points, ring.arc.map((k) => (k === -1 ? STRAIGHT : `plate ${p} rim ${l} arc ${k}`)));
    }),
  );
  const corners = cornersByLevel(sheet, strips, bare);
  const rims = bare.map((loops, p) =>
    loops.map((rim) =>
      part.bends.reduce(
        (split, bend, b) =>
          bend.sides.reduce(
            (it, side, end) => (side.plate === p ? splitRim(it, side.line, corners.get(levelName(b, end)) ?? []) : it),
            split,
          ),
        rim,
      ),
    ),
  );
  const zones = part.bends.flatMap((bend, b) => zoneSkins(b, strips[b]!, poses[bend.sides[0].plate]!, angles[b]!, corners));
  const marks = part.bends.flatMap((bend, b) =>
    angles[b] === 0 ? bendLine(strips[b]!, poses[bend.sides[0].plate]!, running.includes(b) ? 'accent' : 'centre') : [],
  );
  return bodyOf('sheet', [...facesOf([...plateSkins(sheet, rims, poses), ...zones]), ...standingFaces(sheet, poses)], true, marks);
};
