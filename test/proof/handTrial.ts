import { type Contour, vertex } from '../../src/geometry/index.js';
import type { Bend, Developed, Part, Plate, Side } from '../../src/sheet/index.js';
import type { Die, Machine, Punch, Segment } from '../../src/shop/index.js';
import type { Station, Step, Trial } from '../../src/trial/index.js';

// Parts, tools and trials written by hand, so that the proof is tested against nothing but geometry worked out beside it.

const RADIANS = Math.PI / 180;

const polygon = (...points: readonly (readonly [number, number])[]): Contour => points.map(([x, y]) => vertex(x, y));

export const rectangle = (x0: number, x1: number, y0: number, y1: number): Contour => polygon([x0, y0], [x1, y0], [x1, y1], [x0, y1]);

/** t 2, inside radius 2, neutral line at 0.4 t: a = angle (2 + 0.8). */
export const THICKNESS = 2;
const RADIUS = 2;
export const allowance = (degrees: number): number => degrees * RADIANS * (RADIUS + 0.8);

/** A profile strip `length` wide: flats across the bends in mm, and what bends them. x runs along every bend line. */
export const stripPart = (
  length: number,
  flats: readonly number[],
  bends: readonly { readonly degrees: number; readonly direction: Side }[],
): Developed => {
  const plates: Plate[] = flats.map((w) => ({ outline: rectangle(0, length, 0, w), holes: [] }));
  const part: Part = {
    name: 'strip',
    thickness: THICKNESS,
    plates,
    bends: bends.map(
      (b, i): Bend => ({
        id: `b${i + 1}`,
        kind: 'bend',
        sides: [
          { plate: i, line: { from: [0, flats[i]!], to: [length, flats[i]!] } },
          { plate: i + 1, line: { from: [0, 0], to: [length, 0] } },
        ],
        bendAngle: b.degrees,
        direction: b.direction,
        insideRadius: RADIUS,
        zone: [rectangle(0, length, 0, 1)],
      }),
    ),
    assumptions: [],
    unit: 'mm',
  };
  return { part, allowances: bends.map((b) => allowance(b.degrees)) };
};

const SEGMENTS: readonly Segment[] = [
  { length: 100, count: 4 },
  { length: 50, count: 4 },
  { length: 60, count: 1, ear: { hand: 'left', reach: 30, footHeight: 25 } },
  { length: 60, count: 1, ear: { hand: 'right', reach: 30, footHeight: 25 } },
];

/** Tip sharp, flanks of 85 degrees included, then upright at `half` from the bending plane up to 100. */
export const straightPunch = (half: number, id = 'punch', height = 100): Punch => {
  const flank = half / Math.tan(42.5 * RADIANS);
  return {
    id,
    name: 'straight punch',
    demo: true,
    kind: 'punch',
    shape: 'straight',
    profile: polygon([0, 0], [half, flank], [half, height], [-half, height], [-half, flank]),
    height,
    rating: 1000,
    tang: 'tang A',
    reversible: true,
    segments: SEGMENTS,
    weight: 10,
    tipRadius: 0,
    includedAngle: 85,
  };
};

export const SHOULDER = 1;

/** V between sharp corners, 85 degrees included, shoulder radius 1; a block 30 mm wide (wider where the V needs it). */
export const vDie = (v: number, height: number, id = 'die'): Die => {
  const half = 42.5 * RADIANS;
  const c = v / 2 + SHOULDER * Math.tan(23.75 * RADIANS);
  const [wx, wy] = [c - SHOULDER * Math.cos(half), -SHOULDER * (1 - Math.sin(half))];
  const bulge = Math.tan((Math.PI / 2 - half) / 4);
  const b = Math.max(15, c + 4);
  return {
    id,
    name: `V ${v} die`,
    demo: true,
    kind: 'die',
    shape: 'V',
    profile: [
      vertex(-b, -height),
      vertex(b, -height),
      vertex(b, 0),
      vertex(c, 0, bulge),
      vertex(wx, wy),
      vertex(0, wy - wx / Math.tan(half)),
      vertex(-wx, wy, bulge),
      vertex(-c, 0),
      vertex(-b, 0),
    ],
    height,
    rating: 1000,
    tang: 'seat A',
    reversible: true,
    segments: SEGMENTS,
    weight: 10,
    v,
    vConvention: 'sharp',
    includedAngle: 85,
    shoulderRadius: SHOULDER,
  };
};

