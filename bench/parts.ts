import { type ArmFlange, type Part, type Result, type Turn, profilePart, tabPlate, trayPart } from '../src/sheet/index.js';

/** A benchmark part, what it tests, and a dimension between outer faces where the benchmark asks for one. */
export interface BenchPart {
  readonly id: string;
  readonly part: Part;
  readonly tests: string;
  readonly dimension?: {
    /** Plates whose outer faces the dimension lies between. */
    readonly plates: readonly [number, number];
    /** mm */
    readonly value: number;
    readonly tolerance: number;
  };
}

const T = 1.5;
const R = 1.5;

const must = (result: Result<Part>): Part => {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};

const profile = (name: string, width: number, flanges: readonly number[], turns: readonly Turn[], measure: 'outside' | 'inside' = 'outside'): Part =>
  must(profilePart({ name, thickness: T, insideRadius: R, width, flanges, turns, measure }));

const rectangle = (name: string, length: number, width: number, arm: readonly ArmFlange[]): Part =>
  must(trayPart({ name, thickness: T, insideRadius: R, base: [length, width], arms: [arm, arm, arm, arm] }));

/** A regular hexagon with edges of the given outside length, counter-clockwise. */
const hexagon = (edge: number): readonly (readonly [number, number])[] =>
  Array.from({ length: 6 }, (_, i) => [edge * Math.cos((i * Math.PI) / 3), edge * Math.sin((i * Math.PI) / 3)] as const);

/** P1, outside lengths. */
const p1 = (): Part => profile('P1 angle 40 + 60', 100, [40, 60], [90]);

/**
 * P2, outside lengths. At the second bend, at 90 degrees, the web rises at 45: with outside apexes the first leg's end
 * stands (60 - 70)/sqrt 2 = -7.07 past the bending plane, 130/sqrt 2 = 91.9 up (from the apex); web 40, legs 80: -28.3, 84.9.
 */
const p2 = (): Part => profile('P2 deep channel, web 60, legs 70', 200, [70, 60, 70], [90, 90]);
const p2narrow = (): Part => profile('P2 deep channel, web 40, legs 80', 200, [80, 40, 80], [90, 90]);

/** P3, outside lengths; the brims turn the other way. */
const p3 = (): Part => profile('P3 hat 20-30-60-30-20', 200, [20, 30, 60, 30, 20], [-90, 90, 90, -90]);

/** P4, outside lengths, so each riser is 25 from face to face of the treads beside it; 7 flanges, 6 bends. */
const p4 = (): Part => profile('P4 stair', 200, [25, 25, 25, 25, 25, 25, 25], [90, -90, 90, -90, 90, -90]);

/** P5, outside lengths, lips inward. */
const p5 = (): Part => profile('P5 lip channel', 200, [15, 50, 100, 50, 15], [90, 90, 90, 90]);

/** P6, inside lengths: the last leg ends 60 - 55 = 5 mm from the first plate's inner face. */
const p6 = (): Part => profile('P6 nearly closed section', 200, [60, 60, 60, 55], [90, 90, 90], 'inside');

/** P7 to P10, outside measures: flange 30 up, return 12 inward, lip 8 down inside, and on P10 a last 5 turned inward of it. */
const level = (...lengths: readonly number[]): ArmFlange[] => lengths.map((length) => ({ length, turn: 90 }));
const p7 = (): Part => rectangle('P7 tray 200 x 150', 200, 150, level(30));
const p8 = (): Part => rectangle('P8 tray with returns', 200, 150, level(30, 12));
const p9 = (): Part => rectangle('P9 tray with returns and lips', 200, 150, level(30, 12, 8));
/** The last flange turns away again (B), so it reaches further inwards at the foot of the lip. */
const p10 = (): Part => rectangle('P10 tray with nested arms of four', 200, 150, [...level(30, 12, 12), { length: 8, turn: -90 }]);

