import { type Rigid, compose, invert } from '../geometry/index.js';
import { sideFrame } from './bendShape.js';
import type { Element } from './element.js';
import { type Kernel, boxSolid, matrixOf } from './engine.js';
import { filledSpans } from './metalSpans.js';
import type { Metal } from './metal.js';
import type { Setting } from './setting.js';
import { mm } from './stepLog.js';
import { FLANGE_MARGIN, FLANGE_MEASURING, OFFSET_HOLD, SLIT } from './tolerances.js';
import { wingStart } from './vee.js';

/** mm past the tangent line to where the metal must lie flat, and over how much of the line at a time it may fall short. */
interface Asked {
  readonly reach: number;
  readonly run: number;
  readonly by: string;
}

/**
 * In a V: past where the shoulder's arc meets the die's top while the sheet lies flat, and past where the wing bears on that arc
 * under load: the foot of the arc's centre on the wing, seen in the poses of the replay.
 */
const askedOf = (setting: Setting, metal: Metal): Asked => {
  const { vee, die, load, sheet, first } = setting;
  if (setting.offset) return { reach: OFFSET_HOLD * sheet.part.thickness, run: 2 * OFFSET_HOLD * sheet.part.thickness, by: die.name };
  const shape = metal.shapes[first]!;
  const [back, up] = wingStart(vee, shape, load);
  const b = load / 2;
  const bears = (vee.c - back) * Math.cos(b) + (vee.top - vee.shoulder - up) * Math.sin(b);
  return { reach: Math.max(vee.c - shape.a / 2, bears) + FLANGE_MARGIN * 2 * vee.c, run: die.v, by: die.name };
};

/** Metal that goes on flat with its wing: plates, and the bends between two of them. */
const flatElements = (setting: Setting): readonly Element[] => {
  const plates = new Set([...setting.level].filter((e) => e.kind === 'plate').map((e) => e.index));
  return [...setting.level].filter((e) => !e.running && (e.kind === 'plate' || setting.sheet.part.bends[e.index]!.sides.every((s) => plates.has(s.plate))));
};

/** From where to where along the line no metal covers the strip from the tangent line out to `reach`, in the frame of the line. */
const gapsOf = (kernel: Kernel, setting: Setting, flats: readonly Element[], line: Rigid, away: 1 | -1, [u0, u1]: readonly [number, number], reach: number): (readonly [number, number])[] => {
  const quarter = setting.sheet.part.thickness / 4;
  const ends = [away * FLANGE_MEASURING, away * reach] as const;
  const strip = boxSolid(kernel, [u0, Math.min(...ends), -quarter], [u1, Math.max(...ends), quarter]);
  const placed = flats.map((e) => e.solid(setting.before, 0, true).transform(matrixOf(compose(line, e.rel))));
  const bare = placed.length === 0 ? strip.translate([0, 0, 0]) : kernel.Manifold.difference([strip, ...placed]);
  const parts = bare.decompose();
  const gaps = parts.flatMap((part) => {
    const { min, max } = part.boundingBox();
    const [wide, furthest] = [max[1] - min[1], away === 1 ? max[1] : -min[1]];
    const crossed = wide < SLIT && furthest < reach - FLANGE_MEASURING;
    return wide < FLANGE_MEASURING || crossed ? [] : [[min[0], max[0]] as const];
  });
  for (const made of [strip, bare, ...placed, ...parts]) made.delete();
  return gaps.sort((p, q) => p[0] - q[0]);
};

/** Lengths of the gaps, those that overlap taken as one. mm */
const runsOf = (gaps: readonly (readonly [number, number])[]): number[] => {
  const joined: [number, number][] = [];
  for (const [from, to] of gaps) {
    const last = joined[joined.length - 1];
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined.map(([from, to]) => to - from);
};

/**
 * Beside every bend of the stroke the metal lies flat as far as the tools ask, holes filled: it may fall short over one opening of
 * the V at a time and over half of each piece of the bend in all (docs/planner.md).
 */
export const flangeFindings = (kernel: Kernel, setting: Setting, metal: Metal): string[] => {
  if (setting.closes) return [];
  const { step, sheet } = setting;
  const { reach, run, by } = askedOf(setting, metal);
  const flats = flatElements(setting);
  const findings: string[] = [];
  for (const i of setting.running) {
    const bend = sheet.part.bends[i]!;
    for (const [side, { plate, line }] of bend.sides.entries()) {
      const root = setting.elements.find((e) => e.kind === 'plate' && e.index === plate);
      if (root === undefined || plate === setting.offset?.web) continue;
      const frame = invert(compose(root.rel, sideFrame(line)));
      const near = flats.filter((e) => e.wing === root.wing);
      for (const span of filledSpans(bend.zone)) {
        const runs = runsOf(gapsOf(kernel, setting, near, frame, side === 1 ? 1 : -1, span, reach - FLANGE_MEASURING));
        const all = runs.reduce((sum, r) => sum + r, 0);
        if (all <= (span[1] - span[0]) / 2 + FLANGE_MEASURING && runs.every((r) => r <= run + FLANGE_MEASURING)) continue;
        findings.push(`Step ${step.number}: ${root.name} reaches less than ${mm(reach)} mm from the tangent line of ${bend.id} over ${mm(all)} mm of it; ${by} asks ${mm(reach)} mm, but for ${mm(run)} mm at a time and half of the line.`);
      }
    }
  }
  return findings;
};
