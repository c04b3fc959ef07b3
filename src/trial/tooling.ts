import { type AirBend, type AirBendSetup, type DeductionAnswer, deductionFor, halfOpening, kFactorOf, type MeasuredDeduction, outsideConvention } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import { type Developed, type HemArc, type Part, asFormed } from '../sheet/index.js';
import { type Die, type Machine, type Punch, bendsInV } from '../shop/index.js';
import { type Pair, pairOf } from './bodies.js';
import type { Group } from './groups.js';
import { airBendKept } from './airBendKept.js';
import { closingPairs, formedHem, preBends } from './hemTooling.js';
import { asCut } from './asCut.js';
import { V_LEAST, V_MOST } from './limits.js';
import { type Offset, offsetFigures } from './offsets.js';
import type { TrialInput } from './input.js';
import type { Twice } from './states.js';
import type { Reason, Trial } from './trial.js';
import type { VBend } from './vBend.js';

/** A die and a tip radius for one bend, and what they form. */
export interface Forming {
  readonly die: Die;
  readonly tipRadius: number;
  readonly setup: AirBendSetup;
  /** Allowance and deduction as `deduction` says; the rest is the strip's. */
  readonly air: AirBend;
  readonly deduction: DeductionAnswer;
  /** Null of an offset bend, which no V makes. */
  readonly bend: VBend | null;
  /** Of an offset bend: `air` has the tool's radius and the rule's lengths, and no V (0) as its die has none. */
  readonly offset?: Offset;
  /** Of a hem: `air` and `bend` are its pre-bend. */
  readonly hem?: HemArc;
  readonly closedRadius?: number;
  /** N/mm to close it. */
  readonly closeForce?: number;
  /** Of a bend in two passes: the strokes that begin and finish it, and what the strip says of the first one. `bend` is it in one. */
  readonly passes?: { readonly air: AirBend; readonly first: VBend; readonly second: VBend };
}

/** One way to tool the whole part: each bend's forming, the sheet that results, the pairs that may be used. */
export interface Tooling {
  readonly v: number;
  readonly forming: readonly Forming[];
  readonly sheet: Developed;
  /** Present when a blank already cut was given. */
  readonly misses?: Trial['misses'];
  readonly pairs: readonly Pair[];
  /** For each bend, the pairs (index) that form it. */
  readonly pairsOf: readonly (readonly number[])[];
  /** The pairs (index) that close hems. */
  readonly closing: readonly number[];
}

/** V over thickness that is the trade's first choice. Common practice, no source. */
const V_FIRST_CHOICE = 8;
/** How much nearer to the drawn radius (as a logarithm) an acute punch must bring a bend to be chosen. Common practice, no source. */
const FRAGILE = 0.5;

const fits = (machine: Machine, punch: Punch, die: Die): boolean =>
  machine.clampFamilies.includes(punch.tang) && machine.seatFamilies.includes(die.tang);

/** What one bend of a part becomes in a die under a tip, or why it does not. */
const formed = (metal: Metal, part: Part, bend: number, die: Die, tipRadius: number, measured: readonly MeasuredDeduction[], begun: number | undefined): Forming | Reason => {
  const { bendAngle, id, kind } = part.bends[bend]!;
  if (kind === 'hem') {
    const hem = formedHem(metal, part, bend, die, tipRadius);
    if ('code' in hem) return hem;
    // a hem's length follows its own rule, not a shop's table of V bends
    return { die, tipRadius, ...hem, deduction: deductionFor([], { ...hem.setup, metal: metal.id, bendAngle: hem.bend.bendAngle }, hem.air) };
  }
  const setup: AirBendSetup = {
    metal, thickness: part.thickness, tipRadius,
    v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius,
  };
  const answer = airBendKept({ ...setup, bendAngle });
  if (!answer.ok) return { code: answer.reason.code === 'bottoming' ? 'die angle' : 'radius', sentence: `${die.name}: ${answer.reason.sentence}`, bends: [id], bodies: [die.name] };
  const deduction = deductionFor(measured, { ...setup, metal: metal.id, bendAngle }, answer.value);
  const air: AirBend = { ...answer.value, allowance: deduction.allowance, deduction: deduction.deduction };
  const whole: VBend = {
    kind: 'V',
    beside: 0,
    allowance: air.allowance,
    neutral: air.allowance / ((bendAngle * Math.PI) / 180) - air.insideRadius,
    thickness: part.thickness,
    halfOpening: halfOpening(setup),
    shoulderRadius: die.shoulderRadius,
    bendAngle,
    bendAngleUnderLoad: air.bendAngleUnderLoad,
  };
  if (begun === undefined) return { die, tipRadius, setup, air, deduction, bend: whole };
  const first = airBendKept({ ...setup, bendAngle: begun });
  if (!first.ok) return { code: 'radius', sentence: `${die.name}, first pass to ${begun} degrees of bend angle: ${first.reason.sentence}`, bends: [id], bodies: [die.name] };
  return {
    die, tipRadius, setup, air, deduction, bend: whole,
    passes: { air: first.value, first: { ...whole, bendAngle: begun, bendAngleUnderLoad: first.value.bendAngleUnderLoad }, second: { ...whole, from: begun } },
  };
};

