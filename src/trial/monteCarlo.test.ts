import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { benchParts } from '../../bench/parts.js';
import { type Rigid, type Vec2, apply, invert } from '../geometry/index.js';
import { metalById } from '../metal/index.js';
import { type BendDeviation, type Dimension, type Feature, NO_DEVIATION, deviated, edgeAt, heightOver, readings } from '../sheet/index.js';
import { type Machine, demoFloor, demoRack } from '../shop/index.js';
import { backOf, foldTo } from './chain.js';
import { createDeviations } from './deviations.js';
import { type ErrorSource, errorSources } from './errorSources.js';
import type { Searched } from './input.js';
import { planTrial } from './planTrial.js';
import type { StrokeOption } from './strokeOption.js';
import type { Tooling } from './tooling.js';
import { type VBend, depthAt } from './vBend.js';
import { wingFrame } from './views.js';

// The twin of the tolerance chains: errors are drawn, each stroke is placed by where its fingers really meet the sheet as bent so far,
// the angle is solved from where the punch tip really stops, and the finished part is folded and measured. No slope, no chain.

const metal = metalById('dc01')!;
const machine: Machine = demoFloor().find((m) => m.id === 'general')!;
const rack = ((): ReturnType<typeof demoRack> => {
  const all = demoRack();
  return { ...all, punches: all.punches.filter((p) => ['straight-r1', 'gooseneck'].includes(p.id)), dies: all.dies.filter((d) => d.v === 12) };
})();

const SEED = 16;
const DRAWS = 2000;
/** The sample's standard deviation scatters by 1 / sqrt(2 N) of itself: four times a chance of 1 in 16,000. */
const STATISTICAL = 4 / Math.sqrt(2 * DRAWS);
/** What the second order of the largest draws may add, as a share. */
const SECOND_ORDER = 0.01;

const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Half ranges by hand, not by the code that is tested: of the demo machine 'general' and 1.5 mm of DC01 (a quarter of 0.09), and by common practice, no source. */
const HALF: Readonly<Record<string, number>> = {
  'thickness within the batch': 0.0225, 'thickness as measured beforehand': 0.02, 'strength within the batch': 0.04, 'zero of the X axis': 0.1, 'squareness of the gauge': 0.1,
  'repeatability of the ram': 0.01, 'repeatability of X': 0.04, 'repeatability of R': 0.08, 'play and touch of a finger': 0.03, 'cut of an edge': 0.1, 'holding square against one short stop': 0.1,
  'bend angle left by the test strip': 0.5, 'deduction left by the test strip': 0.1,
};

/** One part's errors: each source drawn once when it is first asked for, its half range as standard deviation. */
const drawn = (random: () => number, kinds: readonly ErrorSource['kind'][]): ((source: ErrorSource) => number) => {
  const values = new Map<string, number>();
  return (source) => {
    let value = values.get(source.id);
    if (value === undefined) {
      const half = HALF[source.what];
      if (half === undefined) throw new Error(`${source.what} has no half range by hand`);
      // drawn whether it counts or not, so that both runs see the same scatter
      const z = normal(random);
      values.set(source.id, (value = kinds.includes(source.kind) ? z * half : 0));
    }
    return value;
  };
};

/** The released bend angle when the tip stops `lower` than meant in sheet `thicker` and `stronger` than meant: the stroke's geometry, solved. Degrees */
const releasedAngle = (bend: VBend, lower: number, thicker: number, stronger: number): number => {
  const inside = bend.allowance / ((bend.bendAngleUnderLoad * Math.PI) / 180) - bend.neutral;
  const thickness = bend.thickness + thicker;
  // up of the inner apex over the die top: c tan b - (Ri + t + rd)(1 / cos b - 1) below the sheet's upper face
  const tip = (x: number): number => {
    const b = (x * Math.PI) / 360;
    return thickness - (bend.halfOpening * Math.tan(b) - (inside + thickness + bend.shoulderRadius) * (1 / Math.cos(b) - 1));
  };
  const wanted = bend.thickness - depthAt(bend, bend.bendAngleUnderLoad) - lower;
  let [low, high] = [bend.bendAngleUnderLoad - 20, bend.bendAngleUnderLoad + 20];
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (tip(middle) > wanted) low = middle;
    else high = middle;
  }
  const springback = bend.bendAngleUnderLoad - bend.bendAngle;
  return low - (springback * (1 + stronger) * bend.thickness) / thickness;
};

