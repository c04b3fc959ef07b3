import { deductionFrom, outsideConvention, setback } from './allowance.js';
import type {
  AirBend, AirBendDepthInput, AirBendInput, AirBendReason, AirBendResult, AirBendSetup,
} from './airBendTypes.js';
import { airBendWarnings } from './airBendWarnings.js';
import { checkSetup } from './checkSetup.js';
import { DEGREE } from './degrees.js';
import { minimumFlange } from './minimumFlange.js';
import { metalSection } from './metalSection.js';
import { beginStroke, type Equilibrium, releasedShape, type Stroke, type StripCase } from './strip/index.js';
import { bothOpenings, halfOpening } from './vee.js';

/** Friction at the die's shoulders when none is said; common practice for oiled steel, no source. */
export const USUAL_FRICTION = 0.1;

/**
 * The air bend that leaves a wanted bend angle after release: depth, angle under load, force, radius and flat length,
 * from the strip calculation of docs/forming.md. Pure; some milliseconds the first time for a metal, one or two after.
 *
 * @example airBend({ metal: metalById('dc01')!, thickness: 2, v: 16, vConvention: 'sharp', dieAngle: 84,
 *   shoulderRadius: 2, tipRadius: 1, bendAngle: 90 })
 */
export const airBend = (input: AirBendInput): AirBendResult => {
  const bad = checkSetup(input) ?? checkRange('bend angle', input.bendAngle, LEAST_ANGLE, 180, 'degrees');
  if (bad !== null) return { ok: false, reason: bad };
  const { strip, stroke } = stripOf(input);
  const last = lastInclination(input);
  const wanted = (input.bendAngle / 2) * DEGREE;
  const state = stroke.where((e) => e.inclination - e.release, wanted, last);
  if (state !== null) return { ok: true, value: answer(input, strip, stroke, state) };
  const end = stroke.states[stroke.states.length - 1];
  const reached = end === undefined ? 0 : end.inclination;
  if (end === undefined || reached < last) return { ok: false, reason: whyNone(input, reached) };
  const most = (2 * (end.inclination - end.release)) / DEGREE;
  if (most < LEAST_ANGLE) {
    return { ok: false, reason: { code: 'bottoming', sentence: `V ${show(input.v)} (${input.vConvention}) is ${Math.round(input.v / input.thickness)} times the thickness of ${input.thickness} mm: from the walls of the die of ${show(input.dieAngle)} degrees the sheet springs back to a bend angle of ${show(most)} degrees.` } };
  }
  return {
    ok: false,
    reason: {
      code: 'bottoming',
      sentence: `A bend angle of ${show(input.bendAngle)} degrees after release is past what the die of ${show(input.dieAngle)} degrees included bends in air (bend angle ${show(most)} degrees): that is bottoming.`,
      by: input.bendAngle - most,
    },
  };
};

/** The same asked by depth: what angle a travel of the punch gives. */
export const airBendAtDepth = (input: AirBendDepthInput): AirBendResult => {
  const bad = checkSetup(input) ?? checkRange('depth', input.depth, LEAST_DEPTH * input.thickness, 100 * input.v, 'mm');
  if (bad !== null) return { ok: false, reason: bad };
  const { strip, stroke } = stripOf(input);
  const last = lastInclination(input);
  const state = stroke.where((e) => e.depth, input.depth / input.thickness, last);
  if (state !== null) return { ok: true, value: answer(input, strip, stroke, state) };
  const end = stroke.states[stroke.states.length - 1];
  if (end === undefined || end.inclination < last) return { ok: false, reason: whyNone(input, end?.inclination ?? 0) };
  const most = end.depth * input.thickness;
  return {
    ok: false,
    reason: {
      code: 'bottoming',
      sentence: `A depth of ${show(input.depth)} mm is ${show(input.depth - most)} mm past the ${show(most)} mm at which the sheet lies on the walls of the die of ${show(input.dieAngle)} degrees included: that is bottoming.`,
      by: input.depth - most,
    },
  };
};

/** The same pressed until the sheet lies on the die's walls: the last that bends in air. */
export const airBendToWalls = (setup: AirBendSetup): AirBendResult => {
  const bad = checkSetup(setup);
  if (bad !== null) return { ok: false, reason: bad };
  const { strip, stroke } = stripOf(setup);
  const last = lastInclination(setup);
  const state = stroke.where((e) => e.inclination, last, last);
  if (state !== null) return { ok: true, value: answer(setup, strip, stroke, state) };
  return { ok: false, reason: whyNone(setup, stroke.states[stroke.states.length - 1]?.inclination ?? 0) };
};

/** Bend angles below this are not asked for in practice and would be elastic. */
const LEAST_ANGLE = 1;
/** Over the thickness. */
const LEAST_DEPTH = 1e-3;

/** Thicknesses by which a middle that did not bear would lie inside the nose; less is within the strip's own errors. */
const CLOSED = 0.005;

