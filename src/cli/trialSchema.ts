import { z } from 'zod';
import type { Trial } from '../trial/index.js';

const number = z.number();
const text = z.string();
const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();
const pair = z.tuple([number, number]).readonly();
const triple = z.tuple([number, number, number]).readonly();
const side = z.enum(['A', 'B']);
const which = z.union([z.literal(0), z.literal(1)]);
const contour = list(z.object({ x: number, y: number, bulge: number }));
const line = z.object({ from: pair, to: pair });
const bendSide = z.object({ plate: number, line });
const facing = z.enum(['as drawn', 'reversed']);
const ear = z.enum(['left', 'right']);

const feature = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('face'), plate: number, side }),
  z.object({ kind: z.literal('edge'), plate: number, at: pair }),
  z.object({ kind: z.literal('corner'), plate: number, bend: number }),
]);

const part = z.object({
  name: text,
  thickness: number.positive(),
  plates: list(z.object({ outline: contour, holes: list(contour) })),
  bends: list(
    z.object({
      id: text,
      kind: z.enum(['bend', 'hem', 'rolled']),
      sides: z.tuple([bendSide, bendSide]).readonly(),
      bendAngle: number,
      direction: side,
      insideRadius: number,
      zone: list(contour),
      hit: z.object({ of: text, number, count: number, radius: number }).exactOptional(),
      hem: z
        .object({ preBendAngle: number, preBendAngleUnderLoad: number, preInsideRadius: number, preLength: number, closedLength: number })
        .exactOptional(),
    }),
  ),
  assumptions: list(
    z.object({
      code: z.enum([
        'unit', 'healed gap', 'sharp bend', 'bend radius', 'feature left out', 'edge approximated', 'thickness varies',
        'rolled', 'profile', 'thickness', 'layers', 'bend angle', 'bend direction', 'rule', 'other',
      ]),
      sentence: text,
      plates: list(number),
      bends: list(text),
    }),
  ),
  unit: z.enum(['mm', 'inch', 'm', 'cm']),
  volume: number.exactOptional(),
  dimensions: list(
    z.object({ id: text, between: z.tuple([feature, feature]).readonly(), tolerance: number.positive().exactOptional(), class: z.enum(['f', 'm', 'c', 'v']).exactOptional() }),
  ).exactOptional(),
  formed: list(
    z.object({ plate: number, kind: z.enum(['raised', 'opened', 'boss', 'countersink', 'recess']), side, outline: contour, height: number }),
  ).exactOptional(),
});

const axis = z.discriminatedUnion('drive', [
  z.object({ drive: z.literal('powered'), min: number, max: number, speed: number }),
  z.object({ drive: z.literal('by hand'), min: number, max: number, seconds: number }),
  z.object({ drive: z.literal('fixed'), at: number }),
]);
const known = z.union([
  z.object({ value: number, source: z.enum(['as new', 'measured']) }),
  z.object({ source: z.literal('not known') }),
]);

const machine = z.object({
  id: text,
  name: text,
  demo: z.boolean(),
  summary: text,
  condition: z.enum(['new', 'reconditioned']),
  rating: number,
  ratingPerLength: number,
  length: number,
  betweenFrames: number,
  throat: number,
  openHeight: number,
  shutHeight: number,
  cylinders: z.object({ spacing: number, synchronisation: z.enum(['electronic', 'torsion bar']) }),
  speeds: z.object({ approach: number, bend: number, return: number }),
  changePoint: number,
  gauge: z.object({
    x: axis,
    r: axis,
    z: axis,
    fingers: number,
    finger: z.object({
      width: number,
      profile: contour,
      faces: list(z.object({ name: text, behind: number, from: number, to: number })),
    }),
    beam: contour,
    apart: number,
    play: known.exactOptional(),
    squareness: known.exactOptional(),
  }),
  beam: list(contour),
  clamp: list(contour),
  bed: list(contour),
  clampFamilies: list(text),
  seatFamilies: list(text),
  crowning: z.enum(['powered', 'by hand', 'none']),
  bedHeight: number,
  repeatability: z.object({ ram: known, x: known, r: known }),
  seats: z.discriminatedUnion('source', [
    z.object({ source: z.literal('measured'), places: list(z.object({ along: number, gap: number })), tilt: z.enum(['each step', 'one setting', 'none']) }),
    z.object({ source: z.literal('not known') }),
  ]).exactOptional(),
  beware: list(text).exactOptional(),
  options: list(z.object({ id: text, name: text, price: number })),
  price: number,
  currency: text,
  site: z.object({ mass: number, footprint: pair, height: number, supply: text }),
});

