import { allowanceByRule, deductionFrom, mouldLineSetback, pressingForce, textbookForce } from '../forming/index.js';
import { unit2, sub2, cross2 } from '../geometry/index.js';
import type { Metal } from '../metal/index.js';
import type { Bend, Part } from '../sheet/index.js';
import { type Die, type Machine, type OffsetForm, type Punch, type Rack, bendsInV } from '../shop/index.js';
import { airBendKept } from './airBendKept.js';
import { V_LEAST, V_MOST } from './limits.js';
import { widthAcross } from './offsetBend.js';
import { strongestSheet } from './strongestSheet.js';
import type { Reason } from './trial.js';

/** Two opposite bends of one angle and radius on either side of a narrow web, made in one stroke of an offset tool. */
export interface Offset {
  /** Index of both bends; the first has the lower number. */
  readonly bends: readonly [number, number];
  /** The plate between them. */
  readonly web: number;
  /** What the tool makes, and the pairs of the rack that make it. */
  readonly form: OffsetForm;
  readonly tools: readonly { readonly punch: Punch; readonly die: Die }[];
  readonly forcePerLength: number;
}

/** Two bends are of one angle (degrees) and radius (mm), their lines parallel (sine), their ends level (mm), within these: rounding in drawings. */
const SAME_ANGLE = 0.1;
const SAME_RADIUS = 0.05;
const PARALLEL = 1e-3;
const SAME_END = 0.1;
/** Degrees: offset tools make square steps; and mm by which a tool's height may miss the drawn one. Common practice, no source. */
const SQUARE = 90;
const SAME_HEIGHT = 0.1;
/** V over thickness of the air bend that the factor for an offset is told against. Common practice, no source. */
const REFERENCE_V = 8;

/** Where a bend's metal begins and ends along its line, on the web. */
const endsOn = (bend: Bend, web: number, along: readonly [number, number]): readonly [number, number] => {
  const { line } = bend.sides.find((s) => s.plate === web)!;
  const u = unit2(sub2(line.to, line.from));
  const us = bend.zone.flat().map((v) => v.x);
  const places = [Math.min(...us), Math.max(...us)].map((x) => (line.from[0] + u[0] * x) * along[0] + (line.from[1] + u[1] * x) * along[1]);
  return [Math.min(...places), Math.max(...places)];
};

/** Plates between two opposite, parallel and equal bends, with nothing else hanging on them. */
const websOf = (part: Part): readonly Pick<Offset, 'bends' | 'web'>[] => part.plates.flatMap((_, web) => {
  const on = part.bends.flatMap((b, i) => (b.sides.some((s) => s.plate === web) ? [i] : []));
  if (on.length !== 2) return [];
  const [a, b] = on.map((i) => part.bends[i]!) as [Bend, Bend];
  const way = (bend: Bend): readonly [number, number] => {
    const { line } = bend.sides.find((s) => s.plate === web)!;
    return unit2(sub2(line.to, line.from));
  };
  const along = way(a);
  const [endsA, endsB] = [endsOn(a, web, along), endsOn(b, web, along)];
  const alike = a.kind === 'bend' && b.kind === 'bend' && !a.hit && !b.hit && a.direction !== b.direction && a.zone.length === 1 && b.zone.length === 1 &&
    Math.abs(a.bendAngle - b.bendAngle) < SAME_ANGLE && Math.abs(a.insideRadius - b.insideRadius) < SAME_RADIUS && Math.abs(cross2(along, way(b))) < PARALLEL &&
    Math.abs(endsA[0] - endsB[0]) < SAME_END && Math.abs(endsA[1] - endsB[1]) < SAME_END;
  return alike ? [{ bends: [on[0]!, on[1]!] as const, web }] : [];
});

interface Asked {
  /** mm, outside, from mould line to mould line: the web as drawn. */
  readonly outside: number;
  /** mm from face to face of the outer flanges: the step. */
  readonly height: number;
}

const askedOf = (part: Part, { bends: [first], web }: Pick<Offset, 'bends' | 'web'>): Asked => {
  const { insideRadius, bendAngle, sides } = part.bends[first]!;
  const outside = widthAcross({ part }, web, sides.find((s) => s.plate === web)!.line) + 2 * mouldLineSetback(insideRadius, part.thickness, bendAngle);
  const x = (bendAngle * Math.PI) / 180;
  // of lengths kept to the mould lines the radius takes nothing: they lie on opposite faces of the sheet
  return { outside, height: outside * Math.sin(x) - part.thickness * (1 - Math.cos(x)) };
};

/** The shortest web, outside, that a V of the rack takes of these two bends when they are made one by one; null where no V bends them. */
const leastWeb = (part: Part, { bends: [first] }: Pick<Offset, 'bends'>, metal: Metal, machine: Machine, rack: Rack): { readonly die: Die; readonly outside: number } | null => {
  const { thickness } = part;
  const { bendAngle } = part.bends[first]!;
  const tips = [...new Set(rack.punches.filter((p) => bendsInV(p) && machine.clampFamilies.includes(p.tang)).map((p) => p.tipRadius))];
  const dies = rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang) && d.v >= V_LEAST * thickness && d.v <= V_MOST * thickness).sort((a, b) => a.v - b.v);
  let best: { readonly die: Die; readonly outside: number } | null = null;
  for (const die of dies) {
    // a wider V asks no less
    if (best && die.v > best.die.v) break;
    for (const tipRadius of tips) {
      const air = airBendKept({ metal, thickness, tipRadius, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius, bendAngle });
      if (!air.ok) continue;
      const { minFlange, deduction, allowance, insideRadius } = air.value;
      // the flat beside the second bend ends at the first one's tangent line
      const outside = minFlange - deduction / 2 - allowance / 2 + 2 * mouldLineSetback(insideRadius, thickness, bendAngle);
      if (!best || outside < best.outside) best = { die, outside };
    }
  }
  return best;
};

