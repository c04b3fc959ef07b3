import { describe, expect, it } from 'vitest';
import { type Contour, bounds, signedArea, vertex } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { type Recognised, recognise } from './recognise.js';
import { type Step, extruded, strip } from './testBodies.js';
import { skinPoints, toSolid } from './testFold.js';
import { modelVolume } from './volume.js';

const options = { name: 'test', unit: 'mm' as const };
const polygon = (...points: readonly (readonly [number, number])[]): Contour => points.map(([x, y]) => vertex(x, y));

const read = (brep: Brep, more: { sharpRadius?: number } = {}): Recognised => {
  const result = recognise(brep, { ...options, ...more });
  if ('reason' in result) throw new Error(result.reason.sentence);
  return result;
};

const refuse = (brep: Brep): { code: string; sentence: string; faces: readonly number[] } => {
  const result = recognise(brep, options);
  if (!('reason' in result)) throw new Error('it was read');
  return result.reason;
};

/** [width, depth] of each plate's outline, the shorter first, in the order of the widths. */
const sizes = ({ part }: Recognised): number[][] =>
  part.plates
    .map(({ outline }) => {
      const [[x0, y0], [x1, y1]] = bounds([outline]);
      return [x1 - x0, y1 - y0].map((d) => Math.round(d * 1e6) / 1e6).sort((a, b) => a - b);
    })
    .sort((a, b) => a[0]! - b[0]!);

describe('bent strips of known section', () => {
  // flats and turns are the section itself, so they are what must come back
  const cases: readonly (readonly [string, number, readonly Step[]])[] = [
    ['angle of 90 degrees', 2, [30, { angle: 90, radius: 3 }, 50]],
    ['acute: bend angle 120', 1.5, [30, { angle: 120, radius: 2 }, 50]],
    ['blunt: bend angle 20', 3, [30, { angle: -20, radius: 3 }, 50]],
    ['Z of two directions', 1, [20, { angle: 90, radius: 1 }, 15, { angle: -90, radius: 1 }, 25]],
    ['channel', 2, [30, { angle: 90, radius: 2 }, 60, { angle: 90, radius: 2 }, 31]],
    // the inside radius of the first bend equals the outside radius of the second
    ['radius 3 in, radius 3 out', 2, [20, { angle: 90, radius: 3 }, 40, { angle: 90, radius: 1 }, 21]],
    ['hem of 180 degrees', 1.5, [60, { angle: 180, radius: 0.75 }, 12]],
    ['half circle of radius 60', 2, [20, { angle: 180, radius: 60 }, 21]],
  ];
  it.each(cases)('%s', (_, thickness, steps) => {
    const brep = extruded([strip(thickness, steps)], 80);
    const result = read(brep);
    const { part, frames } = result;
    const flats = steps.filter((s): s is number => typeof s === 'number');
    const turns = steps.filter((s): s is { angle: number; radius: number } => typeof s !== 'number');
    expect(part.thickness).toBeCloseTo(thickness, 6);
    expect(sizes(result)).toEqual(flats.map((l) => [l, 80].sort((a, b) => a - b)).sort((a, b) => a[0]! - b[0]!));
    const key = (angle: number, radius: number): string => `${angle.toFixed(4)} r ${radius.toFixed(4)}`;
    expect(part.bends.map((b) => key(b.bendAngle, b.insideRadius)).sort()).toEqual(turns.map((t) => key(Math.abs(t.angle), t.radius)).sort());
    // one direction for turns to one hand, the other for the other
    const hands = new Set(turns.map((t) => Math.sign(t.angle)));
    expect(new Set(part.bends.map((b) => b.direction)).size).toBe(hands.size);
    for (const { of, p } of skinPoints(part, frames[0]!)) expect(toSolid(brep, p), of).toBeLessThan(1e-6);
    for (const plate of part.plates) expect(signedArea(plate.outline)).toBeGreaterThan(0);
    // the extrusion's volume is its section's area times its length: nothing of it may be missing or counted twice
    expect(modelVolume(part.plates, part.bends, part.thickness) / brep.volume).toBeCloseTo(1, 9);
  });

  it('gives kinds by radius and angle', () => {
    const kinds = (steps: readonly Step[], t: number): string[] => read(extruded([strip(t, steps)], 80)).part.bends.map((b) => b.kind);
    expect(kinds([30, { angle: 90, radius: 3 }, 50], 2)).toEqual(['bend']);
    expect(kinds([60, { angle: 180, radius: 0.75 }, 12], 1.5)).toEqual(['hem']);
    expect(kinds([20, { angle: 180, radius: 60 }, 21], 2)).toEqual(['rolled']);
  });

  it('gives lines the sense that the part asks for', () => {
    const { part } = read(extruded([strip(1, [20, { angle: 90, radius: 1 }, 15, { angle: -90, radius: 1 }, 25])], 80));
    for (const { sides } of part.bends) {
      sides.forEach(({ plate, line }, end) => {
        const [[x0, y0], [x1, y1]] = bounds([part.plates[plate]!.outline]);
        const [mx, my] = [(x0 + x1) / 2 - line.from[0], (y0 + y1) / 2 - line.from[1]];
        const left = (line.to[0] - line.from[0]) * my - (line.to[1] - line.from[1]) * mx;
        // plate 0 lies to the right of its line, plate 1 to the left of its own
        expect(Math.sign(left)).toBe(end === 0 ? -1 : 1);
        expect(Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])).toBeCloseTo(80, 9);
      });
    }
  });
});