const toolCommon = {
  id: text,
  name: text,
  demo: z.boolean(),
  profile: contour,
  height: number,
  rating: number,
  tang: text,
  reversible: z.boolean(),
  segments: list(
    z.object({
      length: number,
      count: number,
      ear: z.object({ hand: ear, reach: number, footHeight: number, slides: number.exactOptional() }).exactOptional(),
    }),
  ),
  weight: number,
  price: number.exactOptional(),
  offset: z.object({ height: number, leastThickness: number, mostThickness: number, insideRadius: number }).exactOptional(),
};
const punch = z.object({
  ...toolCommon,
  kind: z.literal('punch'),
  shape: z.enum(['straight', 'gooseneck', 'acute', 'flattening', 'offset']),
  tipRadius: number,
  includedAngle: number,
});
const die = z.object({
  ...toolCommon,
  kind: z.literal('die'),
  shape: z.enum(['V', 'anvil', 'offset']),
  v: number,
  vConvention: z.enum(['sharp', 'tangent']),
  includedAngle: number,
  shoulderRadius: number,
});

const placed = z.object({ length: number, from: number, ear: ear.exactOptional() });
const timePiece = z.object({ what: text, seconds: number });
const move = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('shift'), by: triple }),
  z.object({ kind: z.literal('tilt'), degrees: number }),
]);

const mark = z.enum(['standard', 'textbook', 'common practice', 'memory', 'measured']);
const range = z.object({ min: number, max: number });
const limits = list(
  z.object({
    name: text, value: number, limit: number, margin: number, unit: text, holds: z.boolean(),
    mark: z.union([mark, z.enum(['statics', 'machine data', 'geometry'])]), source: text,
  }),
);
const forming = z.object({
  byRule: list(
    z.object({
      what: z.enum(['peak force per length', 'inside radius', 'allowance', 'deduction', 'springback', 'depth']),
      value: number, strip: number, unit: z.enum(['N/mm', 'mm', 'degrees']), source: text, mark,
    }),
  ),
  limits,
  range: z.object({ bendAngleReleased: range, peakForcePerLength: range, flangeChange: range }).nullable(),
  rangeWords: text,
  bottoms: text.exactOptional(),
  deduction: z.object({ source: z.enum(['measured', 'fitted K', 'strip']), spread: number.nullable(), words: text }),
  whyV: list(text),
  testStrip: z.object({ along: number, across: number, bends: list(z.object({ bendAngle: number, depth: number })), measure: list(text) }).nullable(),
  crowning: z.object({ uncrowned: number, setting: number, residual: number, angleSpread: number }),
});

const step = z.object({
  number,
  kind: z.enum(['V bend', 'hem close', 'offset bend']),
  pass: z.union([z.literal(1), z.literal(2)]).exactOptional(),
  hit: z.object({ of: text, number, count: number }).exactOptional(),
  bends: list(text),
  station: text,
  punch: text,
  die: text,
  facing,
  sideUp: side,
  gaugeSide: which,
  place: number,
  lineBack: number.exactOptional(),
  stop: z.object({
    kind: z.enum(['edge', 'flange', 'none']),
    edge: text,
    plate: number,
    face: text,
    x: number,
    axisX: number,
    r: number,
    z: list(number),
    skew: number.exactOptional(),
    sideways: text,
    retract: number,
  }),
  bendAngle: number,
  includedAngle: number,
  bendAngleUnderLoad: number,
  springback: number,
  insideRadius: number,
  allowance: number,
  deduction: number,
  depth: number,
  ramPosition: number,
  ramOpening: number,
  ramOpeningOut: number,
  speedChange: number,
  force: number,
  forcePerLength: number,
  cylinderForces: pair,
  crowning: number.nullable(),
  crowningWords: text,
  clearance: number,
  contactReach: number,
  margins: list(z.object({ name: text, value: number, limit: number, unit: text, source: text })),
  forming: forming.exactOptional(),
  pressing: z.object({ strongest: z.object({ forcePerLength: number, words: text }), limits }).exactOptional(),
  wayIn: list(move),
  wayOut: list(move),
  words: text,
  measure: z.object({ what: text, length: number, tolerance: number.nullable(), firstPiece: number.exactOptional(), batch: number.exactOptional() }),
  time: list(timePiece),
});

