import type { BRepAdaptor_Curve, TopoDS_Edge, TopoDS_Face, TopoDS_Shape } from 'replicad-opencascadejs';
import { type Vec3, add3, cross3, dot3, length3, scale3, sub3 } from '../../geometry/index.js';
import type { Brep, Edge, EdgeUse, Face, Surface } from './brep.js';
import type { Kernel } from './kernel.js';
import { CURVE_CHORD, MEASURE_SHARE, MOST_HALVINGS } from '../tolerances.js';

interface Triple {
  X(): number;
  Y(): number;
  Z(): number;
}
const vec = (p: Triple): Vec3 => [p.X(), p.Y(), p.Z()];

const distanceToSegment = (p: Vec3, a: Vec3, b: Vec3): number => {
  const [chord, reach] = [sub3(b, a), sub3(p, a)];
  const square = dot3(chord, chord);
  const s = square === 0 ? 0 : Math.min(1, Math.max(0, dot3(reach, chord) / square));
  return length3(sub3(p, add3(a, scale3(chord, s))));
};

/** Runs `body`, then frees the kernel's objects that it took: the WebAssembly heap has no collector. */
const scope = <T>(body: (keep: <O extends { delete(): void }>(o: O) => O) => T): T => {
  const taken: { delete(): void }[] = [];
  try {
    return body((o) => (taken.push(o), o));
  } finally {
    for (const o of taken.reverse()) o.delete();
  }
};

const children = (oc: Kernel, shape: TopoDS_Shape, kind: 'TopAbs_FACE' | 'TopAbs_WIRE' | 'TopAbs_EDGE' | 'TopAbs_SOLID' | 'TopAbs_SHELL', avoid: 'TopAbs_SHAPE' | 'TopAbs_SOLID' = 'TopAbs_SHAPE'): TopoDS_Shape[] => {
  const found: TopoDS_Shape[] = [];
  const walk = new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum[kind], oc.TopAbs_ShapeEnum[avoid]);
  for (; walk.More(); walk.Next()) found.push(walk.Current());
  walk.delete();
  return found;
};

const reversedShape = (oc: Kernel, shape: TopoDS_Shape): boolean => shape.Orientation() === oc.TopAbs_Orientation.TopAbs_REVERSED;

const readSurface = (oc: Kernel, face: TopoDS_Face): Surface =>
  scope((keep) => {
    const adaptor = keep(new oc.BRepAdaptor_Surface(face, true));
    const kind = adaptor.GetType();
    const flip = reversedShape(oc, face) ? -1 : 1;
    if (kind === oc.GeomAbs_SurfaceType.GeomAbs_Plane) {
      const frame = keep(keep(adaptor.Plane()).Position());
      const normal = cross3(vec(keep(frame.XDirection())), vec(keep(frame.YDirection())));
      return { kind: 'plane', origin: vec(keep(frame.Location())), normal: scale3(normal, flip) };
    }
    if (kind === oc.GeomAbs_SurfaceType.GeomAbs_Cylinder) {
      const cylinder = keep(adaptor.Cylinder());
      const frame = keep(cylinder.Position());
      const axis = vec(keep(frame.Direction()));
      // the surface's own normal dS/du x dS/dv points away from the axis in a right-handed frame
      const handed = dot3(cross3(vec(keep(frame.XDirection())), vec(keep(frame.YDirection()))), axis);
      return { kind: 'cylinder', origin: vec(keep(frame.Location())), axis, radius: cylinder.Radius(), hollow: handed * flip < 0 };
    }
    return { kind: 'other', name: String(kind).replace('GeomAbs_', '') };
  });

/**
 * The curve cut into chords by halving until the middle and the quarters of each piece lie on their chord. (The
 * kernel's own cutter, GCPnts_TangentialDeflection, does not come back from some splines of real files.)
 */
const samples = (curve: BRepAdaptor_Curve, first: number, last: number, pieces: number): Vec3[] => {
  const at = (u: number): Vec3 => scope((keep) => vec(keep(curve.EvalD0(u))));
  const points: Vec3[] = [at(first)];
  const halve = (u0: number, p0: Vec3, u1: number, p1: Vec3, depth: number): void => {
    const inner = [0.25, 0.5, 0.75].map((s) => at(u0 + (u1 - u0) * s)) as [Vec3, Vec3, Vec3];
    if (depth === 0 || inner.every((p) => distanceToSegment(p, p0, p1) < CURVE_CHORD / 2)) {
      points.push(p1);
      return;
    }
    const um = (u0 + u1) / 2;
    halve(u0, p0, um, inner[1], depth - 1);
    halve(um, inner[1], u1, p1, depth - 1);
  };
  let [u, p] = [first, points[0]!];
  for (let k = 1; k <= pieces; k++) {
    const next = first + ((last - first) * k) / pieces;
    const q = at(next);
    halve(u, p, next, q, MOST_HALVINGS);
    [u, p] = [next, q];
  }
  return points;
};

