import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Clipper } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { dxfTrip, tripPart } from '../../bench/dxfTrips.js';
import { type Contour, flatten, signedArea } from '../geometry/index.js';
import { type DxfReading, type Part, blank, demoParts, develop, fold } from '../sheet/index.js';
import { type DxfPartResult, readDxfPart } from './readDxfPart.js';

const folder = fileURLToPath(new URL('../../../shared/parts/ProtofyTeam__OxyGEN/', import.meta.url));

type Entity = readonly (readonly [number, string | number])[];
/** A minimal drawing in millimetres: entities as group codes. */
const drawing = (...entities: readonly Entity[]): string =>
  [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES', ...entities.flatMap((entity) => entity.flat()), 0, 'ENDSEC', 0, 'EOF'].join('\n');
const line = (x0: number, y0: number, x1: number, y1: number, layer = 'CUT'): Entity => [[0, 'LINE'], [8, layer], [10, x0], [20, y0], [11, x1], [21, y1]];
const ring = (...points: readonly (readonly [number, number])[]): Entity[] => points.map((p, i) => line(...p, ...points[(i + 1) % points.length]!));
const text = (x: number, y: number, words: string): Entity => [[0, 'TEXT'], [8, 'TEXT'], [10, x], [20, y], [40, 2.5], [1, words]];

const part = (result: DxfPartResult): Part => {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value.part;
};
const read = (told: Partial<DxfReading>, ...entities: readonly Entity[]): DxfPartResult => readDxfPart(drawing(...entities), 'flat', { from: 'dxf', thickness: 1.5, ...told });

/** Area by another engine: clipper2 over chords, which lie inside the arcs by 1e-4 mm at most. */
const clipperArea = (contours: readonly Contour[]): number =>
  contours.reduce((sum, contour) => sum + Clipper.areaD(flatten(contour, 1e-4).map(([x, y]) => ({ x, y }))), 0);

/** K 0.5 and radius 1.5 at 1.5 thick: a bend of 90 degrees takes up pi/2 (1.5 + 0.75) = 3.5343 mm. */
const RULE = { name: 'K-factor', k: 0.5 } as const;
const STRIP = (Math.PI / 2) * 2.25;

describe('readDxfPart: by hand', () => {
  it('an angle: what the strip leaves of both flanges, folded up', () => {
    const it = part(read({ rule: RULE, bend: { bendAngle: 90, insideRadius: 1.5 } }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), line(0, 30, 100, 30, 'Bend up')));
    expect(it.plates.map(({ outline }) => signedArea(outline))).toEqual([expect.closeTo(100 * (50 - STRIP / 2), 6), expect.closeTo(100 * (30 - STRIP / 2), 6)]);
    const [bend] = it.bends;
    expect(bend).toMatchObject({ id: 'b1', kind: 'bend', bendAngle: 90, direction: 'A', insideRadius: 1.5 });
    // folded: the short flange's far edge stands its flat length and the bend's height above plate 0's middle plane
    const { poses } = fold(develop(it, RULE), [90]);
    const corner = it.plates[1]!.outline.map((v) => poses[1]!.o[2] + poses[1]!.x[2] * v.x + poses[1]!.y[2] * v.y);
    expect(Math.max(...corner)).toBeCloseTo(30 - STRIP / 2 + 2.25, 9);
  });

  it('holes and a notch on the line, smaller than the strip is wide: one bend, cut out by them', () => {
    const circle = (x: number, y: number, r: number): Entity => [[0, 'CIRCLE'], [8, 'CUT'], [10, x], [20, y], [40, r]];
    // two holes within the strip; one that crosses the line and the strip's upper side, 1 above the line with radius 1.5; far ones
    const holes = [circle(20, 40, 1), circle(80, 40, 1), circle(50, 41, 1.5), circle(20, 70, 3), circle(30, 10, 3)];
    const it = part(read({ rule: RULE, bend: { bendAngle: 90, insideRadius: 1.5 } }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), ...holes, line(0, 40, 100, 40, 'Bend up')));
    expect(it.bends).toHaveLength(1);
    const above = STRIP / 2 - 1;
    const beyond = 1.5 ** 2 * Math.acos(above / 1.5) - above * Math.sqrt(1.5 ** 2 - above ** 2);
    const zone = it.bends[0]!.zone.reduce((sum, contour) => sum + signedArea(contour) * STRIP, 0);
    // chords of a hundredth on the holes
    expect(Math.abs(zone - (100 * STRIP - 2 * Math.PI - (1.5 ** 2 * Math.PI - beyond)))).toBeLessThan(0.15);
    const areas = it.plates.map((plate) => [plate.outline, ...plate.holes].reduce((sum, contour) => sum + signedArea(contour), 0)).sort((a, b) => a - b);
    expect(areas[0]).toBeCloseTo(100 * (40 - STRIP / 2) - 9 * Math.PI - beyond, 2);
    expect(areas[1]).toBeCloseTo(100 * (40 - STRIP / 2) - 9 * Math.PI, 6);
  });

  it('angle, direction and radius from writing near the line, an included angle turned round', () => {
    const it = part(
      read({ rule: RULE }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), line(0, 20, 100, 20, 'Bending'), line(0, 60, 100, 60, 'Bending'),
        text(40, 21, 'UP 45%%d R2'), text(40, 61, 'down, included 120°'), text(40, 40, 'SECTION A')),
    );
    expect(it.bends.map(({ id, bendAngle, direction, insideRadius }) => ({ id, bendAngle, direction, insideRadius }))).toEqual([
      { id: 'b1', bendAngle: 45, direction: 'A', insideRadius: 2 },
      { id: 'b2', bendAngle: 60, direction: 'B', insideRadius: 1.5 },
    ]);
    const said = it.assumptions.map(({ sentence }) => sentence);
    expect(said).toContain('Bends b1, b2: bend angle as written near the line.');
    expect(said).toContain('Bend b2: no inside radius is written near; 1.5 mm is taken, the thickness.');
    expect(said).toContain('Bend b2: an included angle is written; 180 less it is the bend angle.');
  });

  it('what is told of a bend goes before what is written', () => {
    const it = part(read({ rule: RULE, bends: { b1: { bendAngle: 30, direction: 'B' } } }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), line(0, 30, 100, 30, 'Bend up'), text(40, 31, '90°')));
    expect(it.bends[0]).toMatchObject({ bendAngle: 30, direction: 'B' });
  });

  it('one line across a notch is one bend between the same plates, two where it parts a plate', () => {
    const window = ring([40, 35], [60, 35], [60, 45], [40, 45]);
    const told = { rule: RULE, bend: { bendAngle: 90, insideRadius: 1.5 } };
    const one = part(read(told, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), ...window, line(0, 40, 40, 40, 'BEND'), line(60, 40, 100, 40, 'BEND')));
    expect(one.bends).toHaveLength(1);
    expect(one.bends[0]!.zone).toHaveLength(2);
    expect(one.plates).toHaveLength(2);
    const slot = part(read(told, ...ring([0, 0], [100, 0], [100, 80], [60, 80], [60, 35], [40, 35], [40, 80], [0, 80]), line(0, 40, 100, 40, 'BEND')));
    expect(slot.bends.map(({ id }) => id)).toEqual(['b1', 'b1-2']);
    expect(slot.plates).toHaveLength(3);
  });

  it('a hole over the tangent line is shared between plate and bend', () => {
    const circle: Entity = [[0, 'CIRCLE'], [8, 'CUT'], [10, 50], [20, 42], [40, 5]];
    const told = { rule: RULE, bend: { bendAngle: 90, insideRadius: 1.5 } };
    const it = part(read(told, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), circle, line(0, 40, 100, 40, 'BEND')));
    const zone = it.bends[0]!.zone.reduce((sum, contour) => sum + signedArea(contour), 0) * STRIP;
    const whole = it.plates.reduce((sum, { outline, holes }) => sum + clipperArea([outline, ...holes]), zone);
    // chords of a hundredth on two short arcs within the bend
    expect(Math.abs(whole - (8000 - 25 * Math.PI))).toBeLessThan(0.01 * 10);
    expect(it.bends[0]!.zone).toHaveLength(2);
  });

  it('slits the metal that runs on beside a bend without a relief, and says so', () => {
    // a tab of 40 on a base of 100, the bend line in line with the base's edge
    const outline = ring([0, 0], [100, 0], [100, 50], [70, 50], [70, 80], [30, 80], [30, 50], [0, 50]);
    const it = part(read({ rule: RULE, bend: { bendAngle: 90, insideRadius: 1.5 } }, ...outline, line(30, 50, 70, 50, 'BEND')));
    expect(it.plates.map((plate) => signedArea(plate.outline))).toEqual([expect.closeTo(5000 - 40 * (STRIP / 2), 6), expect.closeTo(40 * (30 - STRIP / 2), 6)]);
    expect(it.assumptions.some(({ sentence }) => sentence.startsWith('Metal runs on beside bend b1 without a relief'))).toBe(true);
  });

  it('takes lines from edge to edge on the cut layer for bend lines, but not a loose scrap', () => {
    const it = part(read({ rule: RULE }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), line(0, 40, 100, 40), line(20, 20, 60, 20)));
    expect(it.bends).toHaveLength(1);
    expect(it.assumptions.map(({ sentence }) => sentence)).toContain('1 line that run from edge to edge inside the outline (1 on "CUT") taken as bend lines.');
  });

  it('layers are listed with a first guess, and read as told', () => {
    const drawn = [...ring([0, 0], [100, 0], [100, 80], [0, 80]), line(0, 40, 100, 40, 'X1'), line(5, 5, 9, 5, 'DIM')];
    const it = read({ rule: RULE, roles: { X1: 'bend B' } }, ...drawn);
    expect(it.seen.layers.map(({ key, role, guessed }) => [key, role, guessed])).toEqual([['CUT', 'cut', true], ['X1', 'bend B', false], ['DIM', 'ignore', true]]);
    expect(part(it).bends[0]!.direction).toBe('B');
    expect(part(read({ roles: { X1: 'ignore' } }, ...drawn)).bends).toHaveLength(0);
  });

  it('joins overlapping and doubled cut lines, arcs too', () => {
    const arc = (from: number, to: number): Entity => [[0, 'ARC'], [8, 'CUT'], [10, 50], [20, 40], [40, 10], [50, from], [51, to]];
    const it = read({}, line(0, 0, 70, 0), line(30, 0, 100, 0), line(100, 0, 100, 80), line(100, 80, 0, 80), line(0, 80, 0, 0), line(0, 0, 0, 80), arc(0, 200), arc(150, 10));
    if (!it.ok) throw new Error(it.failure.sentence);
    expect(it.value.flat.area).toBeCloseTo(8000 - 100 * Math.PI, 6);
    // 40 mm of one line, 80 of the other, 50 and 10 degrees of the circle: four places
    const twice = 40 + 80 + ((60 * Math.PI) / 180) * 10;
    expect(it.value.flat.assumptions.map(({ sentence }) => sentence)).toContain(`4 lines over others were taken once (${twice.toFixed(2)} mm drawn more than once).`);
  });

  it('refuses with code, sentence and measure', () => {
    const outline = ring([0, 0], [100, 0], [100, 80], [0, 80]);
    const refused = (result: DxfPartResult) => (result.ok ? 'read' : [result.failure.code, result.failure.sentence, result.failure.measure]);
    expect(refused(readDxfPart(drawing(...outline), 'flat'))).toEqual(['thickness not known', 'A flat drawing does not say how thick its sheet is: give the thickness in mm.', undefined]);
    expect(refused(read({ rule: RULE }, ...outline, line(0, 40, 30, 40, 'BEND')))).toEqual(['bend line ends in metal', 'Bend line b1 ends inside the metal at x 30.00, y 40.00 mm, 70.00 mm short of an edge: a bend runs from edge to edge.', 70]);
    expect(refused(read({ rule: RULE }, ...outline, line(0, 40, 100, 40, 'BEND'), line(0, 42, 100, 42, 'BEND')))).toMatchObject(['bends too close', expect.stringMatching(/^The strips of bends b1 and b2, 3\.53 and 3\.53 mm wide/), expect.closeTo(100 * (STRIP - 2), 3)]);
    expect(refused(read({ rule: RULE }, ...outline, line(0, 79, 100, 79, 'BEND')))).toMatchObject(['flange too short', expect.stringContaining('less metal than the 1.77 mm'), expect.closeTo(STRIP / 2, 9)]);
    expect(refused(read({ rule: RULE }, ...ring([0, 0], [100, 0], [100, 80], [0, 80]), ...ring([20, 20], [80, 20], [80, 60], [20, 60]), line(0, 40, 100, 40, 'BEND'), line(50, 0, 50, 80, 'BEND')))).toMatchObject(['cycle', expect.any(String), undefined]);
  });
});

