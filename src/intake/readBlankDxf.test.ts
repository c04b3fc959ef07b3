import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { signedArea } from '../geometry/index.js';
import { type BlankDxfOptions, type CutBlank, readBlankDxf } from './readBlankDxf.js';

const folder = fileURLToPath(new URL('../../../shared/parts/ProtofyTeam__OxyGEN/', import.meta.url));
const read = (text: string | Uint8Array, options?: BlankDxfOptions): CutBlank => {
  const result = readBlankDxf(text, options);
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};

/** A minimal drawing: header unit and entities as group codes. */
const drawing = (unit: number | undefined, ...entities: readonly (readonly (readonly [number, string | number])[])[]): string => {
  const lines: (string | number)[] = [];
  if (unit !== undefined) lines.push(0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, unit, 0, 'ENDSEC');
  lines.push(0, 'SECTION', 2, 'ENTITIES');
  for (const entity of entities) for (const [code, value] of entity) lines.push(code, value);
  lines.push(0, 'ENDSEC', 0, 'EOF');
  return lines.join('\n');
};
const line = (x0: number, y0: number, x1: number, y1: number, layer = '0') =>
  [[0, 'LINE'], [8, layer], [10, x0], [20, y0], [11, x1], [21, y1]] as const;
const circle = (x: number, y: number, r: number) => [[0, 'CIRCLE'], [8, '0'], [10, x], [20, y], [40, r]] as const;
const rectangle = (w: number, h: number) => [line(0, 0, w, 0), line(w, h, w, 0), line(w, h, 0, h), line(0, 0, 0, h)];

describe('readBlankDxf: by hand', () => {
  it('chains lines drawn either way, keeps holes clockwise', () => {
    const it = read(drawing(4, ...rectangle(100, 60), circle(30, 30, 5)));
    expect(it.size).toEqual([100, 60]);
    expect(it.holes).toHaveLength(1);
    expect(signedArea(it.holes[0]!)).toBeCloseTo(-25 * Math.PI, 9);
    expect(it.area).toBeCloseTo(6000 - 25 * Math.PI, 9);
    expect(it.unit).toBe('mm');
  });

  it('closes gaps within the tolerance and says the widest; not wider ones', () => {
    const open = [line(0, 0, 100, 0), line(100.03, 0, 100, 60), line(100, 60, 0, 60), line(0, 59.98, 0, 0)];
    const it = read(drawing(4, ...open));
    expect(it.assumptions.find(({ code }) => code === 'healed gap')!.sentence).toBe('2 gaps closed, the widest 0.0300 mm (up to 0.05 mm are).');
    expect(readBlankDxf(drawing(4, ...open), { gap: 0.025 })).toMatchObject({ ok: false, failure: { code: 'no outline' } });
  });

  it('keeps the arcs of polylines: a slot 40 x 10 over its round ends', () => {
    const slot = [[0, 'LWPOLYLINE'], [8, 'CUT'], [90, 4], [70, 1], [10, 0], [20, 0], [42, 0], [10, 30], [20, 0], [42, 1], [10, 30], [20, 10], [42, 0], [10, 0], [20, 10], [42, 1]] as const;
    const it = read(drawing(4, slot));
    expect(it.area).toBeCloseTo(300 + 25 * Math.PI, 9);
    expect(it.size[0]).toBeCloseTo(40, 9);
  });

  it('cuts ellipses and splines to a hundredth of a millimetre', () => {
    // ellipse 50 x 30 about the origin; a closed quadratic B-spline circle of radius 10 (rational, four arcs) as its hole
    const ellipse = [[0, 'ELLIPSE'], [8, '0'], [10, 0], [20, 0], [11, 25], [21, 0], [40, 0.6], [41, 0], [42, 2 * Math.PI]] as const;
    const w = Math.SQRT1_2;
    const points = [[10, 0], [10, 10], [0, 10], [-10, 10], [-10, 0], [-10, -10], [0, -10], [10, -10], [10, 0]];
    const spline = [
      [0, 'SPLINE'], [8, '0'], [70, 5], [71, 2], [72, 12], [73, 9],
      ...[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4].map((k) => [40, k] as const),
      ...[1, w, 1, w, 1, w, 1, w, 1].map((k) => [41, k] as const),
      ...points.flatMap(([x, y]) => [[10, x!] as const, [20, y!] as const, [30, 0] as const]),
    ] as const;
    const it = read(drawing(4, ellipse, spline));
    // chords lie inside: an area short by at most 2/3 of 0.01 mm times the perimeters (about 128 and 63 mm)
    const exact = Math.PI * 25 * 15 - 100 * Math.PI;
    expect(Math.abs(it.area - exact)).toBeLessThan(0.01 * 128);
    expect(Math.abs(signedArea(it.holes[0]!) + 100 * Math.PI)).toBeLessThan(0.0067 * 63);
    expect(it.assumptions.find(({ code }) => code === 'edge approximated')!.sentence).toMatch(/^2 splines or ellipses/);
  });

  it('puts blocks in place: mirrored, turned, in rows', () => {
    const block = ['0', 'SECTION', '2', 'BLOCKS', '0', 'BLOCK', '2', 'HOLE', '10', '1', '20', '2', '0', 'CIRCLE', '8', '0', '10', '1', '20', '2', '40', '2', '0', 'ENDBLK', '0', 'ENDSEC'].join('\n');
    const insert = [[0, 'INSERT'], [8, '0'], [2, 'HOLE'], [10, 20], [20, 20], [41, -1], [42, 1], [50, 90], [70, 3], [44, 10]] as const;
    const it = read(`${block}\n${drawing(4, ...rectangle(100, 60), insert)}`);
    // columns run along the turned x: up from (20, 20)
    expect(it.holes).toHaveLength(3);
    const middles = it.holes.map((hole) => [(hole[0]!.x + hole[1]!.x) / 2, (hole[0]!.y + hole[1]!.y) / 2]).sort((a, b) => a[1]! - b[1]!);
    [[20, 20], [20, 30], [20, 40]].forEach(([x, y], i) => {
      expect(middles[i]![0]).toBeCloseTo(x!, 9);
      expect(middles[i]![1]).toBeCloseTo(y!, 9);
    });
  });

  it('leaves bend lines and loose lines out, and says so', () => {
    const it = read(drawing(4, ...rectangle(100, 60), line(0, 20, 100, 20, 'Bending'), line(40, 30, 60, 30)));
    expect(it.layers).toEqual([
      { name: '0', edges: 5, cut: true },
      { name: 'Bending', edges: 1, cut: false },
    ]);
    expect(it.assumptions.map(({ sentence }) => sentence)).toEqual(
      expect.arrayContaining(['Taken as bend lines: layer "Bending" (1).', 'Lines that close no loop were left out: 1 on "0".']),
    );
  });

  it('takes a line drawn twice once', () => {
    const it = read(drawing(4, ...rectangle(100, 60), line(100, 0, 0, 0)));
    expect(it.area).toBeCloseTo(6000, 9);
    expect(it.assumptions.some(({ sentence }) => sentence === '1 line over others was taken once (100.00 mm drawn more than once).')).toBe(true);
  });

  it('doubts the unit', () => {
    const inches = read(drawing(1, ...rectangle(10, 6)));
    expect([inches.unit, inches.area]).toEqual(['inch', expect.closeTo(60 * 645.16, 6)]);
    const told = read(drawing(4, ...rectangle(10, 6)), { unit: 'inch' });
    expect(told.area).toBeCloseTo(60 * 645.16, 6);
    const none = read(drawing(undefined, ...rectangle(100, 60)));
    expect(none.assumptions[0]!.sentence).toBe('The file declares no unit; read as millimetres: 100.00 x 60.00 mm.');
    // 3 m wide if in inches: no sheet is
    const lies = read(drawing(1, ...rectangle(130, 120)));
    expect(lies.unit).toBe('mm');
    expect(lies.assumptions[0]!.sentence).toMatch(/declares inches, which would make a blank of 3302.00 x 3048.00 mm/);
  });

  it('refuses what has no one way round', () => {
    expect(readBlankDxf('not a drawing')).toMatchObject({ ok: false, failure: { code: 'unreadable file' } });
    expect(readBlankDxf(drawing(4, line(0, 0, 50, 1)))).toMatchObject({ ok: false, failure: { code: 'no outline' } });
    expect(readBlankDxf(drawing(4, ...rectangle(100, 60), line(0, 0, 100, 60)))).toMatchObject({ ok: false, failure: { code: 'branching lines' } });
    expect(readBlankDxf(drawing(4, ...rectangle(100, 60), circle(200, 30, 10)))).toMatchObject({ ok: false, failure: { code: 'several outlines' } });
  });
});

