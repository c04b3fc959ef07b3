import type { TopoDS_Shape } from 'replicad-opencascadejs';
import { type Vec3, cross3, dot3, scale3 } from '../../geometry/index.js';
import { MEASURE_SHARE } from '../tolerances.js';
import type { Brep, Edge, EdgeUse, Face, Surface } from './brep.js';
import { type BrepTables, type Placement, STILL, type TextSurface, type Use, multiply, readBrepText } from './brepText.js';
import { onCurve } from './curve.js';
import { signedFaceArea } from './faceArea.js';
import { isSound } from './isSound.js';
import type { Kernel } from './kernel.js';
import { type Measured, measuredFace } from './measure.js';
import { sampleCurve } from './sampleCurve.js';

const turnBy = (m: Placement, v: Vec3): Vec3 => [
  m[0]![0] * v[0] + m[0]![1] * v[1] + m[0]![2] * v[2],
  m[1]![0] * v[0] + m[1]![1] * v[1] + m[1]![2] * v[2],
  m[2]![0] * v[0] + m[2]![1] * v[1] + m[2]![2] * v[2],
];
const moveBy = (m: Placement, v: Vec3): Vec3 => {
  const [x, y, z] = turnBy(m, v);
  return [x + m[0]![3], y + m[1]![3], z + m[2]![3]];
};

/** A shape where it stands: its number, its place (a number of `Places`) and whether it is turned inside out. */
interface Stood {
  readonly shape: number;
  readonly place: number;
  readonly reversed: boolean;
}