describe('bends drawn sharp', () => {
  // outside 40 x 60, thickness 2: the mould lines stay, so each flat is the outside length less (r + t) tan 45
  const angle = extruded([polygon([0, 0], [40, 0], [40, 2], [2, 2], [2, 60], [0, 60])], 100);

  it('takes the thickness as radius and says so', () => {
    const result = read(angle);
    expect(sizes(result)).toEqual([[36, 100], [56, 100]]);
    expect(result.part.bends.map((b) => [b.bendAngle, b.insideRadius])).toEqual([[90, 2]]);
    expect(result.part.assumptions.map((a) => a.code)).toEqual(['sharp bend']);
  });

  it('takes the radius that is asked for', () => {
    expect(sizes(read(angle, { sharpRadius: 0.5 }))).toEqual([[37.5, 100], [57.5, 100]]);
  });

  it('keeps the outside faces where they were drawn', () => {
    const { part, frames } = read(angle);
    // the outside faces are x = 0 and y = 0: no skin point of the folded part lies beyond, some lie on each
    const points = skinPoints(part, frames[0]!).map(({ p }) => p);
    expect(Math.min(...points.map((p) => p[0]))).toBeCloseTo(0, 9);
    expect(Math.min(...points.map((p) => p[1]))).toBeCloseTo(0, 9);
    expect(Math.max(...points.map((p) => p[0]))).toBeCloseTo(40, 9);
    expect(Math.max(...points.map((p) => p[1]))).toBeCloseTo(60, 9);
  });

  it('takes a drawn inside radius though the outside is sharp', () => {
    const b = -Math.tan(Math.PI / 8);
    const section: Contour = [vertex(0, 0), vertex(40, 0), vertex(40, 2), vertex(5, 2, b), vertex(2, 5), vertex(2, 60), vertex(0, 60)];
    const result = read(extruded([section], 100));
    expect(result.part.bends[0]!.insideRadius).toBeCloseTo(3, 9);
    expect(sizes(result)).toEqual([[35, 100], [55, 100]]);
    expect(result.part.assumptions[0]!.code).toBe('sharp bend');
  });

  it('takes an outside radius of one thickness over a sharp inside as sharp', () => {
    const b = -Math.tan(Math.PI / 8);
    const section: Contour = [vertex(2, 0), vertex(40, 0), vertex(40, 2), vertex(2, 2), vertex(2, 60), vertex(0, 60), vertex(0, 2, -b)];
    expect(sizes(read(extruded([section], 100)))).toEqual([[36, 100], [56, 100]]);
  });
});

