import { ShapeUtils, Vector2 } from 'three';
import { type Rigid, type Vec2, type Vec3, add3, apply, compose, flatten, length2, left2, dot2, sub2, scale3, unit2, IDENTITY } from '../../geometry/index.js';
import { type Developed, type Formed, type Line, edgeAt, fold, foldedZone } from '../../sheet/index.js';

/** mm by which a rim may leave its chords on the screen. */
const CHORD = 0.15;
/** Degrees of bend to a facet. */
const FACET = 8;
/** mm: a corner this close to a bend's tangent line lies on it. */
const ON_LINE = 2e-3;

/** Triangles as corner coordinates, nine numbers each; `hatch` holds a pair for each corner, mm on the sheet. */
export interface Skin {
  readonly corners: number[];
  readonly hatch: number[];
}

/** The sheet, partly folded, ready for the screen: faces by side, rims, and every edge in one list of lines. */
export interface SheetMesh {
  readonly A: Skin;
  readonly B: Skin;
  readonly rim: Skin;
  /** What is lit up, both sides. */
  readonly lit: Skin;
  /** Pairs of ends; `soft` says of each pair whether it is a tangent line. */
  readonly edges: number[];
  readonly soft: boolean[];
  /** The middle of each lit bend: too narrow a strip to be seen by its faces alone. Pairs of ends. */
  readonly litLines: number[];
  /** Where each plate stands. */
  readonly poses: readonly Rigid[];
}

/** Plates by index and bends by id. */
export interface Lit {
  readonly plates: readonly number[];
  readonly bends: readonly string[];
  /** Straight edges of plates, each by a point of it in the plate's frame. */
  readonly edges?: readonly { readonly plate: number; readonly at: Vec2 }[];
}
export const NOTHING_LIT: Lit = { plates: [], bends: [] };

interface FlatPlate {
  readonly rings: readonly (readonly Vec2[])[];
  /** Of each ring's edge from point i on: does it lie on a bend's line? */
  readonly onBend: readonly (readonly boolean[])[];
  /** Of each ring's point: is it a corner as drawn, or between two chords of an arc? */
  readonly corner: readonly (readonly boolean[])[];
  readonly triangles: readonly (readonly number[])[];
  readonly points: readonly Vec2[];
}

/** A part's plates as triangles in their own frames: worked out once, posed as often as the sheet moves. */
export type FlatPlates = readonly FlatPlate[];

const on = (line: Line, p: Vec2): boolean => {
  const u = unit2(sub2(line.to, line.from));
  const d = sub2(p, line.from);
  const along = dot2(d, u);
  return Math.abs(dot2(d, left2(u))) <= ON_LINE && along >= -ON_LINE && along <= length2(sub2(line.to, line.from)) + ON_LINE;
};

export const flatPlates = (sheet: Developed): FlatPlates =>
  sheet.part.plates.map((plate, index) => {
    const lines = sheet.part.bends.flatMap(({ sides }) => sides.filter((side) => side.plate === index).map((side) => side.line));
    const contours = [plate.outline, ...plate.holes];
    const rings = contours.map((contour) => flatten(contour, CHORD));
    const corner = contours.map((contour, r) => {
      const drawn = new Set(contour.filter((v, i) => v.bulge === 0 || contour[(i + contour.length - 1) % contour.length]!.bulge === 0).map((v) => `${v.x} ${v.y}`));
      return rings[r]!.map(([x, y]) => drawn.has(`${x} ${y}`));
    });
    const onBend = rings.map((ring) => ring.map((p, i) => lines.some((line) => on(line, p) && on(line, ring[(i + 1) % ring.length]!))));
    const [outline, ...holes] = rings.map((ring) => ring.map(([x, y]) => new Vector2(x, y)));
    return { rings, onBend, corner, points: rings.flat(), triangles: ShapeUtils.triangulateShape(outline!, holes) };
  });

const skin = (): Skin => ({ corners: [], hatch: [] });

const triangle = (to: Skin, p: Vec3, q: Vec3, r: Vec3, hatch: readonly [Vec2, Vec2, Vec2]): void => {
  to.corners.push(...p, ...q, ...r);
  for (const h of hatch) to.hatch.push(...h);
};
const NO_HATCH: readonly [Vec2, Vec2, Vec2] = [[0, 0], [0, 0], [0, 0]];

const quad = (to: Skin, p: Vec3, q: Vec3, r: Vec3, s: Vec3, hatch: readonly [Vec2, Vec2, Vec2, Vec2] | null): void => {
  triangle(to, p, q, r, hatch ? [hatch[0], hatch[1], hatch[2]] : NO_HATCH);
  triangle(to, p, r, s, hatch ? [hatch[0], hatch[2], hatch[3]] : NO_HATCH);
};

