import type { TopoDS_Shape } from 'replicad-opencascadejs';
import type { Vec2, Vec3 } from '../../geometry/index.js';
import type { Intake } from '../refusal.js';
import type { Kernel } from './kernel.js';
import { readSolids } from './readSolids.js';
import { stepText } from './writeStep.js';

/** Bodies for tests, made by the kernel and read back through STEP text. Nothing is freed: a test's process ends. */
export const kernelBodies = (oc: Kernel) => {
  const point = (p: Vec3): InstanceType<Kernel['gp_Pnt']> => new oc.gp_Pnt(...p);
  const polygon = (points: readonly Vec3[]): TopoDS_Shape => {
    const wire = new oc.BRepBuilderAPI_MakeWire();
    points.forEach((p, i) => wire.Add(new oc.BRepBuilderAPI_MakeEdge(point(p), point(points[(i + 1) % points.length]!)).Edge()));
    return new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
  };
  return {
    box: (low: Vec3, high: Vec3): TopoDS_Shape => new oc.BRepPrimAPI_MakeBox(point(low), point(high)).Shape(),
    /** A section (y, z) pushed along x from one place to another. */
    pushed: (section: readonly Vec2[], x0: number, x1: number): TopoDS_Shape =>
      new oc.BRepPrimAPI_MakePrism(polygon(section.map(([y, z]): Vec3 => [x0, y, z])), new oc.gp_Vec(x1 - x0, 0, 0), false, true).Shape(),
    /** A section (r, z) turned about the upright axis through (x, y). */
    turned: (section: readonly Vec2[], [x, y]: Vec2): TopoDS_Shape =>
      new oc.BRepPrimAPI_MakeRevol(polygon(section.map(([r, z]): Vec3 => [x + r, y, z])), new oc.gp_Ax1(point([x, y, 0]), new oc.gp_Dir(0, 0, 1)), 2 * Math.PI, false).Shape(),
    ball: (centre: Vec3, radius: number): TopoDS_Shape => new oc.BRepPrimAPI_MakeSphere(point(centre), radius).Shape(),
    cut: (a: TopoDS_Shape, b: TopoDS_Shape): TopoDS_Shape => new oc.BRepAlgoAPI_Cut(a, b).Shape(),
    fuse: (a: TopoDS_Shape, b: TopoDS_Shape): TopoDS_Shape => new oc.BRepAlgoAPI_Fuse(a, b).Shape(),
    common: (a: TopoDS_Shape, b: TopoDS_Shape): TopoDS_Shape => new oc.BRepAlgoAPI_Common(a, b).Shape(),
  };
};

export const readText = (oc: Kernel, text: string, fileName = 'test.step'): Intake =>
  readSolids(oc, new TextEncoder().encode(text), { fileName, text });

export const readShape = (oc: Kernel, shape: TopoDS_Shape): Intake => readText(oc, stepText(oc, shape, 'test'));
