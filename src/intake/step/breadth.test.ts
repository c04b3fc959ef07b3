import { beforeAll, describe, expect, it } from 'vitest';
import { type Vec2, bounds, signedArea } from '../../geometry/index.js';
import { type Part, develop, profilePart, trayPart } from '../../sheet/index.js';
import { type Kernel, loadKernel } from './kernel.js';
import { foldedSolid } from './foldedSolid.js';
import { readSolids } from './readSolids.js';
import { kernelBodies, readShape, readText } from './testKernel.js';
import { stepText } from './writeStep.js';

let oc: Kernel;
let make: ReturnType<typeof kernelBodies>;
beforeAll(async () => {
  oc = await loadKernel();
  make = kernelBodies(oc);
  // the kernel knows its own settings from the first writer on
  stepText(oc, make.box([0, 0, 0], [1, 1, 1]), 'first');
}, 120_000);

/** Under load a boolean of the kernel may take seconds. */
const LONG = 60_000;
type Solid = ReturnType<typeof make.box>;

const built = <T>(made: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failure: { readonly sentence: string } }): T => {
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const solidOf = (part: Part): Solid => {
  const solid = foldedSolid(oc, develop(part, { name: 'K-factor', k: 0.5 }), part.bends.map((b) => b.bendAngle));
  if ('sentence' in solid) throw new Error(solid.sentence);
  return solid;
};
const only = (shape: Solid): Part => {
  const { parts, refused } = readShape(oc, shape);
  expect(refused.map((r) => r.sentence)).toEqual([]);
  expect(parts).toHaveLength(1);
  return parts[0]!.part;
};
// an angle of 40 and 60 outside, 2 thick, r 3: flats 35 and 55, 100 wide
const angle = (): Part => built(profilePart({ name: 'angle', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] }));
const flats = (part: Part): number[][] =>
  part.plates.map(({ outline }) => {
    const [[x0, y0], [x1, y1]] = bounds([outline]);
    return [x1 - x0, y1 - y0].map((d) => Math.round(d * 1000) / 1000).sort((a, b) => a - b);
  }).sort((a, b) => a[0]! - b[0]!);

describe('headers and units', () => {
  const SCHEMES = [['AP203', 'CONFIG_CONTROL_DESIGN'], ['AP214IS', 'AUTOMOTIVE_DESIGN'], ['AP242DIS', 'AP242']] as const;
  let made: Solid | undefined;
  const solid = (): Solid => (made ??= solidOf(angle()));
  const UNITS = [['MM', 'mm'], ['INCH', 'inch'], ['M', 'm']] as const;
  it.each(SCHEMES)('%s', (scheme, header) => {
    oc.Interface_Static.SetCVal('write.step.schema', scheme);
    try {
      const text = stepText(oc, solid(), 'angle');
      expect(text.slice(0, 2000)).toContain(header);
      expect(flats(readText(oc, text).parts[0]!.part)).toEqual([[35, 100], [55, 100]]);
    } finally {
      oc.Interface_Static.SetCVal('write.step.schema', 'AP214IS');
    }
  }, LONG);
  it.each(UNITS)('%s', (unit, word) => {
    oc.Interface_Static.SetCVal('write.step.unit', unit);
    try {
      const { part } = readText(oc, stepText(oc, solid(), 'angle')).parts[0]!;
      expect([part.unit, part.thickness]).toEqual([word, 2]);
      expect(flats(part)).toEqual([[35, 100], [55, 100]]);
    } finally {
      oc.Interface_Static.SetCVal('write.step.unit', 'MM');
    }
  }, LONG);
});

