import { type Vec3, cross3, dot3, sub3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH } from '../tolerances.js';
import { axesAcross } from './facePlane.js';
import type { Joint } from './joints.js';
import { type Run, boundaryLoops } from './loops.js';
import { type Box, type Region, boxOf, boxesOverlap, overlapArea } from './region.js';
import type { Slab } from './slabs.js';

/** What is formed into a slab, or stands on it: the loops in its skins where it begins, and the faces between and over them. */
export interface FormedFound {
  readonly slab: number;
  /** The slab's side that it stands out of (or that it is wider on, or sunk into). */
  readonly side: 0 | 1;
  readonly kind: 'raised' | 'opened' | 'boss' | 'recess';
  /** mm out of that side: 0 for a recess. */
  readonly height: number;
  /** mm into that side: 0 for what stands out. */
  readonly depth: number;
  /** Edges of its loops in the skins: those loops are no cut-outs. */
  readonly edges: ReadonlySet<number>;
  /** Loops that go through its top: the holes that the sheet keeps there. */
  readonly through: readonly (readonly Run[])[];
}

export interface Formed {
  readonly found: readonly FormedFound[];
  /** The joints that are bends: those within what is formed are not. */
  readonly joints: readonly Joint[];
}

type Users = readonly (readonly number[])[];

interface Loop {
  readonly side: 0 | 1;
  readonly runs: readonly Run[];
  readonly region: Region;
}

/** mm2 below which two loops only touch. */
const TOUCH = 0.01;

const isOutline = (loop: readonly Run[], normal: Vec3): boolean => {
  const points = loop.flatMap((run) => run.points.slice(0, -1));
  return points.reduce((sum, p, i) => sum + dot3(cross3(sub3(p, points[0]!), sub3(points[(i + 1) % points.length]!, points[0]!)), normal), 0) > 0;
};

const within = (a: Box, b: Box): boolean => a[0] > b[0] && a[1] > b[1] && a[2] < b[2] && a[3] < b[3];

/** The faces that hang together with the walls of some loops without crossing the slab's skins. */
const behind = (brep: Brep, users: Users, skins: ReadonlySet<number>, loops: readonly Loop[]): Set<number> => {
  const faces = new Set(loops.flatMap(({ runs }) => runs.flatMap((run) => users[run.edge]!.filter((f) => !skins.has(f)))));
  for (const face of faces) {
    for (const use of brep.faces[face]!.loops.flat()) for (const next of users[use.edge]!) if (!skins.has(next)) faces.add(next);
  }
  return faces;
};

/** How far faces reach along a direction: by their edges, and by the crown of a dome, which has none. */
const reachOf = (brep: Brep, faces: ReadonlySet<number>, along: Vec3): readonly [number, number] => {
  let [low, high] = [Infinity, -Infinity];
  const take = (h: number): void => {
    [low, high] = [Math.min(low, h), Math.max(high, h)];
  };
  for (const index of faces) {
    const { surface, loops, area } = brep.faces[index]!;
    const heights = loops.flat().flatMap((use) => brep.edges[use.edge]!.points.map((p) => dot3(p, along)));
    heights.forEach(take);
    if (surface.kind !== 'other' || surface.sphere === undefined || heights.length === 0) continue;
    // a cap of area A on a ball of radius R is A / (2 pi R) high; it lies on the side of its rim where the ball goes on that far
    const { centre, radius } = surface.sphere;
    const [least, most, middle] = [Math.min(...heights), Math.max(...heights), dot3(centre, along)];
    const cap = area / (2 * Math.PI * radius);
    if (most - least > SAME_LENGTH) continue;
    for (const crown of [middle + radius, middle - radius]) if (Math.abs(Math.abs(crown - least) - cap) < 0.05 * cap + SAME_LENGTH) take(crown);
  }
  return [low, high];
};

/**
 * Loops gathered that belong to one hole or feature: those with a wall in common (a plain hole), then those in different skins
 * that lie over each other.
 */
const gathered = (users: Users, skins: ReadonlySet<number>, loops: readonly Loop[]): Loop[][] => {
  const byWall = new Map<number, Loop[]>();
  const groups = new Set<Loop[]>();
  for (const loop of loops) {
    const walls = loop.runs.flatMap((run) => users[run.edge]!.filter((f) => !skins.has(f)));
    const known = [...new Set(walls.map((w) => byWall.get(w)).filter((group) => group !== undefined))];
    const group = [loop, ...known.flat()];
    known.forEach((old) => groups.delete(old));
    groups.add(group);
    for (const wall of walls) byWall.set(wall, group);
    for (const [wall, old] of byWall) if (known.includes(old)) byWall.set(wall, group);
  }
  const whole = [...groups].filter((group) => new Set(group.map(({ side }) => side)).size === 2);
  const left = [...groups].filter((group) => !whole.includes(group)).map((group) => ({ group, box: boxOf(group.flatMap(({ region }) => region)) }));
  const joined: Loop[][] = [];
  while (left.length > 0) {
    const first = left.shift()!;
    const members = [first];
    for (const member of members) {
      for (let i = left.length - 1; i >= 0; i--) {
        const other = left[i]!;
        if (!boxesOverlap(member.box, other.box) || !member.group.some((a) => other.group.some((b) => overlapArea(a.region, b.region) > TOUCH))) continue;
        members.push(...left.splice(i, 1));
      }
    }
    joined.push(members.flatMap(({ group }) => group));
  }
  return [...whole, ...joined];
};

