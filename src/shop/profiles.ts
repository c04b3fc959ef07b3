import { type Contour, type Vertex, vertex } from '../geometry/index.js';
import type { OffsetForm } from './tool.js';

// Cross-sections in (back, up) mm, outlines counter-clockwise. All invented; the shapes are those of the trade at large.

const RADIANS = Math.PI / 180;

const tangentPoint = (radius: number, half: number): readonly [number, number] => [
  radius * Math.cos(half),
  radius * (1 - Math.sin(half)),
];

/** up of a nose's flank where it is `x` away from the bending plane. */
export const flankUp = (radius: number, half: number, x: number): number => {
  const [tx, ty] = tangentPoint(radius, half);
  return ty + (x - tx) / Math.tan(half);
};

/** A punch from its outline: from the nose up the back, then (`front`) from the top down to the nose. */
const withNose = (radius: number, half: number, back: readonly Vertex[], front: readonly Vertex[]): Contour => {
  const [tx, ty] = tangentPoint(radius, half);
  const bulge = Math.tan((Math.PI / 2 - half) / 4);
  return [vertex(0, 0, bulge), vertex(tx, ty), ...back, ...front, vertex(-tx, ty, bulge)];
};

/** The nose of a punch and its height, as its tool names them: mm, degrees included. */
export interface NoseSpec {
  readonly height: number;
  readonly tipRadius: number;
  readonly includedAngle: number;
}

/** A body of `bodyWidth` up to `bodyTop`, then widening to `shoulderWidth` at `shoulderFrom`; the bending plane in its middle. */
export interface StraightSpec {
  readonly bodyWidth: number;
  readonly bodyTop: number;
  readonly shoulderWidth: number;
  readonly shoulderFrom: number;
}

/** Straight and acute punches: a wedge that runs into a body. */
export const straightPunch = (nose: NoseSpec, s: StraightSpec): Contour => {
  const half = (nose.includedAngle / 2) * RADIANS;
  const [w, b] = [s.bodyWidth / 2, s.shoulderWidth / 2];
  const flank = flankUp(nose.tipRadius, half, w);
  return withNose(
    nose.tipRadius,
    half,
    [vertex(w, flank), vertex(w, s.bodyTop), vertex(b, s.shoulderFrom), vertex(b, nose.height)],
    [vertex(-b, nose.height), vertex(-b, s.shoulderFrom), vertex(-w, s.bodyTop), vertex(-w, flank)],
  );
};

/**
 * A punch whose neck stands behind the bending plane, so that a flange made before may reach past that plane in
 * front. `throat` is the back of the neck's front face, upright from `throatFrom` to `throatTo`.
 */
export interface GooseneckSpec {
  /** mm in front of the bending plane that the nose reaches, upright up to `noseFrontTo`. */
  readonly noseFront: number;
  readonly noseFrontTo: number;
  /** mm behind the bending plane where the nose's flank ends. */
  readonly noseBack: number;
  readonly throat: number;
  readonly throatFrom: number;
  readonly throatTo: number;
  /** The back of the neck's rear face, upright from `neckFrom` to `neckTo`. */
  readonly neckBack: number;
  readonly neckFrom: number;
  readonly neckTo: number;
  readonly shoulderWidth: number;
  /** Where the body has come back over the bending plane, in front and behind. */
  readonly shoulderFront: number;
  readonly shoulderBack: number;
}

export const gooseneckPunch = (nose: NoseSpec, s: GooseneckSpec): Contour => {
  const half = (nose.includedAngle / 2) * RADIANS;
  const b = s.shoulderWidth / 2;
  return withNose(
    nose.tipRadius,
    half,
    [
      vertex(s.noseBack, flankUp(nose.tipRadius, half, s.noseBack)),
      vertex(s.neckBack, s.neckFrom),
      vertex(s.neckBack, s.neckTo),
      vertex(b, s.shoulderBack),
      vertex(b, nose.height),
    ],
    [
      vertex(-b, nose.height),
      vertex(-b, s.shoulderFront),
      vertex(s.throat, s.throatTo),
      vertex(s.throat, s.throatFrom),
      vertex(-s.noseFront, s.noseFrontTo),
      vertex(-s.noseFront, flankUp(nose.tipRadius, half, s.noseFront)),
    ],
  );
};

