import { curvatureOf, type Section, thicknessOf } from './section.js';

/**
 * Half of a strip in a V, seen from its middle (s = 0, under the punch) outwards; thickness one, stresses over E,
 * radians. x to the shoulder, y up, both of the mean line between the two faces.
 */
export interface StripCase {
  readonly section: Section;
  /** Half the distance of the shoulder arcs' centres, the arcs' radius, the punch's tip radius. */
  readonly half: number;
  readonly shoulder: number;
  readonly tip: number;
  readonly friction: number;
}

/** What is sought at a given inclination of the leg. */
export interface Unknowns {
  /** ln of the curvature in the middle. */
  readonly logCurvature: number;
  /** ln of half the punch force per length. */
  readonly logForce: number;
  /**
   * Square of the place along the strip where the nose bears; 0 while it bears in the middle. The square, because
   * everything begins to change with it in proportion.
   */
  readonly bearing2: number;
}

/** A place on the mean line. */
export interface StripPoint {
  readonly s: number;
  readonly inclination: number;
  readonly x: number;
  readonly y: number;
  readonly thickness: number;
}

/** The strip integrated from its middle to the shoulder. */
export interface HalfStrip {
  /** At the shoulder's contact. */
  readonly end: StripPoint;
  /** Rotation that the end gives back when all moments go. */
  readonly release: number;
  /** Where the nose bears. */
  readonly bearing: StripPoint;
  /**
   * How much the upper face lies outside the nose there, over the place along the strip: 0 where they touch with the
   * same normal; in the middle below 0 when the face is bent more than the nose is round.
   */
  readonly gap: number;
  readonly middleCurvature: number;
}

/** Called at each node with the section's rotation, curvature and the part of it that is elastic and goes on release. */
export type NodeVisitor = (s: number, slope: number, curvature: number, released: number, thickness: number) => void;

/**
 * The punch force does not act on a line: its stress spreads through the thickness. Equilibrium through the thickness
 * gives the bending part of the moment as M + 0.1 t^2 M'' (parabolic shear stress), the same as a load spread with a
 * variance of 0.2 t^2; it is spread evenly over +- sqrt(0.6) t. That the spread is even is our assumption.
 */
export const SPREAD = Math.sqrt(0.6);

/**
 * Slope of the mean line less the sections' rotation, from incompressibility and the shear strain that the flow rule
 * adds to a power-law strip (exponent n): t^2 [ curvature (Q/M) / (3 (2 - n)) + curvature'/12 ].
 */
const SHEAR_SLOPE = 3;
const SWELL_SLOPE = 1 / 12;

/**
 * Shear stress takes its share of the yield stress: a section carries less moment by 0.36 (Q/(k t))^2 (mean over the
 * thickness of a power-law strip's parabola, n about 0.2), with k t about 2 M/t: 0.09 (Q t/M)^2.
 */
const SHEAR_WEAKENING = 0.09;

/** Cell size near the punch and far from it, and how they grow. */
const FINE = 0.06;
const FINE_UNTIL = 1.8;
const CELL_GROWTH = 1.15;
const COARSEST = 1 / 16;

/** Sweeps of the implicit step in a cell; one is enough where the strip is elastic and nearly straight. */
const SWEEPS = 2;

/** The nodes for a V of this half opening: fine near the punch, coarser outwards, past any contact. */
export const nodesFor = (half: number): Float64Array => {
  const nodes = [0];
  let cell = FINE;
  const coarsest = Math.max(3 * FINE, half * COARSEST);
  for (let s = 0; s < 3 * half + 3; s += cell) {
    if (s > FINE_UNTIL) cell = Math.min(coarsest, cell * CELL_GROWTH);
    if (s > 0) nodes.push(s);
  }
  return Float64Array.from(nodes);
};

/** Moment arm, at s, of a unit of the half force spread about +-bearing: integral over s' > s of q (s' - s). */
export const spreadArm = (s: number, bearing: number): number =>
  s >= bearing + SPREAD ? 0 : armOf(s, Math.max(bearing - SPREAD, 0), bearing + SPREAD) + armOf(s, Math.max(-bearing - SPREAD, 0), SPREAD - bearing);

const armOf = (s: number, from: number, to: number): number => {
  const a = Math.max(s, from);
  return to <= a ? 0 : ((to - s) ** 2 - (a - s) ** 2) / (4 * SPREAD);
};

/**
 * Integrates outwards until the moment of the shoulder's force is spent. Null when that does not happen within the
 * strip. `friction` is the strip's with its direction. Moments: that of the shoulder's reaction about the mean line, less the spread punch force's; the section's
 * law gives curvature, the mean line's slope follows.
 */