/** P11, outside measures: a hexagon of 150 mm edges, arms as on P9. */
const p11 = (): Part => {
  const arm = level(30, 12, 8);
  return must(trayPart({ name: 'P11 panel with 6 arms of 3', thickness: T, insideRadius: R, base: hexagon(150), arms: [arm, arm, arm, arm, arm, arm] }));
};

/** P12, outside measures: a hexagon of 200 mm edges, four tabs 30 wide on five of them; each edge faces a parallel one. */
const p12 = (): Part => {
  const row = { count: 4, width: 30, length: 25, turn: 90 };
  return must(tabPlate({ name: 'P12 plate with 20 tabs', thickness: T, insideRadius: R, base: hexagon(200), rows: [row, row, row, row, row, undefined] }));
};

/** P13, outside lengths. */
const p13 = (): Part =>
  profile(
    'P13 serial profile of 10 bends',
    150,
    [30, 40, 25, 35, 30, 60, 25, 40, 30, 35, 25],
    [90, -60, 45, -90, 30, 90, -45, -60, 90, -30],
  );

/** Inside radius of a hem as closed as it gets in practice (mm): 0.1 leaves its faces 0.2 mm apart. */
const HEM_RADIUS = 0.1;

/** P14, outside lengths (a hem's to the outer tangent): hem 10, flange 40, web 80, flange 40, hem 10; the hems fold inwards. */
const p14 = (): Part => {
  const hem = { turn: 180, insideRadius: HEM_RADIUS };
  return profile('P14 two hems and two flanges', 200, [10, 40, 80, 40, 10], [hem, 90, 90, hem]);
};

/**
 * P15, outside lengths. At the end of bend b1 (bend angle 130) both wings stand 65 degrees up. With b2 unmade the back wing is
 * a flat 460 long: 300 up it is only 300/tan 65 = 140 behind the bending plane, where a beam hangs. With b2 made first it
 * ends 120 sin 65 = 109 up, 51 back, and turns away from there.
 */
const p15 = (): Part => profile('P15 long flange to be bent early', 200, [50, 120, 300, 40], [130, -90, 90]);

/**
 * P16, outside lengths. The first and the last flange are parallel (90 + 45 + 45 = 180 degrees); from outer face to outer face
 * they are 60 + 30 sin 45 = 81.21 apart (from apex to apex of the outer mould lines).
 */
const p16 = (): Part => profile('P16 dimension over three bends', 200, [40, 60, 30, 50], [90, 45, 45]);

/** All parts of BENCH.md, P2 in both variants; P17 is `p17()`: P5, P7 and P8 on one layout. */
export const benchParts = (): readonly BenchPart[] => [
  { id: 'P1', part: p1(), tests: 'smoke' },
  { id: 'P2', part: p2(), tests: 'relieved punch or refusal' },
  { id: 'P2 narrow', part: p2narrow(), tests: 'how much relief would do it' },
  { id: 'P3', part: p3(), tests: 'flips against order' },
  { id: 'P4', part: p4(), tests: 'counting flips' },
  { id: 'P5', part: p5(), tests: 'lips before legs' },
  { id: 'P6', part: p6(), tests: 'no order of single strokes' },
  { id: 'P7', part: p7(), tests: 'last pair needs a short punch' },
  { id: 'P8', part: p8(), tests: 'ear segments, way out, symmetry' },
  { id: 'P9', part: p9(), tests: 'scale, 12 bends' },
  { id: 'P10', part: p10(), tests: 'scale, 16 bends' },
  { id: 'P11', part: p11(), tests: 'many bends, small diameter' },
  { id: 'P12', part: p12(), tests: 'grouping' },
  { id: 'P13', part: p13(), tests: 'worst diameter' },
  { id: 'P14', part: p14(), tests: 'ordered steps: pre-bend then close' },
  { id: 'P15', part: p15(), tests: 'fewer bends made is not always easier' },
  {
    id: 'P16',
    part: p16(),
    tests: 'the choice of stop changes the best order',
    dimension: { plates: [0, 3], value: 60 + 30 * Math.SQRT1_2, tolerance: 0.3 },
  },
];