describe('hems', () => {
  // layer on layer in one body: the sheet 60 long up to the tangent line, the fold a half circle of radius t, the hem back to 48
  const fused: Contour = [vertex(0, 0), vertex(60, 0, 1), vertex(60, 3), vertex(48, 3), vertex(48, 1.5), vertex(0, 1.5)];

  it('drawn fully closed, layer on layer, is opened by the least gap', () => {
    const result = read(extruded([fused], 100));
    expect(sizes(result)).toEqual([[12, 100], [60, 100]]);
    const [bend] = result.part.bends;
    expect(bend).toMatchObject({ kind: 'hem', insideRadius: 0.1 });
    expect(bend!.bendAngle).toBeCloseTo(180, 6);
    expect(result.part.assumptions.map(({ code, bends }) => [code, bends])).toEqual([['bend radius', ['b1']]]);
    expect(result.part.volume).toBeCloseTo(100 * (60 * 1.5 + 12 * 1.5 + (Math.PI * 1.5 ** 2) / 2), 6);
  });

  it('drawn fully closed at both ends of a bent part', () => {
    // an angle, r 2 inside and t 1.5; each flange ends in a hem outside: the half circles stand about (60, 0) and (0, 40)
    const [t, b] = [1.5, Math.tan(Math.PI / 8)];
    const section: Contour = [
      vertex(2 + t, 0), vertex(50, 0), vertex(50, -t), vertex(60, -t, 1), vertex(60, t), vertex(2 + t, t, -b),
      vertex(t, 2 + t), vertex(t, 40, 1), vertex(-t, 40), vertex(-t, 32), vertex(0, 32), vertex(0, 2 + t, b),
    ];
    const result = read(extruded([section], 100));
    expect(sizes(result)).toEqual([[8, 100], [10, 100], [36.5, 100], [56.5, 100]]);
    expect(result.part.bends.map((bend) => bend.kind).sort()).toEqual(['bend', 'hem', 'hem']);
  });

  it('of tear-drop shape: turned by more than 180 degrees, its flange back towards the sheet', () => {
    const result = read(extruded([strip(1, [40, { angle: 215, radius: 3 }, 5])], 80));
    expect(sizes(result)).toEqual([[5, 80], [40, 80]]);
    expect(result.part.bends[0]).toMatchObject({ kind: 'hem', insideRadius: 3 });
    expect(result.part.bends[0]!.bendAngle).toBeCloseTo(215, 4);
  });
});

describe('a thickness that varies a little', () => {
  // an angle of r 3: one flange 2.00 thick, the other `thick`; the bend's outside rounded by itself, r 5, so about another axis than its inside
  const angle = (thick: number): Contour => {
    const b = Math.tan(Math.PI / 8);
    return [vertex(7 - thick, 0), vertex(60, 0), vertex(60, 2), vertex(5, 2, -b), vertex(2, 5), vertex(2, 40), vertex(2 - thick, 40), vertex(2 - thick, 5, b)];
  };

  it('is healed within 3 per cent, and said with both figures', () => {
    const result = read(extruded([angle(2.04)], 100));
    expect(result.part.thickness).toBe(2);
    expect(sizes(result)).toEqual([[35, 100], [55, 100]]);
    const said = result.part.assumptions.filter(({ sentence }) => sentence.includes('back to back'));
    expect(said.map(({ sentence }) => sentence)).toEqual([expect.stringMatching(/2\.040 mm .*2\.00 mm/)]);
    expect(said[0]!.plates).toEqual([1]);
  });

  it('is refused beyond, with the measure', () => {
    expect(refuse(extruded([angle(2.4)], 100)).code).toBe('no constant thickness');
  });
});

describe('refusals', () => {
  it('a closed tube, with the two faces that close it', () => {
    const square = (a: number, b: number): Contour => polygon([a, a], [b, a], [b, b], [a, b]);
    const { code, faces } = refuse(extruded([square(0, 40), [...square(2, 38)].reverse()], 100));
    expect(code).toBe('closed section');
    expect(faces).toHaveLength(2);
  });

  it('a block', () => {
    expect(refuse(extruded([polygon([0, 0], [40, 0], [40, 30], [0, 30])], 50)).code).toBe('no constant thickness');
  });

  it('a plate with a rib', () => {
    const rib = polygon([0, 0], [60, 0], [60, 2], [31, 2], [31, 20], [29, 20], [29, 2], [0, 2]);
    expect(refuse(extruded([rib], 100)).code).toBe('no constant thickness');
  });

  it('an open shell', () => {
    const brep = extruded([strip(2, [30, { angle: 90, radius: 3 }, 50])], 80);
    expect(refuse({ ...brep, faces: brep.faces.slice(1) }).code).toBe('open shell');
    expect(refuse({ ...brep, solid: false }).code).toBe('open shell');
  });

  it('a curl that ends on no plate', () => {
    const { code, sentence } = refuse(extruded([strip(1, [40, { angle: 200, radius: 4 }])], 80));
    expect(code).toBe('bend without plate');
    expect(sentence).toContain('4.00 mm');
  });
});

it('reads a flat sheet as one plate', () => {
  const result = read(extruded([polygon([0, 0], [60, 0], [60, 1.6], [0, 1.6])], 100));
  expect(sizes(result)).toEqual([[60, 100]]);
  expect(result.part.bends).toEqual([]);
  expect(result.part.assumptions).toEqual([]);
});
