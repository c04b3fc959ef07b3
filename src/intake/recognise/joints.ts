import { type Vec3, add3, dot3, length3, scale3, sub3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH } from '../tolerances.js';
import type { Contact, Link, SlabSideRef } from './links.js';
import { type Patch, sameLine } from './patches.js';
import { mayVary, opposite } from './pairs.js';
import type { Slab } from './slabs.js';

/** Two slabs joined by a bend, before either is parent of the other. */
export interface Joint {
  readonly slabs: readonly [number, number];
  /** For each slab, the side on the inside of the bend. */
  readonly insides: readonly [0 | 1, 0 | 1];
  /** A point of the bend's axis. */
  readonly centre: Vec3;
  /** Unit vectors from the axis square to each slab: where the slab's tangent line lies. */
  readonly radials: readonly [Vec3, Vec3];
  /** Unit vectors in each slab, square to the axis, out of its metal into the bend. */
  readonly outs: readonly [Vec3, Vec3];
  /** Radians turned through. */
  readonly angle: number;
  readonly insideRadius: number;
  /**
   * Both skins drawn as coaxial cylinders; otherwise the slabs' edges have to be moved to the tangent lines (`radii` as
   * drawn on the inside and outside, 0 for a corner).
   */
  readonly drawn:
    | { readonly kind: 'round'; readonly inside: readonly Patch[]; readonly outside: readonly Patch[]; readonly contacts: readonly [readonly Contact[], readonly Contact[]] }
    | { readonly kind: 'sharp'; readonly radiusFrom: 'assumed' | 'inside' | 'outside'; readonly radii: readonly [number, number]; readonly edges: readonly [ReadonlySet<number>, ReadonlySet<number>] };
}

const refKey = (refs: readonly [SlabSideRef, SlabSideRef], flip: boolean): string =>
  refs.map((r) => `${r.slab}/${flip ? 1 - r.side : r.side}`).join('-');

const roundJoint = (links: readonly Link[], outside: readonly Link[]): Joint => {
  const first = links[0]!;
  const { of, contacts } = first.patch!;
  const [p, q] = [contacts[0][0]!, contacts[1][0]!];
  const turned = Math.atan2(dot3(q.radial, p.out), dot3(q.radial, p.radial));
  return {
    slabs: [first.skins[0].slab, first.skins[1].slab],
    insides: [first.skins[0].side, first.skins[1].side],
    centre: of.origin,
    radials: [p.radial, q.radial],
    outs: [p.out, q.out],
    angle: turned < 0 ? turned + 2 * Math.PI : turned,
    insideRadius: of.radius,
    drawn: {
      kind: 'round',
      inside: links.map((l) => l.patch!.of),
      outside: outside.map((l) => l.patch!.of),
      contacts: [links.flatMap((l) => l.patch!.contacts[0]), links.flatMap((l) => l.patch!.contacts[1])],
    },
  };
};

/** A bend whose skins are not both round about one axis: a radius is chosen and the planes stay where they are. */
const sharpJoint = (brep: Brep, slabs: readonly Slab[], inside: readonly Link[], outside: readonly Link[], thickness: number, assumed: number): Joint => {
  const { skins } = inside[0]!;
  const planes = skins.map((s) => slabs[s.slab]!.sides[s.side]) as [Slab['sides'][0], Slab['sides'][0]];
  const [np, nq] = [planes[0].normal, planes[1].normal];
  const cos = Math.min(1, Math.max(-1, dot3(np, nq)));
  const angle = Math.acos(cos);
  const drawnInside = inside.find((l) => l.patch)?.patch?.of.radius;
  const drawnOutside = outside.find((l) => l.patch)?.patch?.of.radius;
  const fromOutside = drawnOutside !== undefined && drawnOutside - thickness > SAME_LENGTH ? drawnOutside - thickness : undefined;
  const radius = drawnInside ?? fromOutside ?? assumed;
  const reference = brep.edges[inside[0]!.edges[0][0]!]!.from;
  const [dp, dq] = planes.map((s) => dot3(sub3(s.origin, reference), s.normal) + radius) as [number, number];
  // the axis lies `radius` inside both planes: a and b solve a + b cos = dp, a cos + b = dq
  const det = 1 - cos * cos;
  const centre = add3(reference, add3(scale3(np, (dp - dq * cos) / det), scale3(nq, (dq - dp * cos) / det)));
  const sin = Math.sin(angle);
  const out = (n: Vec3, m: Vec3): Vec3 => scale3(sub3(scale3(n, cos), m), 1 / sin);
  const all = [...inside, ...outside];
  return {
    slabs: [skins[0].slab, skins[1].slab],
    insides: [skins[0].side, skins[1].side],
    centre,
    radials: [scale3(np, -1), scale3(nq, -1)],
    outs: [out(np, nq), out(nq, np)],
    angle,
    insideRadius: radius,
    drawn: {
      kind: 'sharp',
      radiusFrom: drawnInside !== undefined ? 'inside' : fromOutside !== undefined ? 'outside' : 'assumed',
      radii: [drawnInside ?? 0, drawnOutside ?? 0],
      edges: [new Set(all.flatMap((l) => l.edges[0])), new Set(all.flatMap((l) => l.edges[1]))],
    },
  };
};

/**
 * Matches what joins two slabs on the inside with what joins them on the outside. A wall of the sheet has no inside
 * link and falls out here; so do fillets of a cut-out.
 */
export const findJoints = (brep: Brep, slabs: readonly Slab[], links: readonly Link[], thickness: number, assumedRadius: number): Joint[] => {
  const outsides = new Map<string, Link[]>();
  const insides = new Map<string, Link[]>();
  for (const link of links) {
    const [map, key] = link.inside ? [insides, refKey(link.skins, false)] : [outsides, refKey(link.skins, true)];
    map.set(key, [...(map.get(key) ?? []), link]);
  }
  return [...insides].flatMap(([key, inside]): Joint[] => {
    const outside = outsides.get(key);
    if (!outside) return [];
    const joints: Joint[] = [];
    const left = new Set(inside.filter((l) => l.patch));
    for (const link of left) {
      const own = link.patch!.of;
      const same = [...left].filter((l) => sameLine(own, l.patch!.of) && Math.abs(own.radius - l.patch!.of.radius) < SAME_LENGTH);
      const round = outside.filter(
        (o) => o.patch && sameLine(own, o.patch.of, mayVary(thickness)) && Math.abs(o.patch.of.radius - own.radius - thickness) <= Math.max(2 * SAME_LENGTH, mayVary(thickness)),
      );
      same.forEach((l) => left.delete(l));
      if (round.length > 0) joints.push(roundJoint(same, round));
    }
    const normals = inside[0]!.skins.map((s) => slabs[s.slab]!.sides[s.side].normal) as [Vec3, Vec3];
    const parallel = opposite(...normals) || length3(sub3(...normals)) < SAME_DIRECTION;
    if (joints.length > 0 || parallel) return joints;
    return [sharpJoint(brep, slabs, inside, outside, thickness, assumedRadius)];
  });
};