const addPlate = (mesh: SheetMesh, plate: FlatPlate, pose: Rigid, half: number, lit: boolean): void => {
  const at = (p: Vec2, z: number): Vec3 => apply(pose, [p[0], p[1], z]);
  for (const [i, j, k] of plate.triangles as readonly (readonly [number, number, number])[]) {
    const [p, q, r] = [plate.points[i]!, plate.points[j]!, plate.points[k]!];
    triangle(lit ? mesh.lit : mesh.A, at(p, half), at(q, half), at(r, half), [p, q, r]);
    triangle(lit ? mesh.lit : mesh.B, at(p, -half), at(r, -half), at(q, -half), [p, r, q]);
  }
  plate.rings.forEach((ring, r) => ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const soft = plate.onBend[r]![i]!;
    if (!soft) quad(mesh.rim, at(p, -half), at(q, -half), at(q, half), at(p, half), null);
    for (const z of [half, -half]) mesh.edges.push(...at(p, z), ...at(q, z));
    mesh.soft.push(soft, soft);
    const before = plate.onBend[r]![(i + ring.length - 1) % ring.length]!;
    if (!plate.corner[r]![i]! || soft || before) return;
    mesh.edges.push(...at(p, -half), ...at(p, half));
    mesh.soft.push(false);
  }));
};

/** What stands on a plate, as a prism over its outline: its walls and its top. */
const addFormed = (mesh: SheetMesh, { side, outline, height }: Formed, pose: Rigid, half: number): void => {
  const ring = flatten(outline, CHORD);
  const [foot, top] = side === 'A' ? [half, half + height] : [-half, -half - height];
  const at = (p: Vec2, z: number): Vec3 => apply(pose, [p[0], p[1], z]);
  for (const [i, j, k] of ShapeUtils.triangulateShape(ring.map(([x, y]) => new Vector2(x, y)), []) as [number, number, number][]) {
    triangle(mesh.rim, at(ring[i]!, top), at(ring[j]!, top), at(ring[k]!, top), NO_HATCH);
  }
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    quad(mesh.rim, at(p, foot), at(q, foot), at(q, top), at(p, top), null);
    for (const z of [foot, top]) mesh.edges.push(...at(p, z), ...at(q, z));
    mesh.soft.push(false, false);
  });
};

const addZone = (mesh: SheetMesh, sheet: Developed, bend: number, angle: number, pose: Rigid, lit: boolean): void => {
  const allowance = sheet.allowances[bend]!;
  const quads = foldedZone(sheet, bend, angle, 2 * Math.max(1, Math.ceil(angle / (2 * FACET))));
  for (const { A, B, from, to, f } of quads) {
    if (lit && f[1] === 0.5) {
      const middle = (i: 2 | 3): Vec3 => apply(pose, scale3(add3(A[i], B[i]), 0.5));
      mesh.litLines.push(...middle(2), ...middle(3));
    }
    const [a, b] = [A, B].map((four) => four.map((p) => apply(pose, p))) as [Vec3[], Vec3[]];
    const flat: readonly [Vec2, Vec2, Vec2, Vec2] = [[from[0], f[0] * allowance], [to[0], f[0] * allowance], [to[1], f[1] * allowance], [from[1], f[1] * allowance]];
    quad(lit ? mesh.lit : mesh.A, a[0]!, a[1]!, a[2]!, a[3]!, flat);
    quad(lit ? mesh.lit : mesh.B, b[3]!, b[2]!, b[1]!, b[0]!, [flat[3], flat[2], flat[1], flat[0]]);
    quad(mesh.rim, b[1]!, b[2]!, a[2]!, a[1]!, null);
    quad(mesh.rim, b[3]!, b[0]!, a[0]!, a[3]!, null);
    for (const side of [a, b]) mesh.edges.push(...side[1]!, ...side[2]!, ...side[3]!, ...side[0]!);
    mesh.soft.push(false, false, false, false);
  }
};

/** The sheet with bend i turned through `angles[i]` degrees, `root`'s plate posed by `pose`. */
export const sheetMesh = (
  sheet: Developed, plates: FlatPlates, angles: readonly number[], root: number, pose: Rigid = IDENTITY, lit: Lit = NOTHING_LIT,
): SheetMesh => {
  const poses = fold(sheet, angles, root).poses.map((own) => compose(pose, own));
  const mesh: SheetMesh = { A: skin(), B: skin(), rim: skin(), lit: skin(), edges: [], soft: [], litLines: [], poses };
  const half = sheet.part.thickness / 2;
  plates.forEach((plate, p) => addPlate(mesh, plate, poses[p]!, half, lit.plates.includes(p)));
  for (const it of sheet.part.formed ?? []) if (it.height > 0) addFormed(mesh, it, poses[it.plate]!, half);
  for (const { plate, at } of lit.edges ?? []) {
    const { outline } = sheet.part.plates[plate]!;
    const i = edgeAt(sheet.part, plate, at);
    const ends = [outline[i]!, outline[(i + 1) % outline.length]!];
    mesh.litLines.push(...ends.flatMap(({ x, y }) => [...apply(poses[plate]!, [x, y, 0])]));
  }
  sheet.part.bends.forEach((bend, b) => addZone(mesh, sheet, b, angles[b]!, poses[bend.sides[0].plate]!, lit.bends.includes(bend.id)));
  return mesh;
};