export const integrateHalf = (
  strip: StripCase, friction: number, nodes: Float64Array, inclination: number, u: Unknowns, visit?: NodeVisitor,
): HalfStrip | null => {
  const { section, tip } = strip;
  const middleCurvature = Math.exp(u.logCurvature);
  const middleMoment = section.moment(middleCurvature);
  const vertical = Math.exp(u.logForce);
  const horizontal = vertical * Math.tan(inclination - Math.atan(friction));
  const normal = vertical / (Math.cos(inclination) + friction * Math.sin(inclination));
  // friction acts on the lower face, half a thickness from the mean line
  const endMoment = (friction * normal) / 2;
  const bearing = Math.sqrt(Math.max(0, u.bearing2));
  const bearingForce = vertical / Math.cos(Math.min(bearing / (tip + 0.5), MAX_BEARING_ANGLE));
  const start = middleMoment + bearingForce * spreadArm(0, bearing);
  const shearSlope = 1 / (SHEAR_SLOPE * (2 - section.exponent));
  const elastic = section.elasticMoment;
  // through-thickness stress counts in full while flowing, by nu/(1 - nu) while elastic
  const elasticShare = section.poisson / (1 - section.poisson);

  let x = 0;
  let y = 0;
  let rotation = 0;
  let slope = 0;
  let cos = 1;
  let sin = 0;
  let moment = middleMoment;
  let curvature = middleCurvature;
  let thickness = thicknessOf(section, moment);
  let recovered = Math.min(curvature, (start - elasticShare * (start - middleMoment)) / (section.stiffness * fourth(thickness)));
  let release = 0;
  let arm = spreadArm(0, bearing);
  let bears: StripPoint = { s: 0, inclination: 0, x: 0, y: 0, thickness };
  let gap = 1 / thickness - (thickness / 2 + tip) * middleCurvature;
  visit?.(0, 0, curvature, recovered, thickness);

  for (let i = 1; i < nodes.length; i++) {
    const s = nodes[i]!;
    const ds = s - nodes[i - 1]!;
    const nextArm = spreadArm(s, bearing);
    // the curvature is even about the middle, so in the first cell it goes with the square
    const meanShare = i === 1 ? 1 / 3 : 1 / 2;
    const before = slope;
    const ahead = curvature * ds;
    let nCos = cos - sin * ahead;
    let nSin = sin + cos * ahead;
    let nx = x + (nCos * ds) / thickness;
    let ny = y + (nSin * ds) / thickness;
    let nMoment = moment;
    let nCurvature = curvature;
    let nRotation = rotation;
    let nThickness = thickness;
    let outer = 0;
    for (let sweep = moment > elastic ? 0 : SWEEPS - 1; sweep < SWEEPS; sweep++) {
      outer = start - vertical * nx - horizontal * ny;
      nMoment = outer - bearingForce * nextArm;
      const shear = (moment - nMoment) / ds;
      let effective = nMoment;
      if (nMoment > elastic) {
        effective += ((SHEAR_WEAKENING * shear * shear) / nMoment) * Math.min(1, nMoment / elastic - 1);
      }
      nCurvature = curvatureOf(section, effective);
      nThickness = thicknessOf(section, effective);
      nRotation = rotation + (curvature + (nCurvature - curvature) * meanShare) * ds;
      const mean = (moment + nMoment) / 2;
      const perMoment = mean <= elastic ? 1 / section.stiffness : (curvature + nCurvature) / 2 / mean;
      slope = (rotation + nRotation) / 2 + shearSlope * shear * perMoment + (SWELL_SLOPE * (nCurvature - curvature)) / ds;
      const stretched = ((1 / thickness + 1 / nThickness) / 2) * ds;
      // cosine and sine turned on from the last cell's by series: the library's own cost more than all the rest
      const d = slope - before;
      const d2 = d * d;
      const c = 1 - d2 * (1 / 2 - d2 * (1 / 24 - d2 / 720));
      const e = d * (1 - d2 * (1 / 6 - d2 * (1 / 120 - d2 / 5040)));
      nCos = cos * c - sin * e;
      nSin = sin * c + cos * e;
      nx = x + stretched * nCos;
      ny = y + stretched * nSin;
    }
    if (outer <= endMoment && s > bearing) {
      const innerOuter = moment + bearingForce * arm;
      const share = (innerOuter - endMoment) / (innerOuter - outer);
      const endCurvature = curvatureOf(section, endMoment);
      const cell = ds * share;
      const endRecovered = endMoment / section.stiffness;
      const end: StripPoint = {
        s: nodes[i - 1]! + cell,
        inclination: rotation + ((curvature + endCurvature) / 2) * cell,
        x: x + (nx - x) * share,
        y: y + (ny - y) * share,
        thickness: 1,
      };
      visit?.(end.s, slope, endCurvature, endRecovered, 1);
      return {
        end,
        release: release + ((recovered + endRecovered) / 2) * cell,
        bearing: bears,
        gap,
        middleCurvature,
      };
    }
    // a section that never yielded gives back what it was bent, no more
    const nRecovered = Math.min(nCurvature, (outer - elasticShare * bearingForce * nextArm) / (section.stiffness * fourth(nThickness)));
    release += ((recovered + nRecovered) / 2) * ds;
    visit?.(s, slope, nCurvature, nRecovered, nThickness);

    if (bearing > nodes[i - 1]! && bearing <= s) {
      const f = (bearing - nodes[i - 1]!) / ds;
      const gained = (nCurvature - curvature) * meanShare * (i === 1 ? f * f : f);
      const inclination = rotation + (curvature + gained) * ds * f;
      const lean = (rotation + inclination) / 2 + (slope - (rotation + nRotation) / 2) * f;
      const part = Math.hypot(nx - x, ny - y) * f;
      bears = {
        s: bearing,
        inclination,
        x: x + part * Math.cos(lean),
        y: y + part * Math.sin(lean),
        thickness: thickness + (nThickness - thickness) * (i === 1 ? f * f : f),
      };
      // the nose is a circle about x = 0
      gap = (bears.x - (bears.thickness / 2 + tip) * Math.sin(bears.inclination)) / bearing;
    }
    x = nx;
    y = ny;
    cos = nCos;
    sin = nSin;
    rotation = nRotation;
    moment = nMoment;
    curvature = nCurvature;
    thickness = nThickness;
    recovered = nRecovered;
    arm = nextArm;
  }
  return null;
};

/** The engine's own power costs as much as the rest of a node. */
const fourth = (v: number): number => v * v * (v * v);

/** Past this inclination the nose's flank bears, not its round. */
const MAX_BEARING_ANGLE = 1.2;