const readEdge = (oc: Kernel, edge: TopoDS_Edge): Edge =>
  scope((keep) => {
    const curve = keep(new oc.BRepAdaptor_Curve(edge));
    const [first, last] = [curve.FirstParameter(), curve.LastParameter()];
    const from = vec(keep(curve.EvalD0(first)));
    const to = vec(keep(curve.EvalD0(last)));
    const kind = curve.GetType();
    if (kind === oc.GeomAbs_CurveType.GeomAbs_Line) return { from, to, curve: { kind: 'line' }, points: [from, to] };
    if (kind === oc.GeomAbs_CurveType.GeomAbs_Circle) {
      const circle = keep(curve.Circle());
      const frame = keep(circle.Position());
      const axis = cross3(vec(keep(frame.XDirection())), vec(keep(frame.YDirection())));
      return {
        from,
        to,
        curve: { kind: 'circle', centre: vec(keep(frame.Location())), axis, radius: circle.Radius(), sweep: last - first },
        points: samples(curve, first, last, 2),
      };
    }
    return { from, to, curve: { kind: 'other' }, points: samples(curve, first, last, 4) };
  });

/** One number for each distinct edge, found by hash and identity. */
class EdgeTable {
  readonly edges: Edge[] = [];
  private readonly shapes: TopoDS_Edge[] = [];
  private readonly byHash = new Map<number, number[]>();

  constructor(private readonly oc: Kernel) {}

  index(shape: TopoDS_Shape): number {
    const hash = this.oc.ReplicadShapeHasher.HashCode(shape, 0x7fffffff);
    const bucket = this.byHash.get(hash) ?? [];
    const known = bucket.find((i) => this.shapes[i]!.IsSame(shape));
    if (known !== undefined) return known;
    const edge = this.oc.TopoDS.Edge(shape);
    const index = this.edges.push(readEdge(this.oc, edge)) - 1;
    this.shapes.push(edge);
    bucket.push(index);
    this.byHash.set(hash, bucket);
    return index;
  }

  free(): void {
    for (const s of this.shapes) s.delete();
  }
}

const readLoop = (oc: Kernel, wire: TopoDS_Shape, table: EdgeTable): EdgeUse[] => {
  const uses: EdgeUse[] = [];
  for (const shape of children(oc, wire, 'TopAbs_EDGE')) {
    const edge = oc.TopoDS.Edge(shape);
    if (!oc.BRep_Tool.Degenerated(edge)) uses.push({ edge: table.index(shape), forward: !reversedShape(oc, shape) });
    edge.delete();
    shape.delete();
  }
  return uses;
};

const readFace = (oc: Kernel, shape: TopoDS_Shape, table: EdgeTable): Face =>
  scope((keep) => {
    const face = keep(oc.TopoDS.Face(shape));
    const properties = keep(new oc.GProp_GProps());
    const surface = readSurface(oc, face);
    if (surface.kind === 'other') oc.BRepGProp.SurfaceProperties(face, properties, false, false);
    else oc.BRepGProp.SurfaceProperties(face, properties, MEASURE_SHARE, false);
    const loops = children(oc, face, 'TopAbs_WIRE').map((wire) => readLoop(oc, keep(wire), table));
    return { surface, area: properties.Mass(), loops };
  });

const readBody = (oc: Kernel, body: TopoDS_Shape, solid: boolean): Brep =>
  scope((keep) => {
    const table = new EdgeTable(oc);
    const faces = children(oc, body, 'TopAbs_FACE').map((face) => readFace(oc, keep(face), table));
    table.free();
    const properties = keep(new oc.GProp_GProps());
    oc.BRepGProp.VolumeProperties(body, properties, MEASURE_SHARE, false, false);
    return { faces, edges: table.edges, volume: properties.Mass(), solid };
  });

/** The solids of a shape, then its shells that belong to no solid, as plain data. */
export const extractBreps = (oc: Kernel, shape: TopoDS_Shape): Brep[] => {
  const solids = children(oc, shape, 'TopAbs_SOLID').map((s) => readBody(oc, s, true));
  const shells = children(oc, shape, 'TopAbs_SHELL', 'TopAbs_SOLID').map((s) => readBody(oc, s, false));
  return [...solids, ...shells];
};
