import { type Rigid, type Vec2, type Vec3, apply, arcOf, compose, invert, left2, length3, sub2, sub3, unit2 } from '../../geometry/index.js';
import type { BendSide, Part } from '../../sheet/index.js';
import type { Brep, Edge } from '../step/brep.js';

/** The bend's frame at a side, as docs/kinematics.md builds it: origin line.from, u along the line, v its left normal. */
const sideFrame = (side: BendSide): Rigid => {
  const u = unit2(sub2(side.line.to, side.line.from));
  const v = left2(u);
  return { x: [u[0], u[1], 0], y: [v[0], v[1], 0], z: [0, 0, 1], o: [side.line.from[0], side.line.from[1], 0] };
};

/** A point of the bend's arc at share f, `off` mm out of the middle towards the A side, in the bend's frame at side 0. */
export const onArc = (part: Part, bend: Part['bends'][number], u: number, f: number, off: number): Vec3 => {
  const s = bend.direction === 'A' ? 1 : -1;
  const x = ((bend.bendAngle * Math.PI) / 180) * f;
  const r = bend.insideRadius + part.thickness / 2 - s * off;
  const middle = bend.insideRadius + part.thickness / 2;
  return [u, r * Math.sin(x), s * (middle - r * Math.cos(x))];
};

/** Where each plate stands, plate 0 at `root`, by the page of formulas: Rm = inside radius + t / 2 at the final angle. */
export const folded = (part: Part, root: Rigid): { readonly plates: readonly Rigid[]; readonly bends: readonly Rigid[] } => {
  const plates: (Rigid | undefined)[] = part.plates.map((_, i) => (i === 0 ? root : undefined));
  const bends: Rigid[] = [];
  for (const bend of part.bends) {
    const [near, far] = bend.sides;
    const s = bend.direction === 'A' ? 1 : -1;
    const x = (bend.bendAngle * Math.PI) / 180;
    const rm = bend.insideRadius + part.thickness / 2;
    const [c, sn] = [Math.cos(x), Math.sin(x)];
    const turn: Rigid = { x: [1, 0, 0], y: [0, c, s * sn], z: [0, -s * sn, c], o: [0, rm * sn, s * rm * (1 - c)] };
    const f0 = compose(plates[near.plate]!, sideFrame(near));
    bends.push(f0);
    plates[far.plate] = compose(compose(f0, turn), invert(sideFrame(far)));
  }
  return { plates: plates.map((p) => p!), bends };
};

const toSegment = (p: Vec3, a: Vec3, b: Vec3): number => {
  const [d, r] = [sub3(b, a), sub3(p, a)];
  const len2 = d[0] ** 2 + d[1] ** 2 + d[2] ** 2;
  const s = len2 === 0 ? 0 : Math.min(1, Math.max(0, (d[0] * r[0] + d[1] * r[1] + d[2] * r[2]) / len2));
  return length3([r[0] - s * d[0], r[1] - s * d[1], r[2] - s * d[2]]);
};

const toEdge = (p: Vec3, edge: Edge): number => {
  if (edge.curve.kind === 'circle') {
    const { centre, axis, radius } = edge.curve;
    const r = sub3(p, centre);
    const h = r[0] * axis[0] + r[1] * axis[1] + r[2] * axis[2];
    const flat = length3([r[0] - h * axis[0], r[1] - h * axis[1], r[2] - h * axis[2]]);
    return Math.hypot(h, flat - radius);
  }
  return Math.min(...edge.points.slice(1).map((q, i) => toSegment(p, edge.points[i]!, q)));
};

