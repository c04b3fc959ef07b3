import type { Developed } from '../sheet/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { Step, Trial } from '../trial/index.js';

// For tests only: a U channel of two steps, its figures worked out by hand so that the papers can be tested without the planner.

/** mm */
const T = 1.5;
const RADIUS = 1.5;
const FLANGE = 40;
const WEB = 80;
const WIDTH = 200;
/** pi/2 (R + 0.4 t): the flat length of a square bend with the neutral line at 0.4 of the thickness. */
const ALLOWANCE = (Math.PI / 2) * (RADIUS + 0.4 * T);

const sheet = (): Developed => {
  const made = profilePart({ name: 'U channel', thickness: T, insideRadius: RADIUS, width: WIDTH, flanges: [FLANGE, WEB, FLANGE], turns: [90, 90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return { part: made.value, allowances: [ALLOWANCE, ALLOWANCE] };
};

/** A flange's flat (40 - R - t = 37) and half the bend: where its edge stands behind the bending plane. */
export const STOP_X = FLANGE - RADIUS - T + ALLOWANCE / 2;

const step = (number: 1 | 2, dieTop: number, depth: number): Step => ({
  number,
  kind: 'V bend',
  bends: [`b${number}`],
  station: 'S1',
  punch: 'straight-r1',
  die: 'die-v12-85',
  facing: 'as drawn',
  sideUp: 'A',
  // the flange points to the gauge: plate 0 is side 0 of b1, plate 2 is side 1 of b2
  gaugeSide: number === 1 ? 0 : 1,
  place: number === 1 ? WIDTH / 2 : -WIDTH / 2,
  stop: {
    kind: 'edge', edge: `edge of flange ${number === 1 ? 1 : 3}`, plate: number === 1 ? 0 : 2, face: 'nose', x: STOP_X, axisX: STOP_X, r: dieTop + 0.3,
    z: [-60, 60], sideways: 'left end 100 mm left of the middle of the bed, at the segment end', retract: number === 1 ? 0 : 20,
  },
  bendAngle: 90,
  includedAngle: 90,
  bendAngleUnderLoad: 91.4,
  springback: 1.4,
  insideRadius: RADIUS,
  allowance: ALLOWANCE,
  deduction: 2 * (RADIUS + T) - ALLOWANCE,
  depth,
  ramPosition: dieTop + T - depth,
  ramOpening: 90,
  ramOpeningOut: 90,
  speedChange: 5.5,
  force: 21_400,
  forcePerLength: 107,
  cylinderForces: [10_700, 10_700],
  crowning: 0.02,
  crowningWords: 'crowning 0.02 mm at the middle of the bed',
  clearance: number === 1 ? 6.2 : 4.7,
  contactReach: 9.5,
  margins: [
    { name: 'force', value: 21_400, limit: 1_100_000, unit: 'N', source: 'machine data' },
    { name: 'smallest flange', value: 40, limit: 9.8, unit: 'mm', source: 'common practice, no source' },
  ],
  wayIn: [{ kind: 'shift', by: [0, 160, 0] }],
  wayOut: [{ kind: 'shift', by: [0, -160, 0] }],
  words:
    number === 1
      ? 'Lay the blank with side A up, flange 1 to the gauge.'
      : 'Turn the sheet by half a turn on the table, side A stays up, flange 3 to the gauge; the flange already made stands up in front.',
  measure: { what: `flange ${number === 1 ? 1 : 3}, outside`, length: FLANGE, tolerance: 0.3 },
  time: [{ what: 'stroke', seconds: 6 }],
});

/** The U channel on the demo floor's middle machine. */
export const channelTrial = (): Trial => {
  const machine = demoFloor().find(({ id }) => id === 'general')!;
  const rack = demoRack();
  const punch = rack.punches.find(({ id }) => id === 'straight-r1')!;
  const die = rack.dies.find(({ v, includedAngle }) => v === 12 && includedAngle === 85) ?? rack.dies[0]!;
  const dieTop = die.height;
  const segments = [{ length: 100, from: -100 }, { length: 100, from: 0 }];
  return {
    format: 'brakewright trial 1',
    verdict: 'makes',
    sheet: sheet(),
    metal: { id: 'dc01', name: 'DC01 cold-rolled steel' },
    quantity: 50,
    machine,
    punches: [punch],
    dies: [die],
    risers: [],
    stations: [
      {
        id: 'S1', punch: punch.id, die: die.id, punchFacing: 'as drawn', dieFacing: 'as drawn', punchSegments: segments,
        dieSegments: segments, riser: 0, dieTop, stackHeight: dieTop + punch.height, emptyLimit: 5.1,
      },
    ],
    steps: [1, 2].map((n) => ({ ...step(n as 1 | 2, dieTop, 4.62), die: die.id })),
    seconds: 41,
    timeModel: [{ what: 'two strokes', seconds: 12 }, { what: 'handling and one turn', seconds: 14 }, { what: 'set-up shared over 50', seconds: 15 }],
    computeSeconds: 0.03,
    bound: 41,
    proven: true,
    model: 'proven best among all orders with these tools and these stops, each bend in one stroke',
    reasons: [],
    remedies: [],
    proof: { checked: true, passed: true, smallestClearance: 4.7, where: 'step 2, flange 1 and the punch body', largestMotion: 0.9, findings: [] },
    counts: { questions: 14, states: 5 },
    warnings: ['Condition of the ram guides is not known.'],
    assumptions: ['Inside radius 1.5 mm as formed by this die.', 'Thickness taken as 1.5 mm, to be measured.'],
  };
};
