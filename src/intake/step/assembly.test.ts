import type { TopoDS_Shape } from 'replicad-opencascadejs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Vec3, signedArea } from '../../geometry/index.js';
import { type Kernel, loadKernel } from './kernel.js';
import { loadAsWritten } from './load.js';
import { kernelBodies, readText } from './testKernel.js';
import { stepText } from './writeStep.js';

let oc: Kernel;
let make: ReturnType<typeof kernelBodies>;
beforeAll(async () => {
  oc = await loadKernel();
  make = kernelBodies(oc);
}, 120_000);

const LONG = 60_000;

/** Put elsewhere: turned about the upright axis, then moved. The shape itself is shared, as an assembly shares it. */
const put = (shape: TopoDS_Shape, degrees: number, by: Vec3): TopoDS_Shape => {
  const [turn, move] = [new oc.gp_Trsf(), new oc.gp_Trsf()];
  turn.SetRotation(new oc.gp_Ax1(new oc.gp_Pnt(0, 0, 0), new oc.gp_Dir(0, 0, 1)), (degrees * Math.PI) / 180);
  move.SetTranslation(new oc.gp_Vec(...by));
  return shape.Moved(new oc.TopLoc_Location(move.Multiplied(turn)), false);
};

const together = (...shapes: TopoDS_Shape[]): TopoDS_Shape => {
  const [builder, compound] = [new oc.TopoDS_Builder(), new oc.TopoDS_Compound()];
  builder.MakeCompound(compound);
  for (const shape of shapes) builder.Add(compound, shape);
  return compound;
};

