import type { Planar } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { insideRadiusAt } from './vBend.js';
import type { Offset } from './offsets.js';

/** Two opposite bends made at once between offset tools: what the poses of docs/kinematics.md, 'An offset bend', need. */
export interface OffsetBend {
  readonly kind: 'offset';
  readonly thickness: number;
  /** Flat length of each of the two bends, and of the web between them, mm. */
  readonly allowance: number;
  readonly web: number;
  /** mm from the inside face to the neutral line. */
  readonly neutral: number;
  readonly from?: number;
  /** Degrees that each bend is turned through; the tools make up for springback, so none is counted. */
  readonly bendAngle: number;
  readonly bendAngleUnderLoad: number;
  /** Does the flange towards the gauge come out higher, and lie still? */
  readonly gaugeRests: boolean;
  /** back of the tangent line of the flange that lies still on the die's high land. mm */
  readonly lineBack: number;
  /** The punch's edge: its radius, and how far its centre stands from the middle, towards the flange that goes down. mm */
  readonly edge: number;
  readonly edgeOff: number;
  /** Half width of the wider of both lands, mm. */
  readonly land: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * The step in the sheet at bend angle x: how far apart both tangent lines are, level and upright; and where the middle plane's
 * pieces end, counted from the lower line towards the upper one.
 */
const stepAt = ({ allowance, neutral, thickness, web }: Pick<OffsetBend, 'allowance' | 'neutral' | 'thickness' | 'web'>, x: number): { readonly over: number; readonly up: number } => {
  if (x < 1e-9) return { over: 2 * allowance + web, up: 0 };
  const middle = insideRadiusAt({ allowance, neutral }, x) + thickness / 2;
  const [c, s] = [Math.cos(radians(x)), Math.sin(radians(x))];
  // 1 - cos x by the half angle: the radius is huge near flat
  return { over: 2 * middle * s + web * c, up: 4 * middle * Math.sin(radians(x) / 2) ** 2 + web * s };
};

/** `first`: index of the first bend, whose outer flange is the one that goes down. `gaugeRests`: does the other one point to the gauge? */
export const offsetBendOf = (sheet: Developed, { bends: [first], web: plate, form }: Offset, landWidth: number, gaugeRests: boolean): OffsetBend => {
  const { bendAngle, insideRadius, sides } = sheet.part.bends[first]!;
  const allowance = sheet.allowances[first]!;
  const { thickness } = sheet.part;
  const web = widthAcross(sheet, plate, sides.find((s) => s.plate === plate)!.line);
  const flat = { allowance, web, thickness, neutral: allowance / radians(bendAngle) - insideRadius };
  return {
    kind: 'offset', ...flat, bendAngle, bendAngleUnderLoad: bendAngle, gaugeRests,
    lineBack: ((gaugeRests ? 1 : -1) * stepAt(flat, bendAngle).over) / 2,
    edge: form.insideRadius, edgeOff: form.mostThickness / 2 + form.insideRadius, land: landWidth / 2,
  };
};

/** mm that a plate reaches away from a bend's line. */
export const widthAcross = ({ part }: Pick<Developed, 'part'>, plate: number, { from, to }: Developed['part']['bends'][number]['sides'][0]['line']): number => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return Math.max(...part.plates[plate]!.outline.map((v) => Math.abs(dx * (v.y - from[1]) - dy * (v.x - from[0])))) / Math.hypot(dx, dy);
};

/** As `wingsAt` of a V bend: one flange lies still on the high land, the other stays level and goes down and in. */
export const offsetWingsAt = (bend: OffsetBend, x: number): { readonly gauge: Planar; readonly front: Planar } => {
  const { over, up } = stepAt(bend, x);
  const towards = bend.gaugeRests ? 1 : -1;
  const still: Planar = { c: 1, s: 0, x: bend.lineBack, y: bend.thickness / 2 };
  const lowered: Planar = { c: 1, s: 0, x: bend.lineBack - towards * over, y: bend.thickness / 2 - up };
  return bend.gaugeRests ? { gauge: still, front: lowered } : { gauge: lowered, front: still };
};

/**
 * Up of the punch's low land from the die top at bend angle x: its rounded edge rides on the sheet's upper face and the land comes to
 * lie on the flange at the end. The edge's centre is looked for on the curve that runs its radius over that face: an arc in the lower
 * bend, a straight piece over the web, an arc over the upper bend. mm
 */
export const offsetTipAt = (bend: OffsetBend, x: number): number => {
  const { thickness, web, edge, edgeOff, allowance, neutral } = bend;
  if (x < 1e-9) return thickness;
  const { over, up } = stepAt(bend, x);
  const [c, s] = [Math.cos(radians(x)), Math.sin(radians(x))];
  const inside = insideRadiusAt({ allowance, neutral }, x);
  const [inner, outer] = [Math.max(0, inside - edge), inside + thickness + edge];
  // from the lower tangent line, level towards the upper one: where the edge's centre stands
  const at = over - Math.abs(bend.lineBack) - edgeOff;
  const lowerFace = thickness - up;
  const one = { at: inner * s, up: lowerFace + edge + inner * (1 - c) };
  const two = { at: one.at + web * c, up: one.up + web * s };
  const low = lowerFace + edge;
  const centre = at <= 0 ? low
    : at <= one.at ? lowerFace + inside - Math.sqrt(Math.max(0, inner ** 2 - at ** 2))
      : at <= two.at ? one.up + ((two.up - one.up) * (at - one.at)) / (two.at - one.at)
        : thickness - (inside + thickness) + Math.sqrt(Math.max(0, outer ** 2 - (over - at) ** 2));
  return centre - edge;
};
