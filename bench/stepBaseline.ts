import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { OpenCascadeInstance, TopoDS_Shape } from 'replicad-opencascadejs';

// What reading a STEP file costs at the least: opens it with OpenCascade and visits each face, edge and vertex once.
// Shares no code with src/: the measure that the reader is held against (bench/step.ts). Alone: npm run bench -- stepBaseline FILE...

/** OpenCascade by itself, its printing silenced. */
export const baselineKernel = async (): Promise<OpenCascadeInstance> => {
  const quiet = (): void => undefined;
  const module = await import('replicad-opencascadejs');
  return module.default({ wasmBinary: readFileSync(createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm')), print: quiet, printErr: quiet });
};

/** The distinct shapes of one kind: the same face, edge or vertex is met once for each of its uses. */
const distinct = (oc: OpenCascadeInstance, shape: TopoDS_Shape, kind: 'TopAbs_FACE' | 'TopAbs_EDGE' | 'TopAbs_VERTEX'): TopoDS_Shape[] => {
  const byHash = new Map<number, TopoDS_Shape[]>();
  const found: TopoDS_Shape[] = [];
  const walk = new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum[kind], oc.TopAbs_ShapeEnum.TopAbs_SHAPE);
  for (; walk.More(); walk.Next()) {
    const each = walk.Current();
    const hash = oc.ReplicadShapeHasher.HashCode(each, 0x7fffffff);
    const bucket = byHash.get(hash);
    if (bucket?.some((known) => known.IsSame(each))) each.delete();
    else {
      if (bucket) bucket.push(each);
      else byHash.set(hash, [each]);
      found.push(each);
    }
  }
  walk.delete();
  return found;
};

export interface Visited {
  readonly faces: number;
  readonly edges: number;
  readonly vertices: number;
  /** Sum of what was read at each visit, so that no visit can be left out unseen. */
  readonly sum: number;
}

/** Opens the file and visits: of each face the kind of surface, of each edge the kind of curve and its ends' parameters, of each vertex its point. */
export const visitStep = (oc: OpenCascadeInstance, bytes: Uint8Array): Visited => {
  oc.FS.writeFile('baseline.step', bytes);
  const reader = new oc.STEPControl_Reader();
  reader.ReadFile('baseline.step');
  reader.TransferRoots();
  const shape = reader.OneShape();
  let sum = 0;
  const faces = distinct(oc, shape, 'TopAbs_FACE');
  for (const each of faces) {
    const face = oc.TopoDS.Face(each);
    const surface = new oc.BRepAdaptor_Surface(face, true);
    sum += String(surface.GetType()).length;
    surface.delete();
    face.delete();
  }
  const edges = distinct(oc, shape, 'TopAbs_EDGE');
  for (const each of edges) {
    const edge = oc.TopoDS.Edge(each);
    if (!oc.BRep_Tool.Degenerated(edge)) {
      const curve = new oc.BRepAdaptor_Curve(edge);
      sum += String(curve.GetType()).length + curve.LastParameter() - curve.FirstParameter();
      curve.delete();
    }
    edge.delete();
  }
  const vertices = distinct(oc, shape, 'TopAbs_VERTEX');
  for (const each of vertices) {
    const vertex = oc.TopoDS.Vertex(each);
    const point = oc.BRep_Tool.Pnt(vertex);
    sum += point.X() + point.Y() + point.Z();
    point.delete();
    vertex.delete();
  }
  const counted = { faces: faces.length, edges: edges.length, vertices: vertices.length, sum };
  for (const each of [...faces, ...edges, ...vertices]) each.delete();
  shape.delete();
  reader.delete();
  oc.FS.unlink('baseline.step');
  return counted;
};

if (process.argv[1]?.endsWith('stepBaseline.js')) {
  const oc = await baselineKernel();
  for (const file of process.argv.slice(2)) {
    const bytes = readFileSync(file);
    const began = performance.now();
    const { faces, edges, vertices } = visitStep(oc, bytes);
    console.log(`${((performance.now() - began) / 1000).toFixed(3)} s, ${faces} faces, ${edges} edges, ${vertices} vertices`);
  }
}