describe('a file that declares the wrong unit', () => {
  let text: string;
  const written = (): string => (text ??= stepText(oc, solidOf(angle()), 'angle'));
  const inMetres = (): string => written().replace('SI_UNIT(.MILLI.,.METRE.)', 'SI_UNIT($,.METRE.)');
  it('is read as declared, doubted with what it would be otherwise', () => {
    const { part } = readText(oc, inMetres()).parts[0]!;
    expect([part.unit, part.thickness]).toEqual(['m', 2000]);
    expect(part.assumptions).toEqual([{
      // 100 wide, 2 thick, drawn in mm; as inches 50.8 mm thick, as centimetres 20
      code: 'unit', plates: [], bends: [],
      sentence: 'The file declares metres: 2000.00 mm thick, 100000.0 mm long, which no press brake bends. Is it another unit? It would be as millimetres 2.00 mm thick, 100.0 mm long; as centimetres 20.00 mm thick, 1000.0 mm long.',
    }]);
    expect(readText(oc, written()).parts[0]!.part.assumptions).toEqual([]);
  }, LONG);
  it('is read in the unit set by hand, every length and no angle', () => {
    const bytes = new TextEncoder().encode(inMetres());
    const { part } = readSolids(oc, bytes, { fileName: 'angle.step', text: inMetres(), unit: 'mm' }).parts[0]!;
    expect([part.unit, part.thickness, part.bends[0]!.insideRadius, Math.round(part.bends[0]!.bendAngle)]).toEqual(['mm', 2, 3, 90]);
    expect(flats(part)).toEqual([[35, 100], [55, 100]]);
    expect(part.assumptions.map(({ sentence }) => sentence)).toEqual(['Read as millimetres, set by hand (the file declares metres): 2.00 mm thick, 100.0 mm long.']);
    expect(part.reading).toEqual({ from: 'step', body: 0, unit: 'mm' });
    const inches = readSolids(oc, bytes, { fileName: 'angle.step', text: inMetres(), unit: 'inch' }).parts[0]!.part;
    expect([inches.thickness, inches.bends[0]!.insideRadius, Math.round(inches.bends[0]!.bendAngle)]).toEqual([50.8, expect.closeTo(76.2, 6), 90]);
    expect(flats(inches)).toEqual([[889, 2540], [1397, 2540]]);
    // r 3 and 2 thick: a quarter of the ring between 3 and 5, and the two flats, 100 long; mm3 by the third power of 25.4
    expect(inches.volume! / (100 * (2 * 35 + 2 * 55 + 4 * Math.PI)) / 25.4 ** 3).toBeCloseTo(1, 6);
  }, LONG);
  it('has areas and volumes of the same scale, also where the kernel has to measure a wall', () => {
    const plate = make.cut(make.box([0, 0, 0], [60, 40, 2]), make.ball([30, 20, 1], 12));
    const told = stepText(oc, plate, 'plate');
    for (const [unit, mm] of [['mm', 1], ['inch', 25.4]] as const) {
      const { part } = readSolids(oc, new TextEncoder().encode(told), { fileName: 'p.step', text: told, unit }).parts[0]!;
      // both faces lie 1 from the ball's middle: circles of sqrt(144 - 1); its slab between them has 2 pi (144 - 1/3)
      expect(Math.abs(signedArea(part.plates[0]!.holes[0]!)) / mm ** 2).toBeCloseTo(Math.PI * 143, 1);
      expect(part.volume! / mm ** 3).toBeCloseTo(60 * 40 * 2 - 2 * Math.PI * (144 - 1 / 3), 0);
    }
  }, LONG);
  it('is refused with the doubt beside the reason where it is too small to be read', () => {
    const small = written().replace('SI_UNIT(.MILLI.,.METRE.)', 'SI_UNIT(.NANO.,.METRE.)');
    const { refused } = readText(oc, small);
    expect(refused[0]!.sentence).toContain('The file names nanometre as its length unit: 0.0 mm long, which no press brake bends. Is it another unit? It would be as millimetres 100.0 mm long; as inches 2540.0 mm long; as centimetres 1000.0 mm long.');
  }, LONG);
});

it('reads or refuses each of several solids by itself', () => {
  const both = make.fuse(solidOf(angle()), make.box([500, 0, 0], [550, 40, 30]));
  const { parts, refused } = readShape(oc, both);
  expect([parts.length, refused.length]).toEqual([1, 1]);
  // the writer makes a product of each solid and names it by number
  expect(parts[0]!.part.name).toMatch(/^test \d+\.[12]$/);
  expect(refused[0]).toMatchObject({ code: 'no constant thickness', faces: [expect.any(Number)] });
  expect(refused[0]!.outlines!.edges).toHaveLength(12);
  expect(refused[0]!.outlines!.marked[0]!.loops[0]).toHaveLength(4);
}, LONG);