const reason = z.object({
  code: z.enum([
    'clearance', 'plate on plate', 'way in', 'way out', 'no stop', 'bed length', 'between frames', 'force', 'tool rating',
    'daylight', 'shut height', 'short flange', 'no tool', 'no segments', 'one ram', 'radius', 'die angle', 'minimum radius',
    'rolled', 'hem', 'offset bend', 'floor', 'limit', 'no order', 'nothing to bend', 'blank', 'weight', 'tolerance',
  ]),
  sentence: text,
  bends: list(text),
  made: list(text).exactOptional(),
  unmade: list(text).exactOptional(),
  bodies: list(text).exactOptional(),
  by: number.exactOptional(),
});

const spread = z.object({ rootSumSquare: number, worstCase: number });

/** A trial as it was saved: every field of src/trial/trial.ts, checked once where a file comes in. */
export const trialSchema: z.ZodType<Trial> = z.object({
  format: z.literal('brakewright trial 1'),
  toleranceClass: z.enum(['f', 'm', 'c', 'v']).exactOptional(),
  verdict: z.enum(['makes', 'makes with remedy', 'does not make', 'not decided']),
  sheet: z.object({ part, allowances: list(number) }),
  metal: z.object({ id: text, name: text, density: z.number().positive().exactOptional() }),
  quantity: number,
  machine,
  punches: list(punch),
  dies: list(die),
  risers: list(z.object({ id: text, height: number, seat: text, length: number, width: number })),
  stations: list(
    z.object({
      id: text,
      punch: text,
      die: text,
      punchFacing: facing,
      dieFacing: facing,
      punchSegments: list(placed),
      dieSegments: list(placed),
      riser: number,
      dieTop: number,
      stackHeight: number,
      emptyLimit: number,
    }),
  ),
  steps: list(step),
  seconds: number,
  timeModel: list(timePiece),
  computeSeconds: number,
  bound: number,
  proven: z.boolean(),
  model: text,
  reasons: list(reason),
  untold: list(reason).exactOptional(),
  remedies: list(z.object({ sentence: text, confirmed: z.boolean(), price: number.exactOptional() })),
  inVain: text.exactOptional(),
  proof: z.object({
    checked: z.boolean(),
    passed: z.boolean(),
    smallestClearance: number.nullable(),
    where: text.exactOptional(),
    largestMotion: number.nullable(),
    findings: list(text),
  }),
  counts: z.record(text, number).readonly(),
  lifting: z.object({ kilograms: number, onePerson: number.nullable(), help: z.boolean() }).exactOptional(),
  dimensions: list(
    z.object({
      id: text,
      what: text,
      value: number,
      drawn: number.exactOptional(),
      tolerance: number.nullable(),
      askedBy: text,
      firstPiece: spread,
      batch: spread,
      contributions: list(
        z.object({ what: text, at: text, kind: z.enum(['systematic', 'scatter']), half: number, unit: text, size: number, mark: text }),
      ),
      notKnown: list(text),
      verdict: z.enum(['holds', 'does not hold', 'not known', 'no tolerance']),
      forced: text.exactOptional(),
    }),
  ).exactOptional(),
  misses: list(z.object({ bend: text, flange: text, miss: number })).exactOptional(),
  warnings: list(text),
  assumptions: list(text),
});
