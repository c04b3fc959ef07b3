import { type Vec3, cross3, dot3, length3, scale3, sub3, unit3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, TANGENT } from '../tolerances.js';
import { runOf } from './loops.js';
import { type Patch, fromLine } from './patches.js';
import type { Slab } from './slabs.js';

/** One side of one slab. */
export interface SlabSideRef {
  readonly slab: number;
  readonly side: 0 | 1;
}

/** A straight edge along which a slab's skin touches a cylinder patch tangentially. */
export interface Contact extends SlabSideRef {
  readonly edge: number;
  /** Unit vector from the axis to the edge. */
  readonly radial: Vec3;
  /** Unit vector in the skin, square to the edge, out of the skin's metal. */
  readonly out: Vec3;
  readonly ends: readonly [Vec3, Vec3];
}

/** Two skins of different slabs (the lower number first) on the same side of the sheet, joined over an edge or over a cylinder patch. */
export interface Link {
  readonly skins: readonly [SlabSideRef, SlabSideRef];
  /** The inside of the bend: the metal fills more than half of the space about it. */
  readonly inside: boolean;
  /** The edges where each skin ends (the same edges for a sharp corner). */
  readonly edges: readonly [readonly number[], readonly number[]];
  readonly patch?: { readonly of: Patch; readonly contacts: readonly [readonly Contact[], readonly Contact[]] };
}

/** Which slab and side each face is part of. */
export const slabByFace = (slabs: readonly Slab[]): Map<number, SlabSideRef> =>
  new Map(
    slabs.flatMap((slab, index) =>
      ([0, 1] as const).flatMap((side) => slab.sides[side].faces.map((face) => [face, { slab: index, side }] as const)),
    ),
  );

/** The tangential contacts of a patch with skins. */
export const contactsOf = (
  brep: Brep,
  users: readonly (readonly number[])[],
  bySkin: ReadonlyMap<number, SlabSideRef>,
  slabs: readonly Slab[],
  patch: Patch,
): Contact[] => {
  const edges = new Set(patch.faces.flatMap((f) => brep.faces[f]!.loops.flat().map((use) => use.edge)));
  return [...edges].flatMap((edge) => {
    const face = users[edge]!.find((f) => bySkin.has(f));
    if (face === undefined || brep.edges[edge]!.curve.kind !== 'line') return [];
    const ref = bySkin.get(face)!;
    const use = brep.faces[face]!.loops.flat().find((u) => u.edge === edge)!;
    const run = runOf(brep, use);
    const along = unit3(sub3(run.to, run.from));
    const radial = unit3(fromLine(run.from, patch.origin, patch.axis));
    const normal = slabs[ref.slab]!.sides[ref.side].normal;
    const tangent = length3(sub3(radial, scale3(normal, patch.hollow ? -1 : 1))) < TANGENT;
    if (!tangent || length3(cross3(along, patch.axis)) > SAME_DIRECTION) return [];
    // metal lies to the left of the run seen from outside: out is to the right, along x normal
    return [{ ...ref, edge, radial, out: cross3(along, normal), ends: [run.from, run.to] as const }];
  });
};

const sameSkin = (a: SlabSideRef, b: SlabSideRef): boolean => a.slab === b.slab && a.side === b.side;

/** The links that a patch makes: every skin at its one end with every skin at its other end. */
const patchLinks = (patch: Patch, contacts: readonly Contact[]): Link[] => {
  const ends: Contact[][] = [];
  for (const contact of contacts) {
    const end = ends.find(([first]) => length3(sub3(first!.radial, contact.radial)) < TANGENT);
    if (end) end.push(contact);
    else ends.push([contact]);
  }
  if (ends.length !== 2) return [];
  const skinsAt = (end: readonly Contact[]): SlabSideRef[] =>
    end.filter((c, i) => end.findIndex((d) => sameSkin(c, d)) === i).map(({ slab, side }) => ({ slab, side }));
  return skinsAt(ends[0]!).flatMap((one) =>
    skinsAt(ends[1]!).flatMap((other): Link[] => {
      if (one.slab === other.slab) return [];
      const [p, q] = one.slab < other.slab ? [one, other] : [other, one];
      const of = (skin: SlabSideRef): Contact[] => contacts.filter((c) => sameSkin(c, skin));
      const at = [of(p), of(q)] as const;
      return [
        {
          skins: [p, q],
          inside: patch.hollow,
          edges: [at[0].map((c) => c.edge), at[1].map((c) => c.edge)],
          patch: { of: patch, contacts: at },
        },
      ];
    }),
  );
};

/** Two skins that meet in straight edges: all in one line, since two planes meet in one. */
const edgeLinks = (brep: Brep, users: readonly (readonly number[])[], bySkin: ReadonlyMap<number, SlabSideRef>, slabs: readonly Slab[]): Link[] => {
  const links: { skins: [SlabSideRef, SlabSideRef]; inside: boolean; edges: number[] }[] = [];
  brep.edges.forEach((edge, index) => {
    const faces = users[index]!;
    if (edge.curve.kind !== 'line' || faces.length !== 2) return;
    const refs = faces.flatMap((f) => bySkin.get(f) ?? []);
    if (refs.length !== 2 || refs[0]!.slab === refs[1]!.slab) return;
    const first = refs[0]!.slab < refs[1]!.slab ? 0 : 1;
    const [p, q] = [refs[first]!, refs[1 - first]!];
    const run = runOf(brep, brep.faces[faces[first]!]!.loops.flat().find((u) => u.edge === index)!);
    const [np, nq] = [slabs[p.slab]!.sides[p.side].normal, slabs[q.slab]!.sides[q.side].normal];
    const into = cross3(np, unit3(sub3(run.to, run.from)));
    const inside = dot3(nq, into) > 0;
    const known = links.find((l) => l.inside === inside && sameSkin(l.skins[0], p) && sameSkin(l.skins[1], q));
    if (known) known.edges.push(index);
    else links.push({ skins: [p, q], inside, edges: [index] });
  });
  return links.map(({ skins, inside, edges }) => ({ skins, inside, edges: [edges, edges] }));
};

export const findLinks = (
  brep: Brep,
  users: readonly (readonly number[])[],
  slabs: readonly Slab[],
  patches: readonly Patch[],
): Link[] => {
  const bySkin = slabByFace(slabs);
  return [
    ...patches.flatMap((patch) => patchLinks(patch, contactsOf(brep, users, bySkin, slabs, patch))),
    ...edgeLinks(brep, users, bySkin, slabs),
  ];
};