/** mm: half opening of the V 16 die above, by the formula of docs/kinematics.md. */
export const HALF_OPENING = 8 + SHOULDER * Math.tan(23.75 * RADIANS);

/** mm: depth of the inner apex in that die at x degrees, written out from docs/kinematics.md. */
export const depth = (degrees: number): number => {
  const x = degrees * RADIANS;
  const inside = allowance(90) / x - 0.8;
  return HALF_OPENING * Math.tan(x / 2) - (inside + THICKNESS + SHOULDER) * (1 / Math.cos(x / 2) - 1);
};

export const MACHINE: Machine = {
  id: 'm',
  name: 'machine of the tests',
  demo: true,
  summary: 'none',
  condition: 'new',
  rating: 1e6,
  ratingPerLength: 1000,
  length: 1000,
  betweenFrames: 900,
  throat: 200,
  openHeight: 320,
  shutHeight: 100,
  cylinders: { spacing: 800, synchronisation: 'electronic' },
  speeds: { approach: 100, bend: 10, return: 100 },
  changePoint: 3,
  gauge: {
    x: { drive: 'powered', min: 5, max: 500, speed: 100 },
    r: { drive: 'powered', min: 0, max: 150, speed: 100 },
    z: { drive: 'powered', min: -450, max: 450, speed: 100 },
    fingers: 2,
    finger: { width: 20, profile: rectangle(0, 60, 0, 10), faces: [{ name: 'nose', behind: 0, from: 0, to: 10 }] },
    beam: rectangle(60, 100, -60, -10),
    apart: 30,
  },
  beam: [rectangle(-30, 40, 50, 500)],
  clamp: [rectangle(-20, 20, 0, 50)],
  bed: [rectangle(-40, 40, -500, 0)],
  clampFamilies: ['tang A'],
  seatFamilies: ['seat A'],
  crowning: 'none',
  bedHeight: 900,
  repeatability: { ram: { source: 'not known' }, x: { source: 'not known' }, r: { source: 'not known' } },
  options: [],
  price: 0,
  currency: 'EUR',
  site: { mass: 0, footprint: [0, 0], height: 0, supply: '' },
};

/** V 16, die top at 60, punch and die 100 long about the middle of the bed. */
export const STATION: Station = {
  id: 'S1',
  punch: 'punch',
  die: 'die',
  punchFacing: 'as drawn',
  dieFacing: 'as drawn',
  punchSegments: [{ length: 100, from: -50 }],
  dieSegments: [{ length: 100, from: -50 }],
  riser: 0,
  dieTop: 60,
  stackHeight: 160,
  emptyLimit: 5,
};

/** What a step of 1 N/mm over `length` mm loads, its middle `at` mm right of the bed's: the moments about cylinders 800 apart. */
export const loadOf = (length: number, at = 0): Pick<Step, 'force' | 'cylinderForces'> =>
  ({ force: length, cylinderForces: [(length * (400 - at)) / 800, (length * (400 + at)) / 800] });

