import { parseString } from 'dxf';
import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { type Contour, bounds, reversed, signedArea, vertex } from '../geometry/index.js';
import { type Blank, type Part, blank, demoParts, develop } from '../sheet/index.js';
import { blankDxf } from './blankDxf.js';
import { blankPicture } from './blankPicture.js';
import { blankSvg } from './blankSvg.js';

const flat = (part: Part): Blank => {
  const result = blank(develop(part, { name: 'K-factor', k: 0.44 }));
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};
const bench = (id: string): Part => benchParts().find((it) => it.id === id)!.part;
const ALL: readonly Part[] = [...benchParts().map(({ part }) => part), ...demoParts()];

/** The written drawing read by another package: cut contours, bend lines by layer, in the file's own numbers. */
const readBack = (text: string) => {
  const file = parseString(text);
  const cut = file.entities
    .filter((it) => it.type === 'LWPOLYLINE' && it.layer === 'CUT')
    .map((it): Contour => {
      expect(it.closed).toBe(true);
      return it.vertices!.map((v) => vertex(v.x!, v.y!, v.bulge ?? 0));
    });
  const bends = file.entities.filter((it) => it.type === 'LINE');
  return { file, cut, bends };
};

it('the blank\'s picture without its sizes is drawn larger in the same room', () => {
  const drawn = (sizes: boolean): { readonly height: number; readonly dimensions: number } => {
    const { items } = blankPicture(flat(bench('P16')), { width: 68, height: 15, sizes });
    const outline = items.find((item) => item.kind === 'polyline')!;
    const ys = outline.kind === 'polyline' ? outline.points.map(([, y]) => y) : [];
    return { height: Math.max(...ys) - Math.min(...ys), dimensions: items.filter((item) => item.kind === 'group').length };
  };
  expect([drawn(true).height, drawn(false).height].map((height) => Math.round(height))).toEqual([5, 11]);
  expect([drawn(true).dimensions, drawn(false).dimensions]).toEqual([2, 0]);
});

describe('blankDxf read back by the dxf package', () => {
  it('has the area, sides and hole count of the blank, in millimetres, for every part', () => {
    for (const part of ALL) {
      const it = flat(part);
      const { file, cut, bends } = readBack(blankDxf(it, { rule: 'K-factor 0.44' }));
      expect(file.header.insUnits, part.name).toBe(4);
      expect(file.header.measurement, part.name).toBe(1);
      expect(cut, part.name).toHaveLength(1 + it.holes.length);
      expect(cut.reduce((sum, ring) => sum + signedArea(ring), 0), part.name).toBeCloseTo(it.area, 3);
      const [low, high] = bounds(cut);
      expect(low[0], part.name).toBeCloseTo(0, 6);
      expect(low[1], part.name).toBeCloseTo(0, 6);
      expect(high[0], part.name).toBeCloseTo(it.length, 6);
      expect(high[1], part.name).toBeCloseTo(it.width, 6);
      expect(bends, part.name).toHaveLength(part.bends.length);
      for (const line of bends) {
        expect(line.layer).toMatch(/^BEND-[AB]$/);
        for (const p of [line.start!, line.end!]) expect(p.x! > -1e-6 && p.y! > -1e-6 && p.x! < it.length + 1e-6 && p.y! < it.width + 1e-6, part.name).toBe(true);
      }
    }
  });

  it('by hand: P1 has its bend line at half the allowance, on the layer of its side, with words', () => {
    // flats 37 and 57, a = pi/2 (1.5 + .66) = 3.3929; 100 along x, the bend line 37 + 1.6965 up
    const text = blankDxf(flat(bench('P1')), { rule: 'K-factor 0.44' });
    const { bends } = readBack(text);
    const a = (Math.PI / 2) * 2.16;
    expect(bends[0]!.layer).toBe('BEND-A');
    expect(bends[0]!.start!.y).toBeCloseTo(37 + a / 2, 6);
    expect(Math.abs(bends[0]!.end!.x! - bends[0]!.start!.x!)).toBeCloseTo(100, 6);
    expect(text).toContain('b1 A bend 90%%d');
    expect(text).toContain('P1 angle 40 + 60, 1.5 mm thick, A side up. Nominal by rule K-factor 0.44.');
    expect(blankDxf(flat(bench('P1')))).not.toContain('Nominal');
  });

  it('keeps arcs as bulges and bends of both sides on layers of their own', () => {
    const bracket = demoParts()[0]!;
    const { cut } = readBack(blankDxf(flat(bracket)));
    // four rounds; one round hole of two half arcs, two more, a slot with two ends
    expect(cut.flat().filter((v) => v.bulge !== 0)).toHaveLength(4 + 3 * 2 + 2);
    const layers = readBack(blankDxf(flat(bench('P4')))).bends.map((line) => line.layer);
    expect(layers.filter((name) => name === 'BEND-A')).toHaveLength(3);
    expect(layers.filter((name) => name === 'BEND-B')).toHaveLength(3);
  });

  it('turns a blank that lies askew along x, without mirroring it', () => {
    const it = flat(bench('P5')); // its length runs along y of plate 0
    expect(it.angle).toBe(90);
    const [ring] = readBack(blankDxf(it)).cut;
    expect(signedArea(ring!)).toBeGreaterThan(0);
    expect(signedArea(reversed(ring!))).toBeLessThan(0);
  });
});

describe('blankSvg', () => {
  const svg = blankSvg(flat(bench('P4')), { rule: 'K-factor 0.44' });

  it('says that it is nominal and by which rule, only where it is', () => {
    expect(svg).toContain('Blank, nominal by rule K-factor 0.44');
    expect(blankSvg(flat(bench('P4')))).not.toContain('ominal');
  });

  it('shows the overall sizes, each bend line with id, letter and bend angle', () => {
    // P4: 200 long; 7 x 25 less 6 deductions of 2.6071 = 159.36 wide
    expect(svg).toContain('>200.00<');
    expect(svg).toContain('>159.36<');
    for (const words of ['b1 A bend 90°', 'b2 B bend 90°', 'b6 B bend 90°']) expect(svg).toContain(words);
  });

  it('draws bend lines towards A in long dashes and towards B in short ones', () => {
    const dashes = [...svg.matchAll(/<path d="((?:M[\d. ]+L[\d. ]+)+)"/g)].map((m) => m[1]!.split('M').filter(Boolean).map((piece) => piece.split(/[ L]/).map(Number)));
    const first = (group: number[][]): number => Math.hypot(group[0]![2]! - group[0]![0]!, group[0]![3]! - group[0]![1]!);
    const lengths = dashes.filter((group) => group.length > 5).map(first).map((x) => Number(x.toFixed(2)));
    expect(lengths).toEqual([8, 2.5, 8, 2.5, 8, 2.5]);
  });

  it('keeps everything on the sheet', () => {
    for (const part of ALL) {
      const drawn = blankSvg(flat(part), { rule: 'DIN 6935' });
      for (const [, x, y] of drawn.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        expect(Number(x) >= 0 && Number(x) <= 297 && Number(y) >= 0 && Number(y) <= 210, part.name).toBe(true);
      }
    }
  });
});
