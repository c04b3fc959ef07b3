import { type Vec3, add3, cross3, dot3, length3, scale3, sub3 } from '../../geometry/index.js';
import { CLOSED_HEM_RADIUS } from '../../sheet/index.js';
import type { Brep, Edge, EdgeUse, Face } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH, SAME_POINT, TANGENT } from '../tolerances.js';
import { type Patch, fromLine } from './patches.js';
import { opposite } from './pairs.js';

/** A hem drawn fully closed: its two layers are one body of twice the thickness beside one outer half cylinder. */
interface FusedHem {
  readonly patch: Patch;
  /** A point of the seam between the layers, and the way from the sheet's layer into the folded one. */
  readonly seam: Vec3;
  readonly up: Vec3;
  /** The outer faces of the folded layer and of the sheet under it. */
  readonly layer: readonly number[];
  readonly sheet: readonly number[];
}

export interface OpenedHems {
  readonly brep: Brep;
  /** Faces from this number on were added: the insides of hems that the file does not hold. */
  readonly added: number;
}

type Users = readonly (readonly number[])[];

const normalOf = (brep: Brep, face: number): Vec3 | undefined => {
  const { surface } = brep.faces[face]!;
  return surface.kind === 'plane' ? surface.normal : undefined;
};

/** The faces of the sheet that end where the folded layer ends: they lie in the plane of the seam. */
const inSeam = (brep: Brep, seam: Vec3, up: Vec3): number[] =>
  brep.faces.flatMap(({ surface }, i) =>
    surface.kind === 'plane' && length3(sub3(surface.normal, up)) < SAME_DIRECTION && Math.abs(dot3(sub3(surface.origin, seam), up)) < SAME_LENGTH ? [i] : [],
  );

const edgesOf = (brep: Brep, faces: readonly number[]): number[] => [...new Set(faces.flatMap((f) => brep.faces[f]!.loops.flat().map((use) => use.edge)))];

/** Hems whose layers are fused: half a cylinder of one thickness' radius between two planes that look away from each other. */
const fusedHems = (brep: Brep, users: Users, patches: readonly Patch[], thickness: number): FusedHem[] =>
  patches.flatMap((patch): FusedHem[] => {
    if (patch.hollow || Math.abs(patch.radius - thickness) > SAME_LENGTH) return [];
    const beside = edgesOf(brep, patch.faces).flatMap((e) => {
      const { curve, from } = brep.edges[e]!;
      const radial = scale3(fromLine(from, patch.origin, patch.axis), 1 / patch.radius);
      return curve.kind !== 'line' ? [] : users[e]!.filter((f) => {
        const normal = patch.faces.includes(f) ? undefined : normalOf(brep, f);
        return normal !== undefined && length3(sub3(normal, radial)) < TANGENT;
      });
    });
    const faces = [...new Set(beside)];
    const hems = faces.flatMap((f): FusedHem[] => {
      const up = normalOf(brep, f)!;
      const layer = faces.filter((g) => length3(sub3(normalOf(brep, g)!, up)) < SAME_DIRECTION);
      const sheet = faces.filter((g) => opposite(normalOf(brep, g)!, up));
      if (f !== layer[0] || sheet.length === 0) return [];
      const walls = edgesOf(brep, layer).flatMap((e) => users[e]!).filter((w) => !layer.includes(w) && !patch.faces.includes(w));
      const feet = new Set(edgesOf(brep, inSeam(brep, patch.origin, up)));
      return edgesOf(brep, walls).some((e) => feet.has(e)) ? [{ patch, seam: patch.origin, up, layer, sheet }] : [];
    });
    const area = ({ layer }: FusedHem): number => layer.reduce((sum, g) => sum + brep.faces[g]!.area, 0);
    // a hem stands on the sheet, not the sheet on the hem: the smaller layer is the folded one
    return hems.sort((a, b) => area(a) - area(b)).slice(0, 1);
  });

/** How a point moves, and what becomes of a circle about `axis`. */
interface Way {
  readonly move: (p: Vec3) => Vec3;
  readonly scale: number;
}

const movedEdge = (edge: Edge, { move, scale }: Way, axis: Vec3): Edge => {
  const { curve } = edge;
  const points = edge.points.map(move);
  const round = curve.kind === 'circle' && (scale === 1 || length3(cross3(curve.axis, axis)) < SAME_DIRECTION);
  const moved: Edge['curve'] = curve.kind === 'line' ? curve : round ? { ...curve, centre: move(curve.centre), radius: curve.radius * scale } : { kind: 'other' };
  return { from: move(edge.from), to: move(edge.to), curve: moved, points };
};

