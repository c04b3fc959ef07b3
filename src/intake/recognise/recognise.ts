import { type Rigid, bounds, compose, shift } from '../../geometry/index.js';
import type { Bend, Formed, Part, Plate } from '../../sheet/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_LENGTH } from '../tolerances.js';
import { SAME_VOLUME, type Varied, assumptionsOf } from './assumptions.js';
import { findFormed } from './formed.js';
import { type Placed, placeSlabs } from './frames.js';
import { fusedHem } from './fusedHem.js';
import { healSlivers } from './healSlivers.js';
import { openHems } from './openHems.js';
import { type Joint, findJoints } from './joints.js';
import { type Reason, faceNumber, judgeBody, noThickness } from './judge.js';
import { findLinks } from './links.js';
import { loosePatch } from './loosePatch.js';
import { type MadeBend, makeBend } from './makeBend.js';
import { cylinderPatches, facesByEdge } from './patches.js';
import { type PlanePair, planePairs, skinPairs } from './pairs.js';
import { type PlateMetal, plateMetal, sharpEnds } from './plateMetal.js';
import { type Slab, findSlabs } from './slabs.js';
import { findThickness, thicknessBounds } from './thickness.js';
import { growTree } from './tree.js';
import { modelVolume, sharpExcess } from './volume.js';

export interface RecogniseOptions {
  readonly name: string;
  readonly unit: Part['unit'];
  /** mm, the inside radius of bends drawn sharp; without it the thickness (common practice, no source). */
  readonly sharpRadius?: number;
}

/** A part, with where each of its plates stands in the solid's own frame. */
export interface Recognised {
  readonly part: Part;
  readonly frames: readonly Rigid[];
}

/**
 * The volume of plates and bends may differ from the solid's by this share before the body is no sheet of one
 * thickness: countersinks, chamfers and formed features come to a few per cent in real parts, a rib or boss to more.
 */
const VOLUME_SHARE = 0.06;

/** Reads a solid's boundary as a sheet-metal part, or says why it is none. Lengths in mm, the solid's own frame. */
export const recognise = (drawn: Brep, options: RecogniseOptions): Recognised | { readonly reason: Reason } => {
  const drawnUsers = facesByEdge(drawn);
  const early = judgeBody(drawn, drawnUsers);
  if (early) return { reason: early };
  const { brep: healed, slivers } = healSlivers(drawn, drawnUsers);
  const limits = thicknessBounds(healed);
  const closed = surfaces(healed, limits);
  const found = findThickness(closed.near, closed.patches, limits);
  const range = `${limits[0].toFixed(2)} to ${limits[1].toFixed(2)} mm`;
  if (!found) return { reason: noThickness(healed, new Set(), `Volume over surface would make a sheet of ${range}, but no two faces lie back to back at such a distance.`) };
  const thickness = Number(found.thickness.toFixed(6));
  const hems = openHems(healed, closed.users, closed.patches, thickness);
  const { brep } = hems;
  const { users, patches, near } = brep === healed ? closed : surfaces(brep, limits);
  const pairs = skinPairs(near, thickness);
  const slabs = findSlabs(brep, users, pairs);
  if (slabs.length === 0) return { reason: noThickness(brep, new Set(), `No flat faces lie back to back ${thickness.toFixed(2)} mm apart.`, thickness) };
  const formed = findFormed(brep, users, slabs, findJoints(brep, slabs, findLinks(brep, users, slabs, patches), thickness, options.sharpRadius ?? thickness), thickness);
  const { joints } = formed;
  const tree = growTree(slabs, joints);
  if ('closedBy' in tree) return { reason: closedSection(tree.closedBy, slabs) };
  const { branches } = tree;
  const reached = new Set(branches.map((b) => b.slab));
  const loose = loosePatch(brep, users, slabs, patches, joints, reached, thickness);
  if (loose) return { reason: loose };

  const placed = inOrder(placeSlabs(brep, slabs, branches, thickness));
  const metals = placed.map((p) => plateMetal(brep, slabs[p.slab]!, p, sharpEnds(placed, p.slab), thickness, formed.found));
  const failed = metals.findIndex((m) => m.metal.outline.length < 2);
  if (failed >= 0) return { reason: { code: 'outline not read', sentence: `Face ${faceNumber(slabs[placed[failed]!.slab]!.sides[0].faces[0]!)} has no closed outline.`, faces: [] } };
  const bends = makeBends(brep, placed, metals, joints, thickness);
  if ('reason' in bends) return bends;
  const plates: Plate[] = metals.map(({ metal }) => ({ outline: metal.outline, holes: metal.holes }));
  const made = bends.made.map((b) => b.bend);
  const solid = Math.abs(brep.volume);
  const hanging = placed.flatMap((p) => (p.parent ? [p.parent.joint] : []));
  // corners drawn sharp are compared as drawn, so that a chosen radius does not count as a difference
  const model = modelVolume(plates, made, thickness) + made.reduce((sum, bend, i) => sum + sharpExcess(bend, hanging[i]!, thickness), 0);
  const off = model / solid - 1;
  const hem = Math.abs(off) > SAME_VOLUME ? fusedHem(brep, users, patches, thickness) : undefined;
  if (hem) return { reason: hem };
  if (Math.abs(off) > VOLUME_SHARE) {
    const skins = new Set([...reached].flatMap((s) => slabs[s]!.sides.flatMap((side) => side.faces)));
    const sentence = `The faces ${thickness.toFixed(2)} mm apart that hang together would make ${model.toFixed(0)} mm3, the body has ${solid.toFixed(0)} mm3 (${(100 * off).toFixed(0)} %).`;
    return { reason: noThickness(brep, skins, sentence, Number((100 * off).toFixed(1))) };
  }
  const assumptions = assumptionsOf({ placed, metals, made: bends.made, thickness, slivers, off, hems, varied: variedPlates(pairs, placed, slabs, thickness) });
  const part: Part = { name: options.name, thickness, plates, bends: made, assumptions, unit: options.unit, volume: Math.abs(drawn.volume), ...formedOf(metals) };
  return moveRoot({ part, frames: placed.map((p) => p.frame) });
};

