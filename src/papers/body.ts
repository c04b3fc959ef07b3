import { type Rigid, type Vec3, apply, dot3, turn } from '../geometry/index.js';
import type { FillName, PenName } from './pens.js';

/** A flat face of a body: an outline and holes, seen from the side to which `normal` points. */
export interface Face {
  readonly loops: readonly (readonly Vec3[])[];
  /** Unit, out of the metal. */
  readonly normal: Vec3;
  /** Facets of one curved surface bear its name: no line is drawn between them. */
  readonly surface: string;
  readonly curved: boolean;
  /** Tint where it is seen; the paper when absent. */
  readonly fill?: FillName;
  /** Direction of hatching, in the face. */
  readonly hatch?: Vec3;
  /** The letter that this face may bear, and whose it is. */
  readonly letter?: { readonly side: 'A' | 'B'; readonly plate: number };
}

/** Where faces meet, or where a face ends in the open. */
export interface Edge {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly normals: readonly Vec3[];
  /** 'smooth': drawn only as a silhouette. 'tangent': a curved surface runs into a flat one. */
  readonly kind: 'sharp' | 'tangent' | 'smooth';
}

/** A line drawn on a face: a bend line, a tick of a scale. Seen where its face is. */
export interface Mark {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly normal: Vec3;
  readonly pen: PenName;
  /** Letters under the end of the line, when all of it is seen. */
  readonly label?: string;
}

export interface Body {
  readonly name: string;
  readonly faces: readonly Face[];
  readonly edges: readonly Edge[];
  readonly marks: readonly Mark[];
  /** Are tangent lines drawn (thin) on this body? */
  readonly tangents: boolean;
}

/** Corners closer than this (mm) are one corner: far above rounding, far below any real feature. */
const ONE_CORNER = 1e-4;

/** A curved surface's last facet leaves its tangent by at most half a facet; facets turn by at most 15 degrees. */
const TANGENT_COS = Math.cos((16 * Math.PI) / 180);
/** Facets of one surface that turn further than this meet in a corner all the same. */
const SMOOTH_COS = Math.cos((20 * Math.PI) / 180);
/** Faces of one plane: no line between them. */
const FLAT_COS = 1 - 1e-9;

/** Shifts the rounding's steps off the places where drawings put corners (5/32 inch is 3.96875 mm, half-way between two steps). */
const OFF_STEP = 0.2718281;

const corner = (p: Vec3): string => p.map((v) => Math.round(v / ONE_CORNER + OFF_STEP)).join();

/** The same name for the edge from either end. */
export const edgeKey = (p: Vec3, q: Vec3): string => {
  const [a, b] = [corner(p), corner(q)];
  return a < b ? `${a};${b}` : `${b};${a}`;
};

const kindOf = (one: Face, other: Face): Edge['kind'] => {
  const cos = dot3(one.normal, other.normal);
  if (cos > FLAT_COS) return 'smooth';
  if (one.curved && other.curved && one.surface === other.surface && cos > SMOOTH_COS) return 'smooth';
  return (one.curved || other.curved) && cos > TANGENT_COS ? 'tangent' : 'sharp';
};

/** Pairs up the faces' edges. Loops must share their corners: an edge met by one face only is drawn as an open end. */
export const bodyOf = (name: string, faces: readonly Face[], tangents = false, marks: readonly Mark[] = []): Body => {
  const open = new Map<string, { from: Vec3; to: Vec3; faces: Face[] }>();
  for (const face of faces) {
    for (const loop of face.loops) {
      loop.forEach((from, i) => {
        const to = loop[(i + 1) % loop.length]!;
        const key = edgeKey(from, to);
        const met = open.get(key);
        if (met) met.faces.push(face);
        else open.set(key, { from, to, faces: [face] });
      });
    }
  }
  const edges = [...open.values()].map(({ from, to, faces: met }): Edge => ({
    from,
    to,
    normals: met.map((face) => face.normal),
    kind: met.length === 2 ? kindOf(met[0]!, met[1]!) : 'sharp',
  }));
  return { name, faces, edges, marks, tangents };
};

export const moveBody = (pose: Rigid, body: Body): Body => {
  const at = (p: Vec3): Vec3 => apply(pose, p);
  return {
    ...body,
    faces: body.faces.map((face) => ({
      ...face,
      loops: face.loops.map((loop) => loop.map(at)),
      normal: turn(pose, face.normal),
      ...(face.hatch ? { hatch: turn(pose, face.hatch) } : {}),
    })),
    edges: body.edges.map((e) => ({
      from: at(e.from),
      to: at(e.to),
      normals: e.normals.map((n) => turn(pose, n)),
      kind: e.kind,
    })),
    marks: body.marks.map((m) => ({ ...m, from: at(m.from), to: at(m.to), normal: turn(pose, m.normal) })),
  };
};
