import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Rigid, bounds, signedArea } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';
import { recognise } from './recognise/recognise.js';
import { bendLines, folded, platePoints, skinPoints, toSolid } from './recognise/testFold.js';
import { modelVolume } from './recognise/volume.js';
import type { Intake } from './refusal.js';
import type { Brep } from './step/brep.js';
import { type Kernel, loadKernel } from './step/kernel.js';
import { loadStep } from './step/load.js';
import { readSolids } from './step/readSolids.js';

// The parts' expected figures come from MANIFEST.tsv beside them: an independent reading, not this program's.
const ROOT = resolve('../shared/parts');
const MANIFEST = resolve(ROOT, 'MANIFEST.tsv');

interface Row {
  readonly file: string;
  readonly unit: string;
  readonly thickness: number | undefined;
  readonly bends: number;
  /** Inside radius and angle of each bend line, where the notes list them. */
  readonly lines: readonly (readonly [number, number])[];
}

const rows: readonly Row[] = existsSync(MANIFEST)
  ? readFileSync(MANIFEST, 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split('\t'))
      .filter((cells) => /\.ste?p$/i.test(cells[0]!))
      .map((cells) => ({
        file: cells[0]!,
        unit: cells[7]!,
        thickness: cells[10] ? Number(cells[10]) : undefined,
        // '2 + 1 rolled' counts three; what stands in brackets is a remark
        bends: [...cells[11]!.replace(/\(.*\)/, '').matchAll(/\d+/g)].reduce((sum, m) => sum + Number(m[0]), 0),
        lines: [...(/r_in\/angle: ([^;]*)/.exec(cells[12]!)?.[1] ?? '').matchAll(/([\d.]+)\/([\d.]+)°/g)].map((m) => [Number(m[1]), Number(m[2])] as const),
      }))
  : [];

const path = (row: Row): string => resolve(ROOT, row.file);
const present = rows.filter((row) => existsSync(path(row)));
console.log(`real files: ${present.length} found, ${rows.length === 0 ? 'list missing, all' : rows.length - present.length} skipped`);

/** To be refused, by README.md beside the parts; the codes are this program's words for the reasons given there. */
const REFUSED: Readonly<Record<string, readonly [string, number]>> = {
  'facebook__Surround360/FB360_V1_24.STEP': ['no constant thickness', 1],
  'IRNAS__KORUZA/square_tube_100x100x2.STEP': ['closed section', 1],
  'Creality3DPrinting__Ender-3/Bed_level_springs.step': ['free form', 1],
  'system76__thelio/Major-Side_1_V1.step': ['no solid', 1],
  'ONEARMY__precious-plastic-kit/SHRPRO-V1_1410.01-A_Frame.step': ['closed section', 19],
  'system76__thelio/Main-E1_V2.step': ['no constant thickness', 1],
};
/** 'It may be read as sharp-modelled bends' (README.md): two corners of 90 degrees, 5 mm thick by its name. */
const U_PROFILE = 'IRNAS__KORUZA/U_profile_100x35x5.STEP';
const OXYGEN = 'ProtofyTeam__OxyGEN/Oxygen-IP_V14.4_Metal_Sheet_1_mm_Parts.step';

interface Reading {
  readonly row: Row;
  readonly bodies: readonly Brep[];
  readonly intake: Intake;
}

const readings = new Map<string, Reading>();

beforeAll(async () => {
  if (present.length === 0) return;
  const oc: Kernel = await loadKernel();
  for (const row of present) {
    const bytes = readFileSync(path(row));
    // the kernel's mended solid is what the part is held against, whichever way the part was read
    const loaded = loadStep(oc, bytes);
    const intake = readSolids(oc, bytes, { fileName: row.file, text: bytes.toString('latin1') });
    readings.set(row.file, { row, bodies: 'bodies' in loaded ? loaded.bodies : [], intake });
  }
}, 300_000);

afterAll(() => {
  for (const { row, intake } of readings.values()) {
    const got = [
      ...intake.parts.slice(0, 1).map(({ part }) => `t ${part.thickness}, ${part.bends.length} bends: ${part.bends.map((b) => `${b.bendAngle.toFixed(1)}/r${b.insideRadius.toFixed(3)}`).join(' ')}`),
      ...intake.refused.slice(0, 1).map((r) => `refused: ${r.code}`),
    ].join('; ');
    console.log(`${row.file} | t ${row.thickness ?? '-'}, ${row.bends} | ${intake.parts.length} read, ${intake.refused.length} refused | ${got}`);
  }
});