describe('readBlankDxf: drawings of other people (OxyGEN, CC-BY-SA-3.0), areas by an independent reading', () => {
  // net areas and boxes of the cut lines as listed with the files; they agree with flat solids of the same project
  const files = [
    { name: 'Base.dxf', area: 136130.0, size: [485.26, 283.5], holes: 13 },
    { name: 'Electronics_Support.dxf', area: 52095.2, size: [262.14, 396.0], holes: 21 },
    { name: 'Manometer_Support.dxf', area: 6692.1, size: [115.79, 131.6], holes: 2 },
    { name: 'Upper_Cover.dxf', area: 130071.1, size: [662.02, 336.52], holes: 17 },
  ] as const;
  const missing = files.filter(({ name }) => !existsSync(folder + name)).length;
  if (missing > 0) console.warn(`${missing} of ${files.length} OxyGEN drawings were not found and not tested`);

  for (const { name, area, size, holes } of files) {
    it.skipIf(!existsSync(folder + name))(`${name}: area within 0.02 %`, () => {
      const found = read(readFileSync(folder + name));
      expect(Math.abs(found.area / area - 1)).toBeLessThan(2e-4);
      expect(found.size[0]).toBeCloseTo(size[0], 1);
      expect(found.size[1]).toBeCloseTo(size[1], 1);
      expect(found.holes).toHaveLength(holes);
      expect(found.unit).toBe('mm');
    });
  }

  it.skipIf(!existsSync(folder + 'Manometer_Support.dxf'))('Manometer_Support.dxf declares inches and is drawn in millimetres: said', () => {
    const [unit] = read(readFileSync(`${folder}Manometer_Support.dxf`)).assumptions;
    expect(unit!.code).toBe('unit');
    expect(unit!.sentence).toMatch(/^The file declares inches, .* Read as millimetres: 131\.\d\d x 115\.\d\d mm\.$/);
  });
});