interface Plan {
  readonly tooling: Tooling;
  readonly options: readonly StrokeOption[];
}

/** Makes the part once with the errors of `value` and reads it. mm off the value meant, reading by reading */
const makeOnce = ({ tooling, options }: Plan, value: (source: ErrorSource) => number, dimensions: readonly Dimension[]): readonly (readonly number[])[] => {
  const { sheet, forming } = tooling;
  const { part } = sheet;
  const sources = errorSources(machine, metal, part.thickness);
  const thicker = value(sources.thickness) + value(sources.thicknessRead);
  const made = new Map<number, BendDeviation>();
  const isMade = (bend: number): boolean => made.has(bend);
  const asMade = (): typeof sheet => deviated(sheet, (b) => made.get(b) ?? NO_DEVIATION, thicker);
  const cut = (feature: Feature): number => {
    if (feature.kind !== 'edge') return 0;
    const number = edgeAt(part, feature.plate, feature.at) + 1;
    // the same edge has the same error wherever it is met
    return value(sources.edge(`edge ${number} of plate ${feature.plate}`));
  };
  for (const { setting: { seat, group }, stop, line } of options) {
    const index = group.bends[0]!;
    const bend = part.bends[index]!;
    const step = bend.id;
    const root = bend.sides[seat.gaugeSide].plate;
    const into = wingFrame(bend, seat.gaugeSide, seat.gaugeSide);
    const { feature } = stop;
    if (feature === null) throw new Error('these plans stop everywhere');
    // how far the bending plane comes to lie towards the gauge of the line meant, at each finger
    const middle = stop.z.reduce((sum, z) => sum + z, 0) / stop.z.length;
    const [real, raised] = [asMade(), value(sources.r(step))];
    const poses = foldTo(real, isMade, root, feature.plate);
    const meant = foldTo(sheet, isMade, root, feature.plate);
    const offs = stop.z.map((along, finger) => {
      const stands = backOf(sheet, meant, into, feature, along, stop.height) + value(sources.x(step)) + value(sources.xZero) + value(sources.play(step, finger)) +
        (value(sources.squareness) * (along - middle)) / 1000;
      return backOf(real, poses, into, feature, along, stop.height + raised) + cut(feature) - stands;
    });
    const slope = offs.length > 1 ? (offs[1]! - offs[0]!) / (stop.z[1]! - stop.z[0]!) : value(sources.heldSquare(step)) / stop.touching;
    const off = (along: number): number => offs[0]! + slope * (along - stop.z[0]!);
    expect(line[1]).toBeGreaterThan(line[0]);
    // the line as struck, in the root plate's own frame: from it to side 1 is to its left
    const own = bend.sides[seat.gaugeSide].line;
    const back: Rigid = invert(into);
    const struck = ([x, y]: Vec2): Vec2 => {
      const [along, b, h] = apply(into, [x, y, 0]);
      const p = apply(back, [along, b + off(along), h]);
      return [p[0], p[1]];
    };
    const [p, q, p1, q1] = [own.from, own.to, struck(own.from), struck(own.to)];
    const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const left: Vec2 = [-(q[1] - p[1]) / size, (q[0] - p[0]) / size];
    const shift = ((p1[0] + q1[0] - p[0] - q[0]) * left[0] + (p1[1] + q1[1] - p[1] - q[1]) * left[1]) / 2;
    const skew = Math.atan2(q1[1] - p1[1], q1[0] - p1[0]) - Math.atan2(q[1] - p[1], q[0] - p[0]);
    const { die, tipRadius } = forming[index]!;
    const stroke = forming[index]!.bend!;
    const setup = `V ${die.v} to ${stroke.bendAngle.toFixed(1)}, tip ${tipRadius}`;
    const angle = releasedAngle(stroke, value(sources.ram(step)), thicker, value(sources.strength)) - stroke.bendAngle + value(sources.angle(setup));
    made.set(index, { shift, skew: Math.atan2(Math.sin(skew), Math.cos(skew)), angle, deduction: value(sources.deduction(setup, forming[index]!.deduction.spread)) });
  }
  const finished = asMade();
  return dimensions.map((dimension) => readings(sheet, dimension, part.bends.map((b) => b.bendAngle)).map((reading) => {
    const [from, to] = [reading.datum.plate, reading.other.plate];
    const read = (s: typeof sheet): number => heightOver(s, foldTo(s, () => true, from, to), reading);
    return read(finished) - read(sheet) + cut(reading.other) - cut(reading.datum);
  }));
};

