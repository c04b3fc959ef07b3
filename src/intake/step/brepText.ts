import { type Vec3, add3, length3, scale3, sub3 } from '../../geometry/index.js';
import { SAME_POINT } from '../tolerances.js';
import { type Curve, spline } from './curve.js';

/** Rotation (with reflection where a file has one) and shift: rows of three and a number. */
export type Placement = readonly (readonly [number, number, number, number])[];

export type TextSurface =
  | { readonly kind: 'plane'; readonly origin: Vec3; readonly normal: Vec3; readonly x: Vec3; readonly y: Vec3 }
  | { readonly kind: 'cylinder'; readonly origin: Vec3; readonly normal: Vec3; readonly x: Vec3; readonly y: Vec3; readonly radius: number }
  | { readonly kind: 'other'; readonly name: string; readonly ruled?: true; readonly sphere?: { readonly centre: Vec3; readonly radius: number } };

/** One use of a shape inside another. */
export interface Use {
  readonly shape: number;
  readonly sense: '+' | '-' | 'i' | 'e';
  readonly place: number;
}

export interface TextShape {
  readonly kind: 'Ve' | 'Ed' | 'Wi' | 'Fa' | 'Sh' | 'So' | 'CS' | 'Co';
  readonly children: readonly Use[];
  /** Of a face. */
  readonly surface?: { readonly index: number; readonly place: number };
  /** Of an edge; undefined where the edge is one point or has no curve in space. */
  readonly curve?: { readonly index: number; readonly place: number; readonly first: number; readonly last: number };
  readonly degenerate?: boolean;
  /** Of a vertex. */
  readonly point?: Vec3;
}

/** The kernel's own text of a shape: geometry and topology in tables. Numbers in the tables count from 1; place 0 moves nothing. */
export interface BrepTables {
  readonly places: readonly Placement[];
  readonly curves: readonly Curve[];
  readonly surfaces: readonly TextSurface[];
  readonly shapes: readonly TextShape[];
  readonly root: Use;
}

const NAMES = ['', 'Plane', 'Cylinder', 'Cone', 'Sphere', 'Torus', 'SurfaceOfExtrusion', 'SurfaceOfRevolution', 'BezierSurface', 'BSplineSurface', 'Trimmed', 'OffsetSurface'];

/** Words of a text one after the other. */
class Words {
  private at = 0;
  private readonly words: readonly string[];
  constructor(text: string) {
    this.words = text.split(/\s+/);
    if (this.words[0] === '') this.at = 1;
  }
  next(): string {
    const word = this.words[this.at++];
    if (word === undefined) throw new Error('the text of a shape breaks off');
    return word;
  }
  number(): number {
    return Number(this.next());
  }
  point(): Vec3 {
    return [this.number(), this.number(), this.number()];
  }
  skip(count: number): void {
    this.at += count;
  }
  numbers(count: number): number[] {
    return Array.from({ length: count }, () => this.number());
  }
}

/** The text between the line that begins with `title` and the one that begins with `next`, and the number after the title. */
const section = (text: string, title: string, next: string): { readonly count: number; readonly words: Words } => {
  const from = text.indexOf(`\n${title} `);
  const line = text.indexOf('\n', from + 1);
  const to = text.indexOf(`\n${next} `, line);
  if (from < 0 || to < 0) throw new Error(`the text of a shape has no ${title}`);
  return { count: Number(text.slice(from + title.length + 2, line)), words: new Words(text.slice(line, to)) };
};