const near = (p: Vec3, q: Vec3): boolean => length3(sub3(p, q)) < SAME_POINT;

/** Edges of the opened body; a new edge that lies where one of the joined faces has its own is that one. */
class Edges {
  readonly list: Edge[];
  private readonly joined: number[];
  constructor(old: readonly Edge[], joined: readonly number[]) {
    this.list = [...old];
    this.joined = [...joined];
  }
  use(edge: Edge, forward: boolean): EdgeUse {
    const middle = (e: Edge): Vec3 => e.points[Math.floor(e.points.length / 2)]!;
    const straight = (e: Edge): boolean => e.curve.kind === 'line';
    for (const index of this.joined) {
      const own = this.list[index]!;
      if (straight(own) !== straight(edge) || (!straight(edge) && length3(sub3(middle(own), middle(edge))) > 0.1 * length3(sub3(edge.to, edge.from)) + SAME_POINT)) continue;
      if (near(own.from, edge.from) && near(own.to, edge.to)) return { edge: index, forward };
      if (near(own.from, edge.to) && near(own.to, edge.from)) return { edge: index, forward: !forward };
    }
    const index = this.list.push(edge) - 1;
    this.joined.push(index);
    return { edge: index, forward };
  }
}

const opened = (brep: Brep, { patch, seam, up, layer, sheet }: FusedHem, thickness: number): Brep => {
  const r = CLOSED_HEM_RADIUS;
  const edges = new Edges(brep.edges, edgesOf(brep, [...sheet, ...inSeam(brep, seam, up)]));
  const along = (by: number): Way => ({ move: (p) => add3(p, scale3(up, by)), scale: 1 });
  /** About the seam, to the cylinder of another radius whose axis lies between the layers. */
  const about = (radius: number): Way => ({
    move: (p) => {
      const reach = fromLine(p, seam, patch.axis);
      return add3(add3(sub3(p, reach), scale3(up, r)), scale3(reach, radius / patch.radius));
    },
    scale: radius / patch.radius,
  });
  const loops = (face: number, way: Way, turned = false): EdgeUse[][] =>
    brep.faces[face]!.loops.map((loop) => {
      const uses = loop.map(({ edge, forward }) => edges.use(movedEdge(brep.edges[edge]!, way, patch.axis), turned ? !forward : forward));
      return turned ? uses.reverse() : uses;
    });
  const plane = (face: number, by: number, turned = false): Face => {
    const { surface, area } = brep.faces[face]!;
    if (surface.kind !== 'plane') throw new Error('a layer of a hem is plane');
    return { surface: { kind: 'plane', origin: add3(surface.origin, scale3(up, by)), normal: turned ? scale3(up, -1) : up }, area, loops: loops(face, along(by), turned) };
  };
  const round = (face: number, radius: number, hollow: boolean): Face => ({
    surface: { kind: 'cylinder', origin: add3(seam, scale3(up, r)), axis: patch.axis, radius, hollow },
    area: (brep.faces[face]!.area * radius) / patch.radius,
    loops: loops(face, about(radius), hollow),
  });
  const faces = brep.faces.map((face, i) => (layer.includes(i) ? plane(i, 2 * r) : patch.faces.includes(i) ? round(i, patch.radius + r, false) : face));
  const inner = [
    ...layer.flatMap((i) => [plane(i, -thickness), plane(i, 2 * r - thickness, true)]),
    ...patch.faces.map((i) => round(i, r, true)),
  ];
  // the outer half cylinder grows by the radius: that much more metal, round the whole of it
  return { ...brep, faces: [...faces, ...inner], edges: edges.list, volume: Math.abs(brep.volume) + r * patch.area };
};

/**
 * Opens hems that are drawn fully closed, layer on layer in one body, to the gap that a closed hem has in a typed-in profile:
 * the sheet stays where it is, the folded layer rises by the gap. The body then reads like any other.
 */
export const openHems = (drawn: Brep, users: Users, patches: readonly Patch[], thickness: number): OpenedHems => {
  const added = drawn.faces.length;
  let brep = drawn;
  for (const hem of fusedHems(drawn, users, patches, thickness)) brep = opened(brep, hem, thickness);
  return { brep, added };
};