describe('an assembly', () => {
  it('of a sub-assembly used twice and a loose sheet gives each solid where it stands', () => {
    // an angle of sharp corners (2 thick, 40 and 60 outside, 100 wide), a flat sheet and a block that is no sheet
    const angle = make.pushed([[0, 0], [60, 0], [60, 2], [2, 2], [2, 40], [0, 40]], 0, 100);
    const pair = together(angle, put(angle, 90, [300, 0, 0]));
    const sheet = make.box([0, 0, 500], [80, 50, 503]);
    const block = make.box([900, 0, 0], [950, 40, 30]);
    stepText(oc, sheet, 'the first writer makes the settings known');
    oc.Interface_Static.SetCVal('write.step.assembly', 'On');
    let text: string;
    try {
      text = stepText(oc, together(pair, put(pair, 30, [0, 700, 50]), sheet, block), 'all');
    } finally {
      oc.Interface_Static.SetCVal('write.step.assembly', 'Off');
    }
    // two uses of the angle in the pair, two of the pair, the sheet and the block in the whole
    expect(text.match(/NEXT_ASSEMBLY_USAGE_OCCURRENCE\(/g)).toHaveLength(6);
    expect(text.match(/MANIFOLD_SOLID_BREP\(/g)).toHaveLength(3);
    // the writer lists the products as the assembly is built: the whole, the pair, the angle, the sheet, the block
    const names = ['Whole', 'Pair', 'Angle', 'Sheet \\X2\\00E4\\X0\\', 'Block'];
    const named = text.replace(/ PRODUCT\('[^']*','[^']*'/g, () => ` PRODUCT('no. ${6 - names.length}','${names.shift()!}'`);
    const { parts, refused } = readText(oc, named, 'all.step');
    expect(parts.map(({ index, part }) => [index, part.name, part.thickness, part.bends.length])).toEqual([
      ...[0, 1, 2, 3].map((i) => [i, `Angle ${i + 1}`, 2, 1]),
      [4, 'Sheet ä', 3, 0],
    ]);
    // four uses of the angle are one shape however they are turned, and the sheet is none of them
    expect(parts.map(({ sameAs }) => sameAs)).toEqual([undefined, 0, 0, 0, undefined]);
    expect(refused.map(({ index, code, name }) => [index, code, name])).toEqual([[5, 'no constant thickness', 'Block']]);
    // the order of the bodies follows the order of the file's records, and the names follow the bodies
    const [, head, records, tail] = /^([\s\S]*?DATA;\n)([\s\S]*?)(ENDSEC;\nEND-ISO[\s\S]*)$/.exec(named)!;
    const backwards = `${head!}${records!.split(/;\n/).filter((it) => it !== '').reverse().join(';\n')};\n${tail!}`;
    expect(readText(oc, backwards, 'all.step').parts.map(({ index, part }) => [index, part.name, part.thickness])).toEqual([
      [1, 'Sheet ä', 3], ...[2, 3, 4, 5].map((i) => [i, `Angle ${i - 1}`, 2]),
    ]);
    const bodies = loadAsWritten(oc, new TextEncoder().encode(text))!;
    const corner = (i: number): number[] => [0, 1, 2].map((axis) => Math.min(...bodies[i]!.edges.map((edge) => edge.from[axis]!)));
    // second use of the angle: (x, y) -> (300 - y, x)
    corner(1).forEach((at, axis) => expect(at).toBeCloseTo([240, 0, 0][axis]!, 6));
    // second use of the pair: turned by 30 degrees, so the lowest x of 60 deep and 100 wide is -60 sin 30
    corner(2).forEach((at, axis) => expect(at).toBeCloseTo([-30, 700, 50][axis]!, 6));
  }, LONG);
});

describe('a cut-out bounded by splines', () => {
  it('keeps the area under a curve of the fourth order within 0.01 mm of its edge', () => {
    // a closed cut-out: a straight base from (20, 20) to (60, 20) and a cubic Bezier back over the poles (60, 50) and (20, 50)
    const poles = new oc.NCollection_Array1_gp_Pnt(1, 4);
    ([[60, 20], [60, 50], [20, 50], [20, 20]] as const).forEach(([x, y], i) => poles.SetValue(i + 1, new oc.gp_Pnt(x, y, -1)));
    const wire = new oc.BRepBuilderAPI_MakeWire();
    wire.Add(new oc.BRepBuilderAPI_MakeEdge(new oc.gp_Pnt(20, 20, -1), new oc.gp_Pnt(60, 20, -1)).Edge());
    wire.Add(new oc.BRepBuilderAPI_MakeEdge(new oc.Geom_BezierCurve(poles)).Edge());
    const cutter = new oc.BRepPrimAPI_MakePrism(new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(), new oc.gp_Vec(0, 0, 4), false, true).Shape();
    const { parts, refused } = readText(oc, stepText(oc, make.cut(make.box([0, 0, 0], [80, 60, 2]), cutter), 'window'));
    expect(refused).toEqual([]);
    const { plates, assumptions } = parts[0]!.part;
    expect(plates[0]!.holes).toHaveLength(1);
    // area under the cubic by its poles: x = 60 - 120 t2 + 80 t3, y - 20 = 90 t (1 - t); the integral of y dx is 240 90 / 30 = 720 mm2
    const area = Math.abs(signedArea(plates[0]!.holes[0]!));
    const length = 40 + 76;
    expect(Math.abs(area - 720)).toBeLessThan(0.01 * length);
    expect(assumptions.map(({ sentence }) => sentence).join(' ')).toContain('chords within 0.01 mm');
    // each corner lies on the curve: with s = x - 60 solved for t by the height, both roots looked at
    for (const { x, y } of plates[0]!.holes[0]!) {
      const [u, v] = [x, y - 20];
      const root = Math.sqrt(Math.max(0, 0.25 - v / 90));
      const off = Math.min(...[0.5 - root, 0.5 + root].map((t) => Math.abs(u - (60 - 120 * t * t + 80 * t ** 3))));
      const mirrored = Math.min(...[0.5 - root, 0.5 + root].map((t) => Math.abs(80 - u - (60 - 120 * t * t + 80 * t ** 3))));
      expect(Math.min(off, mirrored)).toBeLessThan(0.01);
    }
  }, LONG);
});