/** A step of 90 degrees; slid in from the front, lifted and drawn out to the front, the gauge at rest. */
export const stepOf = (
  number: number,
  bend: string,
  sideUp: Side,
  gaugeSide: 0 | 1,
  stop: { readonly plate: number; readonly x: number; readonly r: number; readonly retract: number },
  more: Partial<Step> = {},
): Step => ({
  number,
  kind: 'V bend',
  bends: [bend],
  station: 'S1',
  punch: 'punch',
  die: 'die',
  facing: 'as drawn',
  sideUp,
  gaugeSide,
  // the bend's u runs to +along for A and side 1, or B and side 0
  place: (sideUp === 'A') === (gaugeSide === 1) ? -50 : 50,
  stop: { kind: 'edge', edge: 'the edge', face: 'nose', z: [-30, 30], sideways: '', axisX: stop.x, ...stop },
  bendAngle: 90,
  includedAngle: 90,
  bendAngleUnderLoad: 91,
  springback: 1,
  insideRadius: RADIUS,
  allowance: allowance(90),
  deduction: 0,
  depth: depth(91),
  ramPosition: 60 + THICKNESS - depth(91),
  ramOpening: 140,
  ramOpeningOut: 140,
  speedChange: 5,
  ...loadOf(100),
  forcePerLength: 1,
  crowning: null,
  crowningWords: '',
  clearance: 0,
  contactReach: HALF_OPENING + SHOULDER + THICKNESS,
  margins: [],
  wayIn: [{ kind: 'shift', by: [0, 400, 0] }],
  wayOut: [{ kind: 'shift', by: [0, 0, 15] }, { kind: 'shift', by: [0, -400, 0] }],
  words: '',
  measure: { what: '', length: 0, tolerance: 0 },
  time: [],
  ...more,
});

export const trialOf = (sheet: Developed, steps: readonly Step[], more: Partial<Trial> = {}): Trial => ({
  format: 'brakewright trial 1',
  verdict: 'makes',
  sheet,
  metal: { id: 'm', name: 'metal' },
  quantity: 1,
  machine: MACHINE,
  punches: [straightPunch(10)],
  dies: [vDie(16, 60)],
  risers: [],
  stations: [STATION],
  steps,
  seconds: 0,
  timeModel: [],
  computeSeconds: 0,
  bound: 0,
  proven: false,
  model: '',
  reasons: [],
  remedies: [],
  proof: { checked: false, passed: false, smallestClearance: null, largestMotion: null, findings: [] },
  counts: {},
  warnings: [],
  assumptions: [],
  ...more,
});

/** Angle 40 + 60: the longer leg to the gauge, stopped at its edge, half the bend's flat length and 60 from the plane. */
export const angleTrial = (more: Partial<Trial> = {}, step: Partial<Step> = {}): Trial =>
  trialOf(
    stripPart(100, [40, 60], [{ degrees: 90, direction: 'A' }]),
    [stepOf(1, 'b1', 'A', 1, { plate: 1, x: allowance(90) / 2 + 60, r: 60, retract: 0 }, step)],
    more,
  );

/**
 * Channel: legs 30, web 50. Second bend with the first leg standing up at the gauge, stopped at its outer face:
 * half the flat length, the web, the outside radius of 4.
 */
export const channelTrial = (more: Partial<Trial> = {}, second: Partial<Step> = {}): Trial =>
  trialOf(
    stripPart(100, [30, 50, 30], [{ degrees: 90, direction: 'A' }, { degrees: 90, direction: 'A' }]),
    [
      // web and second leg lie flat in front, the first leg at the gauge
      stepOf(1, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 30, r: 60, retract: 0 }),
      stepOf(2, 'b2', 'A', 0, { plate: 0, x: allowance(90) / 2 + 50 + 4, r: 66, retract: 0 }, second),
    ],
    more,
  );

/**
 * Z: legs 40, web 60, bent to opposite sides. For the second bend the sheet is turned over, the first leg hangs down
 * behind the die and stands against the fingers at up 40; the gauge moves back 20 before the stroke.
 */
export const zedTrial = (more: Partial<Trial> = {}, second: Partial<Step> = {}): Trial =>
  trialOf(
    stripPart(100, [40, 60, 40], [{ degrees: 90, direction: 'A' }, { degrees: 90, direction: 'B' }]),
    [
      stepOf(1, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 40, r: 60, retract: 0 }),
      stepOf(2, 'b2', 'B', 0, { plate: 0, x: allowance(90) / 2 + 60 + 4, r: 40, retract: 20 }, {
        wayIn: [{ kind: 'shift', by: [0, 400, 0] }, { kind: 'shift', by: [0, 0, -45] }],
        wayOut: [{ kind: 'shift', by: [0, 0, 50] }, { kind: 'shift', by: [0, -400, 0] }],
        ...second,
      }),
    ],
    more,
  );