/** What is formed into the plates, as the part keeps it. */
const formedOf = (metals: readonly PlateMetal[]): Pick<Part, 'formed'> => {
  const list = metals.flatMap(({ formed, metal }, plate): Formed[] => [
    ...formed.map(({ kind, outline, height, onA }): Formed => ({ plate, kind, side: onA ? 'A' : 'B', outline, height: Number(height.toFixed(6)) })),
    ...metal.sunk.map(({ outline, onA }): Formed => ({ plate, kind: 'countersink', side: onA ? 'A' : 'B', outline, height: 0 })),
  ]);
  return list.length === 0 ? {} : { formed: list };
};

/** What thickness and slabs are found from. */
const surfaces = (brep: Brep, limits: readonly [number, number]) => {
  const users = facesByEdge(brep);
  return { users, patches: cylinderPatches(brep, users), near: planePairs(brep, ...limits) };
};

/** Plates whose faces lie back to back at another distance than the thickness, with that distance (mm). */
const variedPlates = (pairs: readonly PlanePair[], placed: readonly Placed[], slabs: readonly Slab[], thickness: number): Varied[] =>
  placed.flatMap(({ slab }, plate) =>
    pairs.filter(({ faces, distance }) => Math.abs(distance - thickness) > SAME_LENGTH && slabs[slab]!.sides.some((side) => side.faces.includes(faces[0])))
      .map(({ distance }) => ({ plate, distance })),
  );

/** Plate 0's frame with its origin at the lower left corner of the outline. */
const moveRoot = ({ part, frames }: Recognised): Recognised => {
  const [[x0, y0]] = bounds([part.plates[0]!.outline]);
  const plates = part.plates.map((p, i) => (i > 0 ? p : { outline: moveBy(p.outline, -x0, -y0), holes: p.holes.map((h) => moveBy(h, -x0, -y0)) }));
  const bends = part.bends.map((bend): Bend => {
    const [a, b] = bend.sides;
    if (a.plate !== 0) return bend;
    const line = { from: [a.line.from[0] - x0, a.line.from[1] - y0] as const, to: [a.line.to[0] - x0, a.line.to[1] - y0] as const };
    return { ...bend, sides: [{ plate: 0, line }, b] };
  });
  const formed = part.formed?.map((it) => (it.plate === 0 ? { ...it, outline: moveBy(it.outline, -x0, -y0) } : it));
  return { part: { ...part, plates, bends, ...(formed === undefined ? {} : { formed }) }, frames: frames.map((f, i) => (i > 0 ? f : compose(f, shift([x0, y0, 0])))) };
};

const moveBy = (contour: Plate['outline'], dx: number, dy: number): Plate['outline'] => contour.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy }));

const closedSection = (joint: Joint, slabs: readonly { sides: readonly { faces: readonly number[] }[] }[]): Reason => {
  const faces = joint.slabs.map((s, i) => faceNumber(slabs[s]!.sides[joint.insides[i as 0 | 1]]!.faces[0]!));
  return {
    code: 'closed section',
    sentence: `The plates and bends close into a ring, which no blank unfolds from: faces ${faces[0]} and ${faces[1]} meet in the bend that closes it.`,
    faces,
  };
};

/** Parents first; the plates on one parent by the place of their bend on it, so that names do not hang on the file's order. */
const inOrder = (placed: readonly Placed[]): Placed[] => {
  const result = [placed[0]!];
  for (const parent of result) {
    const children = placed.filter((p) => p.parent?.slab === parent.slab);
    const key = (p: Placed): readonly [number, number] => {
      const r = [p.frame.o[0] - parent.frame.o[0], p.frame.o[1] - parent.frame.o[1], p.frame.o[2] - parent.frame.o[2]] as const;
      const dot = (a: readonly number[]): number => Math.round(100 * (a[0]! * r[0] + a[1]! * r[1] + a[2]! * r[2])) / 100;
      return [dot(parent.frame.y), dot(parent.frame.x)];
    };
    result.push(...children.sort((a, b) => key(a)[0] - key(b)[0] || key(a)[1] - key(b)[1]));
  }
  return result;
};

const makeBends = (
  brep: Brep,
  placed: readonly Placed[],
  metals: readonly PlateMetal[],
  joints: readonly Joint[],
  thickness: number,
): { readonly made: readonly MadeBend[] } | { readonly reason: Reason } => {
  const made: MadeBend[] = [];
  for (const [index, child] of placed.entries()) {
    if (!child.parent) continue;
    const up = placed.findIndex((p) => p.slab === child.parent!.slab);
    const bend = makeBend(brep, `b${made.length + 1}`, child, placed[up]!, [up, index], [metals[up]!, metals[index]!], joints, thickness);
    if (!bend) {
      const radius = child.parent.joint.insideRadius.toFixed(2);
      const sentence = `A bend with inside radius ${radius} mm leaves nothing of the flat between its bends: no straight stretch remains where it meets both plates.`;
      return { reason: { code: 'radius does not fit', sentence, faces: [], measure: child.parent.joint.insideRadius } };
    }
    made.push(bend);
  }
  return { made };
};