describe('Part -> DXF -> Part: thickness, rule, angles, radii and directions from the writing of the file alone', () => {
  it('every benchmark and demo part', () => {
    const parts = [...benchParts().map((bench) => bench.part), ...demoParts()];
    const trips = parts.map((it) => dxfTrip(it, 0));
    expect(trips.filter(({ end }) => end !== 'same')).toEqual([]);
  });

  it('random parts, seeds 1 to 24', () => {
    for (let seed = 1; seed <= 24; seed++) expect(dxfTrip(tripPart(seed), seed), `seed ${seed}`).toMatchObject({ end: 'same' });
  });
});

describe('drawings of other people (OxyGEN, CC-BY-SA-3.0)', () => {
  // net areas and bend lines as listed with the files by an independent reading; of Upper_Cover's nine lines two lie in one (y -981.6), with a cut-out between
  const files = [
    { name: 'Base', thickness: 3, area: 136130.0, bends: 0 },
    { name: 'Electronics_Support', thickness: 3, area: 52095.2, bends: 1 },
    { name: 'Manometer_Support', thickness: 1, area: 6692.1, bends: 4 },
    { name: 'Upper_Cover', thickness: 1, area: 130071.1, bends: 8 },
  ] as const;
  for (const { name, thickness, area, bends } of files) {
    it.skipIf(!existsSync(`${folder}${name}.dxf`))(`${name}.dxf becomes a part; its blank's area within 0.02 %, by clipper2 too`, () => {
      const it = part(readDxfPart(readFileSync(`${folder}${name}.dxf`), name, { from: 'dxf', thickness }));
      expect(it.bends).toHaveLength(bends);
      expect(it.plates).toHaveLength(bends + 1);
      const flat = blank(develop(it, it.rule!));
      if (!flat.ok) throw new Error(flat.failure.sentence);
      expect(Math.abs(flat.value.area / area - 1)).toBeLessThan(2e-4);
      expect(Math.abs(clipperArea([flat.value.outline, ...flat.value.holes]) / area - 1)).toBeLessThan(2e-4);
    });
  }

  it.skipIf(!existsSync(`${folder}Manometer_Support.dxf`))('the file that lies about its unit is caught: asked, with what it would be either way', () => {
    const it = readDxfPart(readFileSync(`${folder}Manometer_Support.dxf`), 'm', { from: 'dxf', thickness: 1 });
    expect(it.seen.unit).toMatchObject({ taken: 'mm', declared: 'inch', doubted: true });
    // 115.79 by 131.60 as listed; inches would be 25.4 times that
    expect(it.seen.unit!.readings.find(({ unit }) => unit === 'inch')).toMatchObject({ size: [expect.closeTo(131.6 * 25.4, 0), expect.closeTo(115.79 * 25.4, 0)], couldBe: false });
    expect(it.seen.unit!.readings.find(({ unit }) => unit === 'mm')).toMatchObject({ size: [expect.closeTo(131.6, 1), expect.closeTo(115.79, 1)], couldBe: true });
  });
});