/** The middle, bent less than the nose is round, would lie inside it: a third place would bear. */
const isWrapped = (strip: StripCase, { lift, half }: Equilibrium): boolean =>
  lift < -CLOSED && 1 / half.middleCurvature - 0.5 > strip.tip;

/** Inclination at which the wings lie on the V's walls. */
const lastInclination = (setup: AirBendSetup): number => ((180 - setup.dieAngle) / 2) * DEGREE;

/** The strip of a setup in units of its thickness and its modulus. */
export const stripOf = (setup: AirBendSetup, step?: number): { readonly strip: StripCase; readonly stroke: Stroke } => {
  const t = setup.thickness;
  const strip: StripCase = {
    section: metalSection(setup.metal),
    half: halfOpening(setup) / t,
    shoulder: setup.shoulderRadius / t,
    tip: setup.tipRadius / t,
    friction: setup.friction ?? USUAL_FRICTION,
  };
  return { strip, stroke: beginStroke(strip, step) };
};

const answer = (setup: AirBendSetup, strip: StripCase, stroke: Stroke, state: Equilibrium): AirBend => {
  const t = setup.thickness;
  const forceUnit = setup.metal.modulus * t;
  const shape = releasedShape(strip, stroke, state);
  const bendAngleUnderLoad = (2 * state.inclination) / DEGREE;
  const bendAngleReleased = (2 * shape.inclination) / DEGREE;
  const insideRadius = shape.insideRadius * t;
  const atMouldLines = shape.deduction * t;
  // the allowance is the same however the outside is measured
  const allowance = 2 * (insideRadius + t) * Math.tan(shape.inclination) - atMouldLines;
  const deduction = deductionFrom(allowance, insideRadius, t, bendAngleReleased);
  const openings = bothOpenings(setup);
  const greatest = stroke.greatestForce(state, lastInclination(setup));
  const value: AirBend = {
    depth: state.depth * t,
    bendAngleUnderLoad,
    includedAngleUnderLoad: 180 - bendAngleUnderLoad,
    bendAngleReleased,
    includedAngleReleased: 180 - bendAngleReleased,
    springback: (2 * state.release) / DEGREE,
    insideRadius,
    leastRadius: shape.leastRadius * t,
    peakForcePerLength: greatest * forceUnit,
    forcePerLength: stroke.heldForce(state, greatest, lastInclination(setup)) * forceUnit,
    allowance,
    deduction,
    deductionConvention: outsideConvention(bendAngleReleased),
    kFactor: (allowance / (bendAngleReleased * DEGREE) - insideRadius) / t,
    minFlange: minimumFlange(setup, {
      bendAngleUnderLoad,
      deduction: atMouldLines,
      overTangent: (insideRadius + t) * Math.tan(shape.inclination) - setback(insideRadius, t, bendAngleReleased),
    }).flange,
    vSharp: openings.sharp,
    vTangent: openings.tangent,
    warnings: [],
    method: 'strip',
  };
  return { ...value, warnings: airBendWarnings(setup, value, { wrapped: isWrapped(strip, state), leg: state.leg }) };
};

const whyNone = (setup: AirBendSetup, reached: number): AirBendReason => {
  const bendAngle = (2 * reached) / DEGREE;
  if (setup.tipRadius > natural(setup)) {
    return {
      code: 'radius',
      sentence: `The punch's tip of ${show(setup.tipRadius)} mm is too big for V ${show(setup.v)} (${setup.vConvention}) and ${show(setup.thickness)} mm of sheet: past a bend angle of about ${show(bendAngle)} degrees the shoulders press against the nose.`,
    };
  }
  if (setup.shoulderRadius > setup.v) {
    return { code: 'shoulder', sentence: `The shoulders' radius of ${show(setup.shoulderRadius)} mm is too big for V ${show(setup.v)} (${setup.vConvention}): past a bend angle of about ${show(bendAngle)} degrees no straight leg is left between nose and shoulder.` };
  }
  if (bendAngle > LEAST_ANGLE) {
    return {
      code: 'shoulder',
      sentence: `V ${show(setup.v)} (${setup.vConvention}) is too narrow for ${show(setup.thickness)} mm: past a bend angle of about ${show(bendAngle)} degrees no straight leg is left between nose and shoulder.`,
    };
  }
  return { code: 'no equilibrium', sentence: `No equilibrium of the strip was found past a bend angle of ${show(bendAngle)} degrees.` };
};


/** A tip over about this radius shapes the bend more than the V does, mm; the trade's 0.16 V, common practice. */
const natural = (setup: AirBendSetup): number => 0.16 * 2 * halfOpening(setup);

const checkRange = (what: string, value: number, from: number, to: number, unit: string): AirBendReason | null =>
  value >= from && value <= to
    ? null
    : { code: 'input', sentence: `The ${what} of ${value} lies outside ${from} to ${to} ${unit}.` };

/** At most two decimals. */
const show = (value: number): string => String(Math.round(value * 100) / 100);