/** One of the two bends of an offset as its tool makes it. */
const formedInStep = (metal: Metal, part: Part, bend: number, offset: Offset): Forming => {
  const { bendAngle } = part.bends[bend]!;
  const { thickness } = part;
  const { die } = offset.tools[0]!;
  const figures = offsetFigures(offset, thickness, bendAngle);
  const setup: AirBendSetup = { metal, thickness, tipRadius: 0, v: 0, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: 0 };
  const air: AirBend = {
    ...figures, depth: offset.form.height, springback: 0, leastRadius: figures.insideRadius, minFlange: 0, vSharp: 0, vTangent: 0, method: 'closed form', warnings: [],
    bendAngleUnderLoad: bendAngle, includedAngleUnderLoad: 180 - bendAngle, bendAngleReleased: bendAngle, includedAngleReleased: 180 - bendAngle,
    peakForcePerLength: offset.forcePerLength, forcePerLength: offset.forcePerLength,
    deductionConvention: outsideConvention(bendAngle), kFactor: kFactorOf(figures.allowance, figures.insideRadius, thickness, bendAngle),
  };
  return { die, tipRadius: 0, setup, air, bend: null, offset, deduction: deductionFor([], { ...setup, metal: metal.id, bendAngle }, air) };
};

const suits = (punch: Punch, forming: Forming): boolean =>
  bendsInV(punch) && punch.tipRadius === forming.tipRadius && punch.includedAngle <= forming.air.includedAngleUnderLoad;

/** Flat reach of the shorter plate beside a bend, from the middle of the bend. mm */
const flatReach = (part: Part, bend: number, allowance: number): number =>
  Math.min(...part.bends[bend]!.sides.map(({ plate, line }) => {
    const u = [line.to[0] - line.from[0], line.to[1] - line.from[1]] as const;
    const size = Math.hypot(u[0], u[1]);
    return Math.max(...part.plates[plate]!.outline.map((p) => Math.abs((u[0] * (p.y - line.from[1]) - u[1] * (p.x - line.from[0])) / size)));
  })) + allowance / 2;

type Asked = Pick<TrialInput, 'part' | 'metal' | 'machine' | 'rack' | 'blank' | 'deductions' | 'leaveOut'>;

/**
 * The ways to tool a part on a machine, best first: the V nearest to 8 t for every bend; then the same with a smaller V
 * for the bends whose flange is too short for it. Each is worked out when it is asked for; `reasons` gathers why tools fell out.
 */