/** Least and greatest coordinates of each edge, with the whole circle of a round one. */
const boxes = new WeakMap<Brep, readonly (readonly [Vec3, Vec3])[]>();
const boxesOf = (brep: Brep): readonly (readonly [Vec3, Vec3])[] => {
  const known = boxes.get(brep);
  if (known) return known;
  const made = brep.edges.map(({ points, curve }) => {
    const round = curve.kind === 'circle' ? curve : undefined;
    const all = round ? [-1, 1].map((s): Vec3 => [round.centre[0] + s * round.radius, round.centre[1] + s * round.radius, round.centre[2] + s * round.radius]) : points;
    const least = [0, 1, 2].map((k) => Math.min(...all.map((p) => p[k]!))) as unknown as Vec3;
    const most = [0, 1, 2].map((k) => Math.max(...all.map((p) => p[k]!))) as unknown as Vec3;
    return [least, most] as const;
  });
  boxes.set(brep, made);
  return made;
};

/** mm from a point to the nearest edge of the solid (of a round edge: to its whole circle). */
export const toSolid = (brep: Brep, p: Vec3): number =>
  boxesOf(brep).reduce((least, [low, high], i) => {
    const away = Math.hypot(...[0, 1, 2].map((k) => Math.max(0, low[k]! - p[k]!, p[k]! - high[k]!)));
    return away < least ? Math.min(least, toEdge(p, brep.edges[i]!)) : least;
  }, Infinity);

/** The corners of all contours of a plate, and the middles of its arcs. */
export const platePoints = (plate: Part['plates'][number]): Vec2[] =>
  [plate.outline, ...plate.holes].flatMap((contour) =>
    contour.flatMap((v, i): Vec2[] => {
      if (v.bulge === 0) return [[v.x, v.y]];
      const w = contour[(i + 1) % contour.length]!;
      const { centre, radius } = arcOf([v.x, v.y], [w.x, w.y], v.bulge);
      const a = Math.atan2(v.y - centre[1], v.x - centre[0]) + 2 * Math.atan(v.bulge);
      return [[v.x, v.y], [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)]];
    }),
  );

/** The folded part's skins: every plate corner half a thickness out on both sides, and every zone corner on both skins. */
export const skinPoints = (part: Part, root: Rigid): { readonly of: string; readonly p: Vec3 }[] => {
  const at = folded(part, root);
  const half = part.thickness / 2;
  const plates = part.plates.flatMap((plate, i) =>
    platePoints(plate).flatMap(([x, y]) => [half, -half].map((z) => ({ of: `plate ${i}`, p: apply(at.plates[i]!, [x, y, z]) }))),
  );
  const zones = part.bends.flatMap((bend, i) =>
    bend.zone.flat().flatMap((v) => [half, -half].map((off) => ({ of: bend.id, p: apply(at.bends[i]!, onArc(part, bend, v.x, v.y, off)) }))),
  );
  return [...plates, ...zones];
};

/** Bend lines: bends whose axes lie in one line, with the same radius and angle, count as one. */
export const bendLines = (part: Part, root: Rigid): Part['bends'][number][][] => {
  const at = folded(part, root);
  const lines: { axis: readonly [Vec3, Vec3]; bends: Part['bends'][number][] }[] = [];
  part.bends.forEach((bend, i) => {
    const s = bend.direction === 'A' ? 1 : -1;
    const centre = s * (bend.insideRadius + part.thickness / 2);
    const axis = [apply(at.bends[i]!, [0, 0, centre]), apply(at.bends[i]!, [100, 0, centre])] as const;
    const known = lines.find(
      (l) => axis.every((p) => lineDistance(p, l.axis) < 0.01) && Math.abs(l.bends[0]!.bendAngle - bend.bendAngle) < 0.01 && Math.abs(l.bends[0]!.insideRadius - bend.insideRadius) < 0.01,
    );
    if (known) known.bends.push(bend);
    else lines.push({ axis, bends: [bend] });
  });
  return lines.map((l) => l.bends);
};

const lineDistance = (p: Vec3, [a, b]: readonly [Vec3, Vec3]): number => {
  const [d, r] = [sub3(b, a), sub3(p, a)];
  const s = (d[0] * r[0] + d[1] * r[1] + d[2] * r[2]) / (d[0] ** 2 + d[1] ** 2 + d[2] ** 2);
  return length3([r[0] - s * d[0], r[1] - s * d[1], r[2] - s * d[2]]);
};