/** A flat face of `faceWidth` under a body. */
export interface FlatteningSpec {
  readonly faceWidth: number;
  readonly faceTop: number;
  readonly shoulderWidth: number;
  readonly shoulderFrom: number;
}

export const flatteningPunch = (height: number, s: FlatteningSpec): Contour => {
  const [w, b] = [s.faceWidth / 2, s.shoulderWidth / 2];
  const up = [vertex(w, s.faceTop), vertex(b, s.shoulderFrom), vertex(b, height)];
  const down = [vertex(-b, height), vertex(-b, s.shoulderFrom), vertex(-w, s.faceTop)];
  return [vertex(0, 0), vertex(w, 0), ...up, ...down, vertex(-w, 0)];
};

/** Lands of `landWidth` over all under a body that widens or narrows to `shoulderWidth`. */
export interface OffsetPunchSpec {
  readonly landWidth: number;
  readonly landTop: number;
  readonly shoulderWidth: number;
  readonly shoulderFrom: number;
}

/** The step of an offset tool, as its tool names it: mm. */
export type StepSpec = Pick<OffsetForm, 'height' | 'insideRadius' | 'mostThickness'>;

/** What an offset profile is drawn with where its tool does not say what it makes (the parser refuses that by name). */
const NO_STEP: StepSpec = { height: 1, insideRadius: 0, mostThickness: 1 };

/** The rounded edge of a step, convex: a quarter turn to the left. */
const QUARTER = Math.tan(Math.PI / 8);

/** An offset punch: its low land in front, its edge rounded to the bend's inside radius, its high land a step higher at the back. */
export const offsetPunch = (height: number, step: StepSpec | undefined, s: OffsetPunchSpec): Contour => {
  const { height: rise, insideRadius: r, mostThickness } = step ?? NO_STEP;
  const [w, b, wall] = [s.landWidth / 2, s.shoulderWidth / 2, -mostThickness / 2];
  return [
    vertex(-w, 0), vertex(wall - r, 0, r > 0 ? QUARTER : 0), ...(r > 0 ? [vertex(wall, r)] : []), vertex(wall, rise), vertex(w, rise),
    vertex(w, s.landTop), vertex(b, s.shoulderFrom), vertex(b, height), vertex(-b, height), vertex(-b, s.shoulderFrom), vertex(-w, s.landTop),
  ];
};

/** An offset die: its high land at the back, its edge rounded to the bend's inside radius, its low land a step lower in front. */
export const offsetDie = (height: number, step: StepSpec | undefined, landWidth: number): Contour => {
  const { height: rise, insideRadius: r, mostThickness } = step ?? NO_STEP;
  const [w, wall] = [landWidth / 2, mostThickness / 2];
  return [
    vertex(-w, -height), vertex(w, -height), vertex(w, 0), vertex(wall + r, 0, r > 0 ? QUARTER : 0), ...(r > 0 ? [vertex(wall, -r)] : []),
    vertex(wall, -rise), vertex(-w, -rise),
  ];
};

/** The V of a die, as its tool names it. */
export interface VSpec {
  readonly height: number;
  readonly v: number;
  readonly vConvention: 'sharp' | 'tangent';
  readonly includedAngle: number;
  readonly shoulderRadius: number;
}

/** A block `topWidth` wide down to `stepAt` below its top, then `baseWidth` wide; `flat` is the width of the V's floor. */
export interface BlockSpec {
  readonly topWidth: number;
  readonly baseWidth: number;
  readonly stepAt: number;
  readonly flat: number;
}

/** mm from the V's middle to where the shoulder arc meets the flat top (docs/kinematics.md). */
export const halfOpening = (d: Omit<VSpec, 'height'>): number =>
  d.vConvention === 'tangent' ? d.v / 2 : d.v / 2 + d.shoulderRadius * Math.tan((45 - d.includedAngle / 4) * RADIANS);