const only = (file: string): { part: Part; root: Rigid; brep: Brep } => {
  const { bodies, intake } = readings.get(file)!;
  expect(intake.refused).toEqual([]);
  expect(intake.parts).toHaveLength(1);
  const again = recognise(bodies[0]!, { name: 'again', unit: 'mm' });
  if ('reason' in again) throw new Error(again.reason.sentence);
  return { part: intake.parts[0]!.part, root: again.frames[0]!, brep: bodies[0]! };
};

const sheets = present.filter((row) => !(row.file in REFUSED) && row.file !== OXYGEN && row.file !== U_PROFILE);

/** Modelled sharp: a radius is chosen, so the drawn figures and the solid's corners are not expected back. */
const SHARP = ['Creality3DPrinting__Ender-3/E_motor_bracket.step', 'Creality3DPrinting__Ender-3/LCD_support.step'];

describe.each(sheets)('$file', ({ file, thickness, bends, lines }) => {
  it('has the thickness, bend lines, radii and angles of the independent reading', () => {
    const { part, root } = only(file);
    expect(Math.abs(part.thickness - thickness!)).toBeLessThan(0.005);
    const found = bendLines(part, root).map(([b]) => [b!.insideRadius, b!.bendAngle] as const);
    expect(found).toHaveLength(bends);
    const key = ([r, a]: readonly [number, number]): string => `${r.toFixed(1)}/${a.toFixed(0)}`;
    if (!SHARP.includes(file)) expect(found.map(key).sort()).toEqual(lines.map(key).sort());
    // the manifest prints radii with at most three decimals
    for (const [r] of lines) expect(found.some(([own]) => Math.abs(own - r) < 0.001)).toBe(true);
  });

  it('folds back onto the solid', () => {
    const { part, root, brep } = only(file);
    if (SHARP.includes(file)) {
      // tangent lines of a chosen radius lie on no drawn edge; the flats' skins must still lie in drawn planes
      const at = folded(part, root);
      for (const [i, plate] of part.plates.entries()) {
        const frame = at.plates[i]!;
        const heights = brep.faces.flatMap(({ surface: s }) =>
          s.kind === 'plane' && Math.abs(Math.abs(s.normal[0] * frame.z[0] + s.normal[1] * frame.z[1] + s.normal[2] * frame.z[2]) - 1) < 1e-7
            ? [(s.origin[0] - frame.o[0]) * frame.z[0] + (s.origin[1] - frame.o[1]) * frame.z[1] + (s.origin[2] - frame.o[2]) * frame.z[2]]
            : [],
        );
        for (const half of [part.thickness / 2, -part.thickness / 2]) expect(Math.min(...heights.map((h) => Math.abs(h - half)))).toBeLessThan(0.01);
        expect(platePoints(plate).length).toBeGreaterThan(3);
      }
      return;
    }
    const off = skinPoints(part, root).map(({ of, p }) => ({ of, off: toSolid(brep, p) }));
    const narrowed = part.assumptions.some((a) => a.code === 'feature left out' || a.code === 'thickness varies');
    // the points come in pairs, one a skin: where a skin was narrowed to the other's outline, the other's must still fit
    const pairs = Array.from({ length: off.length / 2 }, (_, i) => [off[2 * i]!, off[2 * i + 1]!] as const);
    expect(pairs.length).toBeGreaterThan(3);
    expect(pairs.filter(([a, b]) => (narrowed ? Math.min(a.off, b.off) : Math.max(a.off, b.off)) > 0.01)).toEqual([]);
  });

  it('has the metal of the solid', () => {
    const { part } = only(file);
    const share = modelVolume(part.plates, part.bends, part.thickness) / part.volume! - 1;
    const differs = part.assumptions.some((a) => ['feature left out', 'thickness varies', 'sharp bend'].includes(a.code));
    // 2e-5: chords of a hundredth on cut-out letters; with bosses left out and radii chosen, the few per cent are stated with the part
    expect(Math.abs(share)).toBeLessThan(differs ? 0.03 : 2e-5);
  });
});