const readCurve = (w: Words): Curve => {
  const type = w.number();
  switch (type) {
    case 1:
      return { kind: 'line', origin: w.point(), along: w.point() };
    case 2:
    case 3:
    case 4:
    case 5: {
      const origin = w.point();
      w.point();
      const [x, y] = [w.point(), w.point()];
      const size = w.number();
      const second = type === 3 || type === 5 ? w.number() : size;
      return { kind: (['circle', 'ellipse', 'parabola', 'hyperbola'] as const)[type - 2]!, origin, x, y, sizes: [size, second] };
    }
    case 6:
    case 7: {
      const rational = w.next() === '1';
      const periodic = type === 7 && w.next() === '1';
      const degree = w.number();
      const count = type === 7 ? w.number() : degree + 1;
      const knots = type === 7 ? w.number() : 2;
      const [poles, weights]: [Vec3[], number[]] = [[], []];
      for (let i = 0; i < count; i++) {
        poles.push(w.point());
        weights.push(rational ? w.number() : 1);
      }
      if (type === 6) return spline(degree, poles, weights, [0, 1], [degree + 1, degree + 1], false);
      const [values, counts]: [number[], number[]] = [[], []];
      for (let i = 0; i < knots; i++) {
        values.push(w.number());
        counts.push(w.number());
      }
      return spline(degree, poles, weights, values, counts, periodic);
    }
    case 8:
      w.skip(2);
      return readCurve(w);
    case 9: {
      const by = w.number();
      const across = w.point();
      return { kind: 'offset', by, across, of: readCurve(w) };
    }
    default:
      throw new Error(`curve of kind ${type}`);
  }
};

/** Whether the poles of each row stand on one straight line, evenly by the knots: of degree 1 each row is then a straight line too. */
const areRulings = (rows: readonly (readonly Vec3[])[], knots: readonly number[]): boolean =>
  rows.every((row) => {
    const [first, last, k0, k1] = [row[0]!, row[row.length - 1]!, knots[0]!, knots[knots.length - 1]!];
    return row.length === knots.length && row.every((p, i) => length3(sub3(p, add3(first, scale3(sub3(last, first), (knots[i]! - k0) / (k1 - k0))))) < SAME_POINT);
  });

const readSurface = (w: Words): TextSurface => {
  const type = w.number();
  const name = NAMES[type];
  if (name === undefined || type === 0) throw new Error(`surface of kind ${type}`);
  if (type <= 5) {
    const [origin, normal, x, y] = [w.point(), w.point(), w.point(), w.point()];
    if (type === 1) return { kind: 'plane', origin, normal, x, y };
    const radius = w.number();
    if (type === 2) return { kind: 'cylinder', origin, normal, x, y, radius };
    if (type === 4) return { kind: 'other', name, sphere: { centre: origin, radius } };
    w.number();
    return { kind: 'other', name };
  }
  if (type === 6 || type === 7) {
    w.skip(type === 6 ? 3 : 6);
    readCurve(w);
  } else if (type === 8) {
    const rational = [w.next(), w.next()].includes('1');
    const [u, v] = [w.number(), w.number()];
    w.skip((u + 1) * (v + 1) * (rational ? 4 : 3));
  } else if (type === 9) {
    const rational = [w.next(), w.next()].includes('1');
    w.skip(2);
    const [uDegree, vDegree, u, v, uKnots, vKnots] = w.numbers(6) as [number, number, number, number, number, number];
    const poles: Vec3[] = [];
    for (let i = 0; i < u * v; i++) {
      poles.push(w.point());
      if (rational) w.skip(1);
    }
    const values = (count: number): number[] => Array.from({ length: count }, () => w.numbers(2)[0]!);
    const [us, vs] = [values(uKnots), values(vKnots)];
    const across = Array.from({ length: v }, (_, k) => poles.filter((_, i) => i % v === k));
    const along = Array.from({ length: u }, (_, k) => poles.slice(k * v, (k + 1) * v));
    if (!rational && ((uDegree === 1 && areRulings(across, us)) || (vDegree === 1 && areRulings(along, vs)))) return { kind: 'other', name, ruled: true };
  } else if (type === 10) {
    w.skip(4);
    return readSurface(w);
  } else {
    w.skip(1);
    readSurface(w);
  }
  return { kind: 'other', name };
};

const readPlaces = (count: number, w: Words): Placement[] => {
  const places: Placement[] = [];
  for (let i = 0; i < count; i++) {
    if (w.next() === '1') {
      places.push([0, 1, 2].map(() => [w.number(), w.number(), w.number(), w.number()]));
      continue;
    }
    let product = STILL;
    for (let part = w.number(); part !== 0; part = w.number()) {
      const power = w.number();
      const base = power < 0 ? inverse(places[part - 1]!) : places[part - 1]!;
      for (let k = 0; k < Math.abs(power); k++) product = multiply(product, base);
    }
    places.push(product);
  }
  return places;
};