/** mm below the die top of the V's floor. */
export const vDepth = (d: Omit<VSpec, 'height'>, flat: number): number => {
  const half = (d.includedAngle / 2) * RADIANS;
  const x = halfOpening(d) - d.shoulderRadius * Math.cos(half);
  return d.shoulderRadius * (1 - Math.sin(half)) + (x - flat / 2) / Math.tan(half);
};

export const vDie = (d: VSpec, s: BlockSpec): Contour => {
  const half = (d.includedAngle / 2) * RADIANS;
  const c = halfOpening(d);
  const [wx, wy] = [c - d.shoulderRadius * Math.cos(half), -d.shoulderRadius * (1 - Math.sin(half))];
  const bulge = Math.tan((Math.PI / 2 - half) / 4);
  const floor = -vDepth(d, s.flat);
  const [t, b] = [s.topWidth / 2, s.baseWidth / 2];
  const step = s.baseWidth === s.topWidth ? [] : [b - t];
  return [
    vertex(-b, -d.height),
    vertex(b, -d.height),
    ...step.flatMap((wider) => [vertex(b, -s.stepAt - Math.abs(wider)), vertex(t, -s.stepAt)]),
    vertex(t, 0),
    vertex(c, 0, bulge),
    vertex(wx, wy),
    vertex(s.flat / 2, floor),
    vertex(-s.flat / 2, floor),
    vertex(-wx, wy, bulge),
    vertex(-c, 0),
    vertex(-t, 0),
    ...step.flatMap((wider) => [vertex(-t, -s.stepAt), vertex(-b, -s.stepAt - Math.abs(wider))]),
  ];
};

export const rectangle = (back: readonly [number, number], up: readonly [number, number]): Contour => [
  vertex(back[0], up[0]),
  vertex(back[1], up[0]),
  vertex(back[1], up[1]),
  vertex(back[0], up[1]),
];

/** Hems are closed on it: a flat top, its origin in the middle of that. */
export const anvil = (height: number, width: number): Contour => rectangle([-width / 2, width / 2], [-height, 0]);

/** The plate of the upper beam: its front face at back = -`front`, standing on the clamps. */
export const upperBeam = (s: { front: number; thickness: number; from: number; height: number }): Contour =>
  rectangle([-s.front, s.thickness - s.front], [s.from, s.from + s.height]);

/** A clamp row about the punch's tang, its lower corners taken off by `chamfer`. */
export const clampRow = (s: { width: number; height: number; chamfer: number }): Contour => {
  const w = s.width / 2;
  return [
    vertex(-w + s.chamfer, 0),
    vertex(w - s.chamfer, 0),
    vertex(w, s.chamfer),
    vertex(w, s.height),
    vertex(-w, s.height),
    vertex(-w, s.chamfer),
  ];
};

/** A bed `topWidth` wide down to `topDepth` below the die seat and `bodyWidth` wide from there to `depth`. */
export const bedSection = (s: { topWidth: number; topDepth: number; bodyWidth: number; depth: number }): Contour => {
  const [t, b] = [s.topWidth / 2, s.bodyWidth / 2];
  return [
    vertex(-b, -s.depth),
    vertex(b, -s.depth),
    vertex(b, -s.topDepth - (b - t)),
    vertex(t, -s.topDepth),
    vertex(t, 0),
    vertex(-t, 0),
    vertex(-t, -s.topDepth),
    vertex(-b, -s.topDepth - (b - t)),
  ];
};

/**
 * A finger: nose face `noseHeight` high at back 0, a second face `stepBehind` further back reaching up to
 * `stepHeight`. Nothing of it lies below its reference before `clear`, so that it may stand over a die.
 */
export const fingerSection = (s: {
  noseHeight: number;
  stepBehind: number;
  stepHeight: number;
  clear: number;
  drop: number;
  length: number;
}): Contour => [
  vertex(0, 0),
  vertex(s.clear, 0),
  vertex(s.clear + s.drop, -s.drop),
  vertex(s.length, -s.drop),
  vertex(s.length, s.stepHeight),
  vertex(s.stepBehind, s.stepHeight),
  vertex(s.stepBehind, s.noseHeight),
  vertex(0, s.noseHeight),
];