describe.each(present.filter((row) => row.file in REFUSED))('$file', ({ file }) => {
  it('is refused with its reason', () => {
    const { intake } = readings.get(file)!;
    const [code, count] = REFUSED[file]!;
    expect(intake.parts).toEqual([]);
    expect(intake.refused.map((r) => r.code)).toEqual(Array.from({ length: count }, () => code));
    expect(intake.refused.map((r) => r.index)).toEqual(Array.from({ length: count }, (_, i) => i));
    for (const { sentence, faces } of intake.refused) {
      expect(sentence).toMatch(/\d/);
      if (code === 'closed section') expect(faces).toHaveLength(2);
    }
  });
});

const has = (file: string): boolean => present.some((row) => row.file === file);

it.skipIf(!has(U_PROFILE))('reads the stock U profile as two sharp bends and says so', () => {
  const { part } = only(U_PROFILE);
  expect(part.thickness).toBeCloseTo(5, 6);
  expect(part.bends.map((b) => [Math.round(b.bendAngle), b.insideRadius])).toEqual([[90, 5], [90, 5]]);
  expect(part.assumptions.filter((a) => a.code === 'sharp bend').map((a) => a.bends)).toEqual([['b1'], ['b2']]);
  // 160 x 35 x 100 over all: legs 35 - 10 and a web of 100 - 20 between the tangent lines of r 5 in t 5. The legs slope
  // from 5 high at one end to 35 at 140, so they reach the tangent line (10 high) at 140 (10 - 5) / 30 = 23.333
  const widths = part.plates.map(({ outline }) => {
    const [[x0, y0], [x1, y1]] = bounds([outline]);
    return [x1 - x0, y1 - y0].map((d) => Math.round(d * 1000) / 1000).sort((a, b) => a - b);
  });
  expect(widths.sort((a, b) => a[0]! - b[0]!)).toEqual([[25, 136.667], [25, 136.667], [80, 160]]);
});

it.skipIf(!has(OXYGEN))('reads the eight flat solids, two of them as large as their DXF flats', () => {
  const { intake } = readings.get(OXYGEN)!;
  expect(intake.refused).toEqual([]);
  expect(intake.parts.map(({ part }) => [part.thickness, part.plates.length, part.bends.length])).toEqual(Array.from({ length: 8 }, () => [1, 1, 0]));
  const areas = intake.parts.map(({ part }) => [part.plates[0]!.outline, ...part.plates[0]!.holes].reduce((sum, c) => sum + signedArea(c), 0));
  // V/t of Upper_Cover and Manometer_Support by MANIFEST.tsv
  for (const expected of [130070.2, 6692.0]) expect(Math.min(...areas.map((a) => Math.abs(a - expected)))).toBeLessThan(0.3);
});

/** Outline size of a flat sheet, the shorter side first. */
const flatSize = (file: string): number[] => {
  const [[x0, y0], [x1, y1]] = bounds([only(file).part.plates[0]!.outline]);
  return [x1 - x0, y1 - y0].sort((a, b) => a - b);
};

it.skipIf(!has('system76__thelio/Major-Cage_1_V1.step'))('has the flats of the cage whose flat pattern others drew', () => {
  const { part } = only('system76__thelio/Major-Cage_1_V1.step');
  // README.md: 8.4 + 69.45 + 70.2 + 8.4 flats, 111 wide; a bend's line tells across which way a plate is measured
  const flats = part.plates.map((plate, i) => {
    const side = part.bends.flatMap((b) => b.sides).find((s) => s.plate === i)!;
    const [dx, dy] = [side.line.to[0] - side.line.from[0], side.line.to[1] - side.line.from[1]];
    const across = plate.outline.map((v) => (dx * (v.y - side.line.from[1]) - dy * (v.x - side.line.from[0])) / Math.hypot(dx, dy));
    return Math.max(...across) - Math.min(...across);
  });
  const expected = [8.4, 8.4, 69.45, 70.2];
  flats.sort((a, b) => a - b).forEach((flat, i) => expect(flat).toBeCloseTo(expected[i]!, 3));
});

it.skipIf(!has('system76__thelio/Major-Flat-Cage_1_V2.1.step'))('has the size of the flat patterns', () => {
  const cage = flatSize('system76__thelio/Major-Flat-Cage_1_V2.1.step');
  expect(cage[0]).toBeCloseTo(111, 2);
  expect(cage[1]).toBeCloseTo(167.31, 2);
  const bottom = flatSize('system76__thelio/Major-Major_Bottom_V2.1b_Flat_Pattern.step');
  expect(bottom[0]).toBeCloseTo(219.72, 2);
  expect(bottom[1]).toBeCloseTo(414.44, 2);
});