export function* toolings({ part, metal, machine, rack, blank: given, deductions: measured = [], leaveOut = [] }: Asked, groups: readonly Group[], twice: Twice, reasons: Reason[]): Generator<Tooling> {
  const inStep = new Map(groups.flatMap(({ offset }) => offset?.bends.map((b) => [b, formedInStep(metal, part, b, offset)] as const) ?? []));
  const t = part.thickness;
  const dies = rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang));
  const punches = rack.punches.filter((p) => bendsInV(p) && machine.clampFamilies.includes(p.tang));
  const openings = [...new Set(dies.map((d) => d.v))].filter((v) => v >= V_LEAST * t && v <= V_MOST * t);
  const strangeness = (v: number): number => Math.abs(Math.log(v / (V_FIRST_CHOICE * t)));
  openings.sort((a, b) => strangeness(a) - strangeness(b));
  if (openings.length === 0) {
    reasons.push({ code: 'no tool', sentence: `The rack has no V die between ${(V_LEAST * t).toFixed(0)} and ${(V_MOST * t).toFixed(0)} mm for ${t} mm of sheet.`, bends: [] });
  }
  const closers: Pair[] = [];
  for (const group of groups.filter((g) => g.closes)) {
    const length = group.bends.reduce((sum, b) => sum + bendLength(part, b), 0);
    const { pairs: able, reason } = closingPairs(metal, part, group.bends, length, machine, rack);
    if (reason) {
      reasons.push(reason);
      return;
    }
    closers.splice(0, closers.length, ...able.filter((p) => closers.length === 0 || closers.some((q) => q.key === p.key)));
  }
  const tips = [...new Set(punches.map((p) => p.tipRadius))];
  // best forming of each bend with one V: the die that opens widest, the tip whose radius comes nearest to the drawing
  const formings = new Map<string, Forming | null>();
  const withV = (v: number, bend: number): Forming | null => {
    const { bendAngle, insideRadius } = part.bends[bend]!;
    const group = groups.find((g) => g.bends.includes(bend))!;
    const key = `${v}|${bendAngle}|${insideRadius}|${group.bends.join()}${leaveOut.length > 0 ? `|${bend}` : ''}`;
    const known = formings.get(key);
    if (known !== undefined) return known;
    const found = chooseForming(v, bend);
    formings.set(key, found);
    return found;
  };
  const chooseForming = (v: number, bend: number): Forming | null => {
    const drawn = part.bends[bend]!.insideRadius;
    let best: Forming | null = null;
    let least = Infinity;
    const { id, kind } = part.bends[bend]!;
    const isHem = kind === 'hem';
    const left = (die: Die): boolean => leaveOut.some((o) => o.bend === id && o.die === die.id);
    for (const die of dies.filter((d) => d.v === v && !left(d) && (!isHem || preBends(d))).sort((a, b) => b.includedAngle - a.includedAngle)) {
      for (const tip of isHem ? [...new Set(punches.filter(preBends).map((p) => p.tipRadius))] : tips) {
        const answer = formed(metal, part, bend, die, tip, measured, twice.get(bend));
        if ('code' in answer) {
          reasons.push(answer);
          continue;
        }
        const held = punches.filter((p) => suits(p, answer));
        if (held.length === 0) continue;
        const length = groups.find((g) => g.bends.includes(bend))!.bends.reduce((sum, b) => sum + bendLength(part, b), 0);
        const weakest = Math.min(die.rating, machine.ratingPerLength, Math.max(...held.map((p) => p.rating)));
        const { peakForcePerLength } = answer.air;
        if (peakForcePerLength > weakest) {
          reasons.push({
            code: 'tool rating', bends: [part.bends[bend]!.id], bodies: [die.name], by: peakForcePerLength - weakest,
            sentence: `Bend ${part.bends[bend]!.id} in ${die.name} asks ${peakForcePerLength.toFixed(0)} N/mm and the weakest of die, punch and machine is rated ${weakest.toFixed(0)} N/mm.`,
          });
          continue;
        }
        if (peakForcePerLength * length > machine.rating) {
          reasons.push({
            code: 'force', bends: [part.bends[bend]!.id], bodies: [die.name], by: peakForcePerLength * length - machine.rating,
            sentence: `Bend ${part.bends[bend]!.id} in ${die.name} asks ${((peakForcePerLength * length) / 1000).toFixed(0)} kN and the machine is rated ${(machine.rating / 1000).toFixed(0)} kN.`,
          });
          continue;
        }
        // a radius a little nearer to the drawing is no reason to reach for a fragile punch
        const fragile = held.every((p) => p.shape === 'acute') ? FRAGILE : 0;
        const miss = Math.abs(Math.log(Math.max(answer.air.insideRadius, 0.1) / Math.max(drawn, 0.1))) + fragile;
        if (miss < least - 1e-9) [best, least] = [answer, miss];
      }
      if (best) break;
    }
    return best;
  };
  const build = (v: number, chosen: readonly Forming[]): Tooling | null => {
    const reshaped = asFormed(part, chosen.map((f) => (f.hem ? { insideRadius: f.closedRadius!, hem: f.hem } : { insideRadius: f.air.insideRadius })));
    if (!reshaped.ok) {
      reasons.push({ code: 'radius', sentence: reshaped.failure.sentence, bends: reshaped.failure.bends, ...(reshaped.failure.by === undefined ? {} : { by: reshaped.failure.by }) });
      return null;
    }
    const developed: Developed = { part: reshaped.value, allowances: chosen.map((f) => (f.hem ? Math.max(f.hem.preLength, f.hem.closedLength) : f.air.allowance)) };
    const cut = given ? asCut(developed, given) : null;
    if (cut && !cut.ok) {
      reasons.push({ code: 'blank', sentence: cut.sentence, bends: [], by: cut.by });
      return null;
    }
    const pairs: Pair[] = [];
    const pairsOf = chosen.map((forming) => {
      const mine: number[] = [];
      for (const { punch, die } of forming.offset?.tools ?? []) {
        for (const facing of punch.reversible && die.reversible ? (['as drawn', 'reversed'] as const) : (['as drawn'] as const)) {
          const pair = pairOf(machine, punch, die, facing);
          const index = pairs.findIndex((p) => p.key === pair.key);
          mine.push(index < 0 ? pairs.push(pair) - 1 : index);
        }
      }
      if (forming.offset) return mine;
      for (const punch of punches.filter((p) => fits(machine, p, forming.die) && suits(p, forming))) {
        for (const facing of punch.reversible ? (['as drawn', 'reversed'] as const) : (['as drawn'] as const)) {
          const pair = pairOf(machine, punch, forming.die, facing);
          let index = pairs.findIndex((p) => p.key === pair.key);
          if (index < 0) index = pairs.push(pair) - 1;
          mine.push(index);
        }
      }
      return mine;
    });
    const closing = closers.map((pair) => pairs.push(pair) - 1);
    return { v, closing, forming: chosen, sheet: cut?.value.sheet ?? developed, ...(cut ? { misses: cut.value.misses } : {}), pairs, pairsOf };
  };
  const found: Tooling[] = [];
  const isNew = (tooling: Tooling): boolean => {
    const same = (other: Tooling): boolean => tooling.forming.every((f, i) => f.die.id === other.forming[i]!.die.id && f.tipRadius === other.forming[i]!.tipRadius);
    if (found.some(same)) return false;
    found.push(tooling);
    return true;
  };
  const whole = (forming: readonly (Forming | null)[]): forming is readonly Forming[] => forming.every((f) => f !== null);
  const reaches = (bend: number, { air, hem }: Forming): boolean => flatReach(part, bend, hem?.closedLength ?? air.allowance) + air.deduction / 2 >= air.minFlange;
  /** A hem's acute V need not be that of the other bends: of those it is long enough for, the nearest to the one wished. */
  const forHem = (v: number, bend: number): Forming | null => {
    const all = [v, ...openings.filter((w) => w !== v)].map((w) => withV(w, bend)).filter((f) => f !== null);
    return all.find((f) => reaches(bend, f)) ?? all[0] ?? null;
  };
  const isHem = (bend: number): boolean => part.bends[bend]!.kind === 'hem';
  for (const v of openings) {
    const single = part.bends.map((_, i) => inStep.get(i) ?? (isHem(i) ? forHem(v, i) : withV(v, i)));
    const tooling = whole(single) ? build(v, single) : null;
    if (tooling && isNew(tooling)) yield tooling;
  }
  for (const v of openings) {
    const smaller = openings.filter((w) => w < v).sort((a, b) => b - a);
    const each = part.bends.map((_, i) => {
      if (inStep.has(i)) return inStep.get(i)!;
      if (isHem(i)) return forHem(v, i);
      const first = withV(v, i);
      if (first && reaches(i, first)) return first;
      for (const w of smaller) {
        const other = withV(w, i);
        if (other && reaches(i, other)) return other;
      }
      return first;
    });
    const tooling = whole(each) ? build(v, each) : null;
    if (tooling && isNew(tooling)) yield tooling;
  }
}

/** mm of tool that a stroke loads: an offset tool folds both its bends over one length. */
export const strokeLength = (part: Part, { bends, offset }: Group): number =>
  (offset ? bends.slice(0, 1) : bends).reduce((sum, b) => sum + bendLength(part, b), 0);

/** mm of metal that a bend folds. */
export const bendLength = (part: Part, bend: number): number =>
  part.bends[bend]!.zone.reduce((sum, contour) => {
    const us = contour.map((v) => v.x);
    return sum + (us.length > 0 ? Math.max(...us) - Math.min(...us) : 0);
  }, 0);