/** The slabs that lie wholly among some faces. */
const slabsAmong = (slabs: readonly Slab[], faces: ReadonlySet<number>): Set<number> =>
  new Set(slabs.flatMap(({ sides }, i) => (sides.every((side) => side.faces.every((f) => faces.has(f))) ? [i] : [])));

/** Whether the joints between a slab and those behind it close a ring: metal that hangs on more than one bend is formed, not bent. */
const closesRing = (joints: readonly Joint[], slab: number, inner: ReadonlySet<number>): boolean => {
  const own = joints.filter(({ slabs: [a, b] }) => [a, b].every((s) => s === slab || inner.has(s)));
  const reached = new Set(own.flatMap((j) => j.slabs));
  return reached.size > 0 && own.length > reached.size - 1;
};

/** Holes through faces that lie level with the slab: the bore of a collar, a hole in a raised flat. */
const throughLoops = (brep: Brep, faces: ReadonlySet<number>, normal: Vec3): Run[][] => {
  const level = [...faces].filter((f) => {
    const { surface } = brep.faces[f]!;
    return surface.kind === 'plane' && 1 - Math.abs(dot3(surface.normal, normal)) < SAME_DIRECTION;
  });
  return level.flatMap((f) => {
    const { surface } = brep.faces[f]!;
    return surface.kind === 'plane' ? boundaryLoops(brep, [f]).filter((loop) => !isOutline(loop, surface.normal)) : [];
  });
};

/**
 * What is no flat metal within the outlines of the slabs: pressed out of them, standing on them, or sunk into one face. A flange
 * bent out of a cut-out hangs on one bend and is none of these.
 */
export const findFormed = (brep: Brep, users: Users, slabs: readonly Slab[], joints: readonly Joint[], thickness: number): Formed => {
  const found: FormedFound[] = [];
  const dropped = new Set<Joint>();
  slabs.forEach((slab, index) => {
    const skins = new Set(slab.sides.flatMap((side) => side.faces));
    const up = slab.sides[0].normal;
    const axes = axesAcross(up);
    const loops = slab.sides.flatMap(({ faces, normal }, side) =>
      boundaryLoops(brep, faces).map((runs) => {
        const ring = runs.flatMap((run) => run.points.slice(0, -1).map((p) => [dot3(p, axes[0]), dot3(p, axes[1])] as const));
        return { side: side as 0 | 1, runs, region: [ring], outline: isOutline(runs, normal) };
      }),
    );
    const inner: readonly Loop[] = loops.filter(({ outline }) => !outline);
    // the bottom of a blind bore in a stud is an outline too, an island within the stud's foot: no rim of the plate
    const island = (loop: Loop): boolean => inner.some((hole) => hole.side === loop.side && within(boxOf(loop.region), boxOf(hole.region)));
    const outer = new Set(loops.filter((loop) => loop.outline && !island(loop)).flatMap(({ runs }) => runs.map((run) => run.edge)));
    const [top, bottom] = slab.sides.map(({ origin }) => dot3(origin, up)) as [number, number];
    for (const group of gathered(users, skins, inner)) {
      const faces = behind(brep, users, skins, group);
      if ([...faces].some((f) => brep.faces[f]!.loops.flat().some((use) => outer.has(use.edge)))) continue;
      const among = slabsAmong(slabs, faces);
      const ring = closesRing(joints, index, among);
      const bent = joints.some(({ slabs: [a, b] }) => (a === index && among.has(b)) || (b === index && among.has(a)));
      if (bent && !ring) continue;
      const [low, high] = reachOf(brep, faces, up);
      const [over, under] = [high - top, bottom - low];
      const sides = new Set(group.map(({ side }) => side));
      const edges = new Set(group.flatMap(({ runs }) => runs.map((run) => run.edge)));
      if (Math.max(over, under) > SAME_LENGTH) {
        const side = over >= under ? 0 : 1;
        for (const joint of joints) if (joint.slabs.some((s) => among.has(s))) dropped.add(joint);
        // one piece of boundary from skin to skin is open somewhere; two, one over each skin, are closed
        const open = sides.size === 2 && [...behind(brep, users, skins, group.filter((l) => l.side === 0))].some((f) => behind(brep, users, skins, group.filter((l) => l.side === 1)).has(f));
        const kind = sides.size === 1 ? 'boss' : open ? 'opened' : 'raised';
        // a bore in what stands on one face alone, or is closed, does not go through the sheet
        found.push({ slab: index, side, kind, height: Math.max(over, under), depth: 0, edges, through: kind === 'opened' ? throughLoops(brep, faces, up) : [] });
      } else if (sides.size === 1) {
        const side = group[0]!.side;
        const depth = side === 0 ? top - low : high - bottom;
        if (depth < thickness - SAME_LENGTH) found.push({ slab: index, side, kind: 'recess', height: 0, depth, edges, through: [] });
      }
    }
  });
  return { found, joints: joints.filter((joint) => !dropped.has(joint)) };
};
