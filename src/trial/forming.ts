import { type AirBend, type AirBendSetup, type DeductionAnswer, type MeasuredDeduction, deductionFor, halfOpening, kFactorOf, outsideConvention } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import type { HemArc, Part } from '../sheet/index.js';
import type { Die } from '../shop/index.js';
import { airBendKept } from './airBendKept.js';
import { formedHem } from './hemTooling.js';
import { type Offset, offsetFigures } from './offsets.js';
import type { Reason } from './trial.js';
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

/** What one bend of a part becomes in a die under a tip, or why it does not. */
export const formed = (metal: Metal, part: Part, bend: number, die: Die, tipRadius: number, measured: readonly MeasuredDeduction[], begun: number | undefined): Forming | Reason => {
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
  const warnings = deduction.beware === undefined ? answer.value.warnings : [...answer.value.warnings, deduction.beware];
  const air: AirBend = { ...answer.value, allowance: deduction.allowance, deduction: deduction.deduction, warnings };
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
export const formedInStep = (metal: Metal, part: Part, bend: number, offset: Offset): Forming => {
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