/** Placements by number, those of the text first; products are made once. */
class Places {
  private readonly list: Placement[];
  private readonly known = new Map<string, number>();
  constructor(own: readonly Placement[]) {
    this.list = [STILL, ...own];
  }
  at(place: number): Placement {
    return this.list[place]!;
  }
  product(a: number, b: number): number {
    if (a === 0) return b;
    if (b === 0) return a;
    const key = `${a}/${b}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.list.push(multiply(this.list[a]!, this.list[b]!)) - 1;
    this.known.set(key, made);
    return made;
  }
}

const surfaceOf = (raw: TextSurface, m: Placement, reversed: boolean, scale: number): Surface => {
  if (raw.kind === 'other') return raw.sphere === undefined ? raw : { ...raw, sphere: { centre: scale3(moveBy(m, raw.sphere.centre), scale), radius: raw.sphere.radius * scale } };
  const flip = reversed ? -1 : 1;
  const [origin, x, y] = [scale3(moveBy(m, raw.origin), scale), turnBy(m, raw.x), turnBy(m, raw.y)];
  if (raw.kind === 'plane') return { kind: 'plane', origin, normal: scale3(cross3(x, y), flip) };
  const axis = turnBy(m, raw.normal);
  // the surface's own normal dS/du x dS/dv points away from the axis in a right-handed frame
  return { kind: 'cylinder', origin, axis, radius: raw.radius * scale, hollow: dot3(cross3(x, y), axis) * flip < 0 };
};

/** Bodies of a text of the kernel as plain data, areas of faces that are neither plane nor cylinder left at 0. */
class Reading {
  private readonly places: Places;

  constructor(private readonly tables: BrepTables, private readonly scale: number) {
    this.places = new Places(tables.places);
  }

  private stand(use: Use, within: Stood): Stood {
    return { shape: use.shape, place: this.places.product(within.place, use.place), reversed: (use.sense === '-') !== within.reversed };
  }

  root(): Stood {
    const { root } = this.tables;
    return { shape: root.shape, place: root.place, reversed: root.sense === '-' };
  }

  /** The shapes of a kind under another, in the text's order, nothing looked for inside `avoid`. */
  under(top: Stood, kind: string, avoid?: string): Stood[] {
    const { kind: own, children } = this.tables.shapes[top.shape]!;
    if (own === kind) return [top];
    if (own === avoid) return [];
    return children.flatMap((use) => this.under(this.stand(use, top), kind, avoid));
  }

  body(top: Stood): Omit<Brep, 'volume' | 'solid'> {
    const edges: Edge[] = [];
    const numbers = new Map<string, number | undefined>();
    const edgeNumber = ({ shape, place }: Stood): number | undefined => {
      const key = `${shape}/${place}`;
      if (numbers.has(key)) return numbers.get(key);
      const edge = this.edge(shape, place);
      const index = edge === undefined ? undefined : edges.push(edge) - 1;
      numbers.set(key, index);
      return index;
    };
    const faces = this.under(top, 'Fa').map((at): Face => {
      const { children, surface: held } = this.tables.shapes[at.shape]!;
      const raw = held === undefined || held.index === 0 ? undefined : this.tables.surfaces[held.index - 1];
      const surface: Surface = raw === undefined ? { kind: 'other', name: 'none' } : surfaceOf(raw, this.places.at(this.places.product(at.place, held!.place)), at.reversed, this.scale);
      const loops = children.map((wire) => {
        const loop = this.stand(wire, at);
        return this.tables.shapes[loop.shape]!.children.flatMap((use): EdgeUse[] => {
          const stood = this.stand(use, loop);
          const edge = use.sense === '+' || use.sense === '-' ? edgeNumber(stood) : undefined;
          return edge === undefined ? [] : [{ edge, forward: !stood.reversed }];
        });
      });
      return { surface, loops, area: Math.abs(signedFaceArea(surface, loops, edges) ?? 0) };
    });
    return { faces, edges };
  }

  private edge(shape: number, place: number): Edge | undefined {
    const { curve: held, degenerate } = this.tables.shapes[shape]!;
    if (degenerate || held === undefined) return undefined;
    const { first, last } = held;
    const m = this.places.at(this.places.product(place, held.place));
    const curve = this.tables.curves[held.index - 1]!;
    const at = (u: number): Vec3 => scale3(moveBy(m, onCurve(curve, u)), this.scale);
    if (curve.kind === 'line') {
      const [from, to] = [at(first), at(last)];
      return { from, to, curve: { kind: 'line' }, points: [from, to] };
    }
    if (curve.kind === 'circle') {
      const points = sampleCurve(at, first, last, 2);
      const axis = cross3(turnBy(m, curve.x), turnBy(m, curve.y));
      return { from: points[0]!, to: points[points.length - 1]!, curve: { kind: 'circle', centre: scale3(moveBy(m, curve.origin), this.scale), axis, radius: curve.sizes[0] * this.scale, sweep: last - first }, points };
    }
    const points = sampleCurve(at, first, last, 4);
    return { from: points[0]!, to: points[points.length - 1]!, curve: { kind: 'other' }, points };
  }
}

const each = (oc: Kernel, shape: TopoDS_Shape, kind: 'TopAbs_FACE' | 'TopAbs_SOLID' | 'TopAbs_SHELL', avoid: 'TopAbs_SHAPE' | 'TopAbs_SOLID', visit: (found: TopoDS_Shape, index: number) => void): void => {
  const walk = new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum[kind], oc.TopAbs_ShapeEnum[avoid]);
  for (let index = 0; walk.More(); walk.Next(), index++) {
    const found = walk.Current();
    visit(found, index);
    found.delete();
  }
  walk.delete();
};

/** What plain geometry tells of each face: planes, cylinders and straight walls. */
const knownOf = ({ faces, edges }: Omit<Brep, 'volume' | 'solid'>): (Measured | undefined)[] => {
  const pole: Vec3 = edges[0]?.from ?? [0, 0, 0];
  return faces.map((face) => measuredFace(face, edges, pole));
};

const withAreas = ({ faces, edges }: Omit<Brep, 'volume' | 'solid'>, areas: readonly number[], volume: number, solid: boolean): Brep =>
  ({ faces: faces.map((face, i) => (face.surface.kind === 'other' ? { ...face, area: areas[i]! } : face)), edges, volume, solid });

/** Volume and areas: the kernel is asked only where there are faces that are neither planes, cylinders nor straight walls. */
const measured = (oc: Kernel, body: TopoDS_Shape, plain: Omit<Brep, 'volume' | 'solid'>, solid: boolean, scale: number): Brep => {
  const known = knownOf(plain);
  const areas = known.map((it) => it?.area ?? 0);
  let volume = known.reduce((sum, it) => sum + (it?.volume ?? 0), 0);
  if (known.includes(undefined)) {
    const whole = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(body, whole, MEASURE_SHARE, false, false);
    volume = whole.Mass() * scale ** 3;
    whole.delete();
    each(oc, body, 'TopAbs_FACE', 'TopAbs_SHAPE', (found, index) => {
      if (index >= known.length || known[index] !== undefined) return;
      const [face, own] = [oc.TopoDS.Face(found), new oc.GProp_GProps()];
      oc.BRepGProp.SurfaceProperties(face, own, false, false);
      areas[index] = own.Mass() * scale ** 2;
      own.delete();
      face.delete();
    });
  }
  return withAreas(plain, areas, volume, solid);
};

/**
 * The solids of a shape, then its shells that belong to no solid, as plain data. The kernel writes the shape as one
 * text, which is read here: asking it face by face and point by point took longer than reading the file. All lengths come out
 * `scale` times as long as the kernel has them, curves cut into chords at that size.
 */
export const extractBreps = (oc: Kernel, shape: TopoDS_Shape, scale = 1): Brep[] => {
  const reading = new Reading(readBrepText(oc.BRepToolsWrapper.Write(shape)), scale);
  const breps: Brep[] = [];
  const solids = reading.under(reading.root(), 'So');
  each(oc, shape, 'TopAbs_SOLID', 'TopAbs_SHAPE', (body, i) => breps.push(measured(oc, body, reading.body(solids[i]!), true, scale)));
  const shells = reading.under(reading.root(), 'Sh', 'So');
  each(oc, shape, 'TopAbs_SHELL', 'TopAbs_SOLID', (body, i) => breps.push(measured(oc, body, reading.body(shells[i]!), false, scale)));
  return breps;
};

/**
 * The solids of a shape that the kernel has not mended; undefined where one is not sound as it stands, needs the kernel's own measure, or
 * where a shell bounds none.
 */
export const soundBreps = (oc: Kernel, shape: TopoDS_Shape, scale = 1): Brep[] | undefined => {
  const reading = new Reading(readBrepText(oc.BRepToolsWrapper.Write(shape)), scale);
  if (reading.under(reading.root(), 'Sh', 'So').length > 0) return undefined;
  const breps: Brep[] = [];
  for (const solid of reading.under(reading.root(), 'So')) {
    const plain = reading.body(solid);
    const faces = knownOf(plain);
    if (!faces.every((it) => it !== undefined)) return undefined;
    const brep = withAreas(plain, faces.map((it) => it.area), faces.reduce((sum, it) => sum + it.volume, 0), true);
    if (!isSound(brep)) return undefined;
    breps.push(brep);
  }
  return breps;
};