it('keeps a bend that notches interrupt as one', () => {
  const part = angle();
  const solid = solidOf(part);
  const x = bounds([part.plates[0]!.outline]);
  const middle = (x[0][0] + x[1][0]) / 2;
  // through the whole of the curved metal and a little of both flats, 20 of the 100 wide
  const far = 1000;
  const line = part.bends[0]!.sides[0].line.from[1];
  const read = only(make.cut(solid, make.box([middle - 10, line - 6, -far], [middle + 10, line + far, 20])));
  expect(read.bends).toHaveLength(1);
  const zone = read.bends[0]!.zone;
  expect(zone).toHaveLength(2);
  expect(zone.reduce((sum, c) => sum + signedArea(c), 0)).toBeCloseTo(80, 3);
}, LONG);

it('reads a tray with mitred corners as it was made', () => {
  const tray = built(trayPart({ name: 'tray', thickness: 1, insideRadius: 1, base: [80, 60], arms: [0, 1, 2, 3].map(() => [{ length: 15, turn: 90 }, { length: 8, turn: 90 }]) }));
  const read = only(solidOf(tray));
  expect(read.bends.map((b) => [Math.round(b.bendAngle), b.insideRadius])).toEqual(Array.from({ length: 8 }, () => [90, 1]));
  const area = (part: Part): number => part.plates.reduce((sum, { outline }) => sum + signedArea(outline), 0);
  expect(area(read)).toBeCloseTo(area(tray), 2);
}, LONG);

it('takes an inside radius of nearly nothing as drawn', () => {
  const read = only(solidOf(built(profilePart({ name: 'tight', thickness: 2, insideRadius: 0.02, width: 50, flanges: [40, 60], turns: [90] }))));
  expect(read.bends[0]!.insideRadius).toBeCloseTo(0.02, 6);
  expect(read.assumptions).toEqual([]);
}, LONG);

it('reads an offset: two opposite bends with hardly a flat between', () => {
  const read = only(solidOf(built(profilePart({ name: 'offset', thickness: 1.5, insideRadius: 1, width: 50, flanges: [40, 6, 40], turns: [90, -90] }))));
  expect(read.bends.map((b) => b.direction).sort()).toEqual(['A', 'B']);
  // 6 between the two outer apexes, each r + t from its tangent line: 6 - 2 x 2.5
  expect(flats(read)[0]![0]).toBeCloseTo(1, 6);
}, LONG);