const planned = (id: string): Plan => {
  let searched: Searched | null = null;
  planTrial({ part: benchParts().find((b) => b.id === id)!.part, machine, rack, metal, quantity: 50 }, { onSearch: (s) => (searched = s) });
  const { tooling, result } = searched! as Searched;
  if (result.kind !== 'plan') throw new Error(`${id} has no plan`);
  return { tooling, options: result.plan.map((p) => p.option) };
};

const face = (plate: number, side: 'A' | 'B'): Feature => ({ kind: 'face', plate, side });
/** The edge of an end plate of a profile, opposite its bend: its outline's point furthest out. */
const endEdge = (plan: Plan, plate: number, bend: number): Feature => {
  const { line } = plan.tooling.sheet.part.bends[bend]!.sides.find((s) => s.plate === plate)!;
  const { outline } = plan.tooling.sheet.part.plates[plate]!;
  const far = outline.map((v) => ({ v, off: Math.abs((v.x - line.from[0]) * (line.to[1] - line.from[1]) - (v.y - line.from[1]) * (line.to[0] - line.from[0])) })).sort((a, b) => b.off - a.off);
  return { kind: 'edge', plate, at: [(far[0]!.v.x + far[1]!.v.x) / 2, (far[0]!.v.y + far[1]!.v.y) / 2] };
};

describe(`tolerance chains beside ${DRAWS} parts drawn and folded (seed ${SEED})`, () => {
  const cases: readonly (readonly [string, (plan: Plan) => readonly Dimension[]])[] = [
    ['P16', () => [{ id: 'over three bends', between: [face(0, 'B'), face(3, 'B')] }]],
    ['P3', (plan) => [
      { id: 'web to brim', between: [face(2, 'B'), face(0, 'A')] },
      { id: 'leg to leg', between: [face(1, 'A'), face(3, 'A')] },
      { id: 'brim edge to leg', between: [face(3, 'A'), endEdge(plan, 0, 0)] },
    ]],
  ];
  it.each(cases)('%s: systematic and scatter of each dimension', (id, dimensionsOf) => {
    const plan = planned(id);
    const dimensions = dimensionsOf(plan);
    const deviations = createDeviations(plan.tooling, machine, metal);
    const placed = plan.options.reduce((sum, option) => deviations.place(sum, option), new Map() as ReturnType<typeof deviations.place>);
    const deviationsOf = (kinds: readonly ErrorSource['kind'][]): readonly (readonly number[])[] => {
      const random = mulberry32(SEED);
      const squares = dimensions.map((d) => readings(plan.tooling.sheet, d, plan.tooling.sheet.part.bends.map((b) => b.bendAngle)).map(() => [0, 0]));
      for (let k = 0; k < DRAWS; k++) {
        makeOnce(plan, drawn(random, kinds), dimensions).forEach((one, d) => one.forEach((off, r) => {
          squares[d]![r]![0]! += off;
          squares[d]![r]![1]! += off * off;
        }));
      }
      return squares.map((one) => one.map(([sum, square]) => Math.sqrt(square! / DRAWS - (sum! / DRAWS) ** 2)));
    };
    const [batch, first] = [deviationsOf(['scatter']), deviationsOf(['scatter', 'systematic'])];
    dimensions.forEach((dimension, d) => {
      const told = deviations.predictDimension(dimension, placed);
      expect(told.notKnown).toEqual([]);
      const worst = batch[d]!.indexOf(Math.max(...batch[d]!));
      console.log(`${id}, ${dimension.id}: batch ${told.batch.rootSumSquare.toFixed(4)} told, ${batch[d]![worst]!.toFixed(4)} drawn; first piece ${told.firstPiece.rootSumSquare.toFixed(4)} told, ${first[d]![worst]!.toFixed(4)} drawn mm`);
      expect(Math.abs(batch[d]![worst]! / told.batch.rootSumSquare - 1)).toBeLessThan(STATISTICAL + SECOND_ORDER);
      expect(Math.abs(first[d]![worst]! / told.firstPiece.rootSumSquare - 1)).toBeLessThan(STATISTICAL + SECOND_ORDER);
    });
  });
});