const readEdge = (w: Words): Pick<TextShape, 'curve' | 'degenerate'> => {
  w.skip(3);
  const degenerate = w.next() === '1';
  let curve: TextShape['curve'];
  for (let type = w.number(); type !== 0; type = w.number()) {
    if (type === 1) {
      const [index, place, first, last] = w.numbers(4) as [number, number, number, number];
      if (index > 0) curve = { index, place, first, last };
    } else if (type === 2) w.skip(5);
    else if (type === 3) {
      // the continuity follows the second curve, with or without a space between
      w.skip(1);
      if (/^\d+$/.test(w.next())) w.skip(1);
      w.skip(4);
    } else if (type === 4) w.skip(5);
    else if (type === 5) w.skip(2);
    else if (type === 6) w.skip(3);
    else if (type === 7) w.skip(4);
    else throw new Error(`edge part of kind ${type}`);
  }
  return { degenerate, ...(curve ? { curve } : {}) };
};

const readVertex = (w: Words): Pick<TextShape, 'point'> => {
  w.skip(1);
  const point = w.point();
  for (;;) {
    w.skip(1);
    const type = w.number();
    if (type === 0) return { point };
    // on a curve: curve, place; on a curve of a surface: and the surface; on a surface: second parameter, surface, place
    w.skip(type === 1 ? 2 : 3);
  }
};

const readFace = (w: Words): Pick<TextShape, 'surface'> => {
  w.skip(2);
  const [index, place] = [w.number(), w.number()];
  return { surface: { index, place } };
};

const FLAGS = /^[01]{7}$/;

const use = (word: string, place: number, count: number): Use => ({ sense: word[0] as Use['sense'], shape: count - Number(word.slice(1)), place });

const readShapes = (count: number, w: Words): { shapes: TextShape[]; root: Use } => {
  const shapes: TextShape[] = [];
  for (let i = 0; i < count; i++) {
    const kind = w.next() as TextShape['kind'];
    const own = kind === 'Ve' ? readVertex(w) : kind === 'Ed' ? readEdge(w) : kind === 'Fa' ? readFace(w) : {};
    // a triangulation may stand between a face's surface and the flags
    let flags = w.next();
    while (!FLAGS.test(flags)) flags = w.next();
    const children: Use[] = [];
    for (let word = w.next(); word !== '*'; word = w.next()) children.push(use(word, w.number(), count));
    shapes.push({ kind, children, ...own });
  }
  return { shapes, root: use(w.next(), w.number(), count) };
};

export const STILL: Placement = [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0]];

export const multiply = (a: Placement, b: Placement): Placement =>
  a.map((row) => {
    const turned = (j: 0 | 1 | 2 | 3): number => row[0] * b[0]![j] + row[1] * b[1]![j] + row[2] * b[2]![j];
    return [turned(0), turned(1), turned(2), turned(3) + row[3]];
  });

/** Of a placement without stretching: the transposed rotation. */
const inverse = (a: Placement): Placement =>
  [0, 1, 2].map((i) => [a[0]![i]!, a[1]![i]!, a[2]![i]!, -(a[0]![i]! * a[0]![3] + a[1]![i]! * a[1]![3] + a[2]![i]! * a[2]![3])] as const);

/** Reads the text that the kernel writes of a shape (its own open format, CASCADE Topology V1 or V3 without triangulations). */
export const readBrepText = (text: string): BrepTables => {
  const places = section(text, 'Locations', 'Curve2ds');
  const curves = section(text, 'Curves', 'Polygon3D');
  const surfaces = section(text, 'Surfaces', 'Triangulations');
  const from = text.indexOf('\nTShapes ');
  const line = text.indexOf('\n', from + 1);
  const count = Number(text.slice(from + 9, line));
  return {
    places: readPlaces(places.count, places.words),
    curves: Array.from({ length: curves.count }, () => readCurve(curves.words)),
    surfaces: Array.from({ length: surfaces.count }, () => readSurface(surfaces.words)),
    ...readShapes(count, new Words(text.slice(line))),
  };
};