describe('what is formed into a sheet', () => {
  const sheet = (): Solid => make.box([0, 0, 0], [120, 80, 2]);
  const middle: Vec2 = [60, 40];
  const plain = (part: Part): void => {
    expect(part.plates).toHaveLength(1);
    expect(flats(part)).toEqual([[80, 120]]);
  };

  it('a dimple: raised, its crown as high as the ball that makes it', () => {
    // balls of 20 and 18 about a point 14 under the top face: the crown lies 20 - 14 = 6 over it
    const bump = make.cut(make.ball([60, 40, -12], 20), make.box([0, 0, -80], [120, 80, 1]));
    const part = only(make.cut(make.fuse(sheet(), bump), make.cut(make.ball([60, 40, -12], 18), make.box([0, 0, -80], [120, 80, -0.5]))));
    plain(part);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(part.formed).toHaveLength(1);
    expect(part.formed![0]).toMatchObject({ plate: 0, kind: 'raised' });
    expect(part.formed![0]!.height).toBeCloseTo(6, 3);
    // it begins where the ball of 20 meets the top face, 14 over its middle: a circle of sqrt(400 - 196)
    expect(Math.sqrt(signedArea(part.formed![0]!.outline) / Math.PI)).toBeCloseTo(Math.sqrt(204), 2);
    expect(part.assumptions.find((a) => a.code === 'feature left out')!.sentence).toMatch(/1 raised feature .*6\.00 mm high/);
  }, LONG);

  it('an emboss with sloping flat walls: formed, not a ring of bends', () => {
    // in section: 2 thick, up 5 over walls at 45 degrees; outside 40 x 30 at its foot
    const frustum = (low: number, high: number, in0: number, rise: number): Solid => {
      const along = make.pushed([[25 + in0, low], [55 - in0, low], [55 - in0 - rise, high], [25 + in0 + rise, high]], 0, 120);
      const across = make.pushed([[40 + in0, low], [80 - in0, low], [80 - in0 - rise, high], [40 + in0 + rise, high]].map(([y, z]): Vec2 => [y!, z!]), -200, 200);
      // the second section stands across the first: turned a quarter about the upright by reading x for y
      const turn = new oc.gp_Trsf();
      turn.SetRotation(new oc.gp_Ax1(new oc.gp_Pnt(60, 60, 0), new oc.gp_Dir(0, 0, 1)), Math.PI / 2);
      return make.common(along, across.Moved(new oc.TopLoc_Location(turn), false));
    };
    const part = only(make.cut(make.fuse(sheet(), frustum(2, 7, 0, 5)), frustum(0, 5, 2 * (Math.SQRT2 - 1), 5)));
    plain(part);
    expect(part.bends).toEqual([]);
    expect(part.formed).toHaveLength(1);
    expect(part.formed![0]!.kind).toBe('raised');
    expect(part.formed![0]!.height).toBeCloseTo(5, 6);
  }, LONG);

  it('a louvre: open at an edge, the sheet goes on under it', () => {
    // a hood 30 long, 10 wide and 5 high, open towards -y
    const hood = make.cut(make.box([45, 35, 2], [75, 45, 7]), make.box([47, 34, 0], [73, 43, 5]));
    const part = only(make.cut(make.fuse(sheet(), hood), make.box([47, 35, 0], [73, 43, 2])));
    plain(part);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(part.formed).toHaveLength(1);
    expect(part.formed![0]!.kind).toBe('opened');
    expect(part.formed![0]!.height).toBeCloseTo(5, 6);
  }, LONG);

  it('a collar: its bore stays a hole', () => {
    const part = only(make.cut(make.fuse(sheet(), make.turned([[0, 0], [7, 0], [7, 6], [0, 6]], middle)), make.turned([[0, -1], [5, -1], [5, 7], [0, 7]], middle)));
    plain(part);
    expect(part.plates[0]!.holes).toHaveLength(1);
    expect(-signedArea(part.plates[0]!.holes[0]!)).toBeCloseTo(25 * Math.PI, 3);
    expect(part.formed!.map(({ kind, height }) => [kind, height])).toEqual([['opened', 4]]);
  }, LONG);

  it('a stud: a boss on one face', () => {
    const part = only(make.fuse(sheet(), make.turned([[0, 1], [3, 1], [3, 14], [0, 14]], middle)));
    plain(part);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(part.formed!.map(({ kind, height }) => [kind, height])).toEqual([['boss', 12]]);
  }, LONG);

  it('a stand-off with a blind bore down to the face it stands on', () => {
    const post = make.turned([[0, 2], [3, 2], [3, 9], [0, 9]], middle);
    const part = only(make.cut(make.fuse(sheet(), post), make.turned([[0, 2], [1.5, 2], [1.5, 10], [0, 10]], middle)));
    plain(part);
    expect(part.formed!.map(({ kind, height }) => [kind, height])).toEqual([['boss', 7]]);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(signedArea(part.formed![0]!.outline)).toBeCloseTo(9 * Math.PI, 3);
  }, LONG);

  it('a countersink: the hole by its wider outline', () => {
    const part = only(make.cut(sheet(), make.turned([[0, -1], [2.5, -1], [2.5, 0.5], [4, 2], [4, 3], [0, 3]], middle)));
    plain(part);
    expect(-signedArea(part.plates[0]!.holes[0]!)).toBeCloseTo(16 * Math.PI, 3);
    expect(part.formed!.map(({ kind, height }) => [kind, height])).toEqual([['countersink', 0]]);
  }, LONG);

  it('a recess: no cut-out', () => {
    const part = only(make.cut(sheet(), make.box([50, 30, 1.2], [60, 40, 3])));
    plain(part);
    expect(part.plates[0]!.holes).toEqual([]);
    expect(part.formed!.map(({ kind }) => kind)).toEqual(['recess']);
    expect(part.assumptions.find((a) => a.code === 'feature left out')!.sentence).toContain('0.80 mm deep');
  }, LONG);

  it('a tab bent out of a cut-out: a bend, not a feature', () => {
    // the tab stands up at y = 30 out of the cut-out, drawn sharp
    const window = make.cut(sheet(), make.box([50, 30, -1], [70, 50, 3]));
    const part = only(make.fuse(window, make.box([50, 28, 0], [70, 30, 20])));
    expect(part.bends).toHaveLength(1);
    expect(part.formed).toBeUndefined();
  }, LONG);
});