const sameForm = (a: OffsetForm, b: OffsetForm): boolean =>
  a.height === b.height && a.insideRadius === b.insideRadius && a.leastThickness === b.leastThickness && a.mostThickness === b.mostThickness;

/**
 * The offset bends of a part: webs too short for every V of the rack, each with the tools that make it; or why one is not made. Where a V
 * takes the web both bends are made one by one as ever.
 */
export const offsetsOf = (part: Part, metal: Metal, machine: Machine, rack: Rack): { readonly offsets: readonly Offset[] } | { readonly refused: Reason } => {
  const offsets: Offset[] = [];
  for (const found of websOf(part)) {
    const { bendAngle, insideRadius } = part.bends[found.bends[0]]!;
    const { thickness } = part;
    const { outside, height } = askedOf(part, found);
    const least = leastWeb(part, found, metal, machine, rack);
    if (!least || outside >= least.outside) continue;
    const ids = found.bends.map((b) => part.bends[b]!.id);
    const between = `The web between ${ids.join(' and ')} is ${outside.toFixed(1)} mm outside and ${least.die.name}, the smallest V, takes ${least.outside.toFixed(1)} mm at least`;
    const no = (why: string, by: number, code: Reason['code'] = 'offset bend'): { readonly refused: Reason } => ({ refused: { code, bends: ids, by, bodies: [least.die.name], sentence: `${between}. ${why}` } });
    const wanted = `an offset tool with a step of ${height.toFixed(1)} mm for ${thickness} mm of sheet`;
    if (Math.abs(bendAngle - SQUARE) > SAME_ANGLE) return no(`It asks ${wanted} and ${bendAngle.toFixed(1)} degrees of bend angle; offset tools make square steps.`, least.outside - outside);
    const pairs = rack.punches.flatMap((punch) => rack.dies.flatMap((die) =>
      (punch.offset && die.offset && sameForm(punch.offset, die.offset) && machine.clampFamilies.includes(punch.tang) && machine.seatFamilies.includes(die.tang) ? [{ punch, die, form: punch.offset }] : [])));
    const suited = pairs.filter(({ form }) => thickness >= form.leastThickness && thickness <= form.mostThickness && Math.abs(form.height - height) <= SAME_HEIGHT)
      .sort((a, b) => Math.abs(a.form.height - height) - Math.abs(b.form.height - height) || Math.abs(a.form.insideRadius - insideRadius) - Math.abs(b.form.insideRadius - insideRadius));
    if (suited.length === 0) {
      const has = [...new Set(pairs.map(({ form }) => `${form.height} mm for ${form.leastThickness} to ${form.mostThickness} mm`))];
      return no(`It asks ${wanted}, and ${has.length === 0 ? 'this machine holds none of the rack' : `the rack's have ${has.join(', ')}`}.`, least.outside - outside);
    }
    const forcePerLength = pressingForce('offset in one stroke', textbookForce(metal.tensile.typical, thickness, REFERENCE_V * thickness)).most;
    const rated = ({ punch, die }: (typeof suited)[number]): number => Math.min(punch.rating, die.rating, machine.ratingPerLength);
    const bearing = (force: number): typeof suited => suited.filter((p) => rated(p) >= force);
    const strong = bearing(forcePerLength * strongestSheet(metal, thickness));
    const able = strong.length > 0 ? strong : bearing(forcePerLength);
    const strongest = Math.max(...suited.map(rated));
    if (able.length === 0) return no(`An offset tool for it asks ${forcePerLength.toFixed(0)} N/mm (common practice, no source) and the weakest of punch, die and machine is rated ${strongest.toFixed(0)} N/mm.`, forcePerLength - strongest, 'tool rating');
    const us = part.bends[found.bends[0]]!.zone.flat().map((v) => v.x);
    const force = forcePerLength * (Math.max(...us) - Math.min(...us));
    if (force > machine.rating) return no(`An offset tool for it asks ${(force / 1000).toFixed(0)} kN (common practice, no source) and the machine is rated ${(machine.rating / 1000).toFixed(0)} kN.`, force - machine.rating, 'force');
    const { form } = able[0]!;
    offsets.push({ ...found, form, tools: able.filter((p) => sameForm(p.form, form)), forcePerLength });
  }
  return { offsets };
};

/** What an offset tool makes of each of its two bends: radius as the tool's, flat length by DIN 6935, no springback counted. mm */
export const offsetFigures = ({ form: { insideRadius } }: Offset, thickness: number, bendAngle: number): { readonly insideRadius: number; readonly allowance: number; readonly deduction: number } => {
  const allowance = allowanceByRule({ name: 'DIN 6935' }, insideRadius, thickness, bendAngle);
  return { insideRadius, allowance, deduction: deductionFrom(allowance, insideRadius, thickness, bendAngle) };
};
