import { type Contour, type Vec2, bounds } from '../geometry/index.js';
import { profileOf } from '../shop/index.js';
import { anglesAfter, bendIndex, cutPlace, dieOf, punchOf, rootOf, seatPose, stationOf, stepOf, stopX } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';
import { moveBody } from './body.js';
import { type Stretch, brokenLength, BREAK_GAP, layOut, onStretch, place } from './brokenAxis.js';
import { cropItems } from './cropItems.js';
import { leader, levelDimension, uprightDimension } from './dimension.js';
import { flatRing } from './flatRing.js';
import { type Units, fineFigure, lengthFigure } from './format.js';
import { hatchLines } from './hatchLines.js';
import { type FillName, LETTERS, type PenName } from './pens.js';
import { pressedSection } from './pressedSection.js';
import { type Item, type Picture, area, group, polyline, strokes } from './picture.js';
import { sectionOf } from './sectionOf.js';
import { sheetBody } from './sheetBody.js';
import { textWidth } from './textWidth.js';

export interface SectionPictureOptions {
  readonly width?: number;
  readonly height?: number;
  readonly units?: Units;
}

/** mm of paper kept for dimensions: left, above, right, below. */
const ROOM = { left: 24, top: 9, right: 15, bottom: 3 };
/** mm of paper more at the top where the face that touches has a dimension of its own beside X. */
const SECOND = 5;
/** mm of the scene shown beside the die, over the sheet, above and below the die seat, and behind the finger's nose. */
const BESIDE = 14;
const OVER = 58;
const UNDER = 10;
const FOOT = 12;
const FINGER = 36;
/** A gap of the scene must be this long to be broken out. */
const WORTH_A_BREAK = 24;
/** mm of paper between hatch lines of cut tools. */
const CUT_HATCH = 1.8;
const CHORD = 0.02;

/** One cut or seen shape of the section in (back, up). */
interface Shape {
  readonly rings: readonly (readonly Vec2[])[];
  readonly fill?: FillName;
  readonly pen: PenName;
  /** Degrees of the hatch lines when cut. */
  readonly hatch?: number;
}

const ringOf = (contour: Contour, back: number, up: number): Vec2[] =>
  flatRing(contour, CHORD).points.map(([x, y]): Vec2 => [x + back, y + up]);

const sheetRings = (trial: Trial, step: Step, when: 'before' | 'after'): Vec2[][] => {
  const angles = anglesAfter(trial, when === 'before' ? step.number - 1 : step.number);
  const first = bendIndex(trial, step.bends[0]!);
  const body = moveBody(seatPose(trial, step, angles[first]!), sheetBody(trial.sheet, angles, rootOf(trial, step)));
  return sectionOf(body, cutPlace(trial, step));
};

/** On which wing the flange to measure lies: +1 gauge side, -1 front. The one whose outside length is nearer to it. */
const measuredWing = (trial: Trial, step: Step, before: readonly (readonly Vec2[])[]): 1 | -1 => {
  const flat = before.flat().map(([b]) => b);
  const half = (Math.min(step.bendAngle, 90) * Math.PI) / 360;
  const more = (step.insideRadius + trial.sheet.part.thickness) * Math.tan(half) - step.allowance / 2;
  const off = (reach: number): number => Math.abs(reach + more - step.measure.length);
  return off(Math.max(...flat)) <= off(-Math.min(...flat)) ? 1 : -1;
};

const shapesOf = (trial: Trial, step: Step, before: Shape['rings'], after: Shape['rings']): Shape[] => {
  const station = stationOf(trial, step);
  const { machine } = trial;
  const t = trial.sheet.part.thickness;
  const punch = profileOf(punchOf(trial, step.punch), station.punchFacing);
  const die = profileOf(dieOf(trial, step.die), station.dieFacing);
  const { finger } = machine.gauge;
  const riser = (trial.risers[0]?.width ?? 60) / 2;
  return [
    ...machine.bed.map((bed): Shape => ({ rings: [ringOf(bed, 0, 0)], fill: 'bed', pen: 'edge' })),
    ...(station.riser > 0
      ? [{ rings: [[[-riser, 0], [riser, 0], [riser, station.riser], [-riser, station.riser]] as Vec2[]], pen: 'edge' as const, hatch: 135 }]
      : []),
    { rings: [ringOf(die, 0, station.dieTop)], pen: 'outline', fill: 'tool', hatch: 135 },
    { rings: [ringOf(punch, 0, station.dieTop + t)], pen: 'outline', fill: 'tool', hatch: 45 },
    ...(step.stop.kind === 'none'
      ? []
      : [{ rings: [ringOf(finger.profile, step.stop.axisX, step.stop.r)], pen: 'edge' as const, fill: 'tool' as const }]),
    { rings: [ringOf(punch, 0, step.ramPosition)], pen: 'hidden' },
    { rings: after, pen: 'hidden' },
    { rings: before, pen: 'thin', fill: 'ink' },
  ];
};

const drawShape = (shape: Shape, x: Stretch, y: Stretch): Item[] => {
  const rings = shape.rings.map((ring) => ring.map(([b, u]): Vec2 => [onStretch(x, b), onStretch(y, u)]));
  if (rings.length === 0) return [];
  const xs = rings.flat().map((p) => p[0]);
  const ys = rings.flat().map((p) => p[1]);
  const flat = {
    rings, a: 0, b: 0, c: 0, nearest: 0,
    box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const,
  };
  const angle = ((shape.hatch ?? 0) * Math.PI) / 180;
  const lines = shape.hatch === undefined ? [] : hatchLines(flat, [Math.cos(angle), -Math.sin(angle)], CUT_HATCH);
  return [
    ...(shape.fill ? [area(shape.fill, ...rings)] : []),
    strokes('hatch', lines.map(([p, q]) => [[p[0], p[1]], [q[0], q[1]]] as const)),
    ...rings.map((ring) => polyline(shape.pen, ring, true)),
  ];
};

/** A break line with its zigzag, along x or y. */
const breakLine = (at: number, from: number, to: number, upright: boolean): Item => {
  const m = (from + to) / 2;
  const path: [number, number][] = [[from, 0], [m - 1.6, 0], [m - 0.8, -1.2], [m + 0.8, 1.2], [m + 1.6, 0], [to, 0]];
  return polyline('rule', path.map(([s, d]): Vec2 => (upright ? [at + d, s] : [s, at + d])));
};

interface Axes {
  readonly backs: readonly Stretch[];
  readonly ups: readonly Stretch[];
  readonly right: number;
  readonly bottom: number;
}

/** What is shown of the scene, broken where nothing happens, as large as the paper allows. */
const axesOf = (trial: Trial, step: Step, width: number, height: number, roomTop: number): Axes => {
  const station = stationOf(trial, step);
  const [[dieFront], [dieBack]] = bounds([profileOf(dieOf(trial, step.die), station.dieFacing)]);
  const front = Math.min(-38, dieFront - BESIDE);
  const near = Math.max(38, dieBack + BESIDE);
  const [nose, stop] = step.stop.kind === 'none' ? [near - 10, near - 10] : [step.stop.axisX, step.stop.x];
  const backs: [number, number][] =
    nose - FOOT - near > WORTH_A_BREAK ? [[front, near], [nose - FOOT, stop + FINGER]] : [[front, Math.max(near, stop + FINGER)]];
  const top = station.dieTop + Math.max(OVER, step.stop.kind === 'none' ? 0 : step.stop.r - station.dieTop + 30);
  const under = station.dieTop - 34;
  const ups: [number, number][] =
    under - FOOT > WORTH_A_BREAK ? [[-UNDER, FOOT], [under, top]] : [[-UNDER, top]];
  const [w, h] = [width - ROOM.left - ROOM.right, height - roomTop - ROOM.bottom];
  const free = (parts: readonly (readonly [number, number])[], paper: number): number =>
    (paper - BREAK_GAP * (parts.length - 1)) / parts.reduce((sum, [a, b]) => sum + b - a, 0);
  const scale = Math.min(free(backs, w), free(ups, h));
  // room that is left over shows more of the punch
  const last = ups[ups.length - 1]!;
  const whole = station.dieTop + trial.sheet.part.thickness + punchOf(trial, step.punch).height + 2;
  const spare = (h - brokenLength(ups, scale)) / scale;
  ups[ups.length - 1] = [last[0], Math.max(last[1], Math.min(whole, last[1] + spare))];
  const left = ROOM.left + (w - brokenLength(backs, scale)) / 2;
  const bottom = roomTop + h - (h - brokenLength(ups, scale)) / 2;
  return { backs: layOut(backs, left, 1, scale), ups: layOut(ups, bottom, -1, scale), right: left + brokenLength(backs, scale), bottom };
};

/**
 * The side view in section, from the operator's right: the sheet at its seat (cut, black) with punch just touching, and
 * dashed where punch and sheet come to. Dimensions: X, R, depth from touch, ram position from the die seat, the flange to
 * measure. Of a stroke that is no V bend, `pressedSection`.
 */
export const sectionPicture = (trial: Trial, stepNumber: number, options: SectionPictureOptions = {}): Picture => {
  const step = stepOf(trial, stepNumber);
  if (step.kind !== 'V bend') return pressedSection(trial, step, options);
  const { width = 120, height = 95, units = 'mm' } = options;
  const station = stationOf(trial, step);
  const { backs, ups, right, bottom } = axesOf(trial, step, width, height, ROOM.top + (stopX(step).face.length > 0 ? SECOND : 0));
  const [before, after] = [sheetRings(trial, step, 'before'), sheetRings(trial, step, 'after')];
  const shapes = shapesOf(trial, step, before, after);
  const cells = backs.flatMap((x, k) =>
    ups.flatMap((y) => {
      const [x1, y1] = [onStretch(x, x.to), onStretch(y, y.to)];
      const box = { x: x.at, y: y1, width: x1 - x.at, height: y.at - y1 };
      // what moves is dashed about the bend only: cut off beyond a break it would be a riddle
      const shown = k === 0 ? shapes : shapes.filter(({ pen }) => pen !== 'hidden');
      return cropItems(shown.flatMap((shape) => drawShape(shape, x, y)), box);
    }),
  );
  const [left, top] = [backs[0]!.at, onStretch(ups[ups.length - 1]!, ups[ups.length - 1]!.to)];
  const breaks = [
    ...backs.slice(1).map((x) => breakLine(x.at - BREAK_GAP / 2, top, bottom, true)),
    ...ups.slice(1).map((y) => breakLine(y.at + BREAK_GAP / 2, left, right, false)),
  ];
  const [x0, seat] = [place(backs, 0), place(ups, 0)];
  const touch = place(ups, station.dieTop + trial.sheet.part.thickness);
  const low = place(ups, step.ramPosition);
  const dimensions: Item[] = [
    strokes('centre', [[[x0, top - 2], [x0, seat + 2]]]),
    uprightDimension({ from: touch, to: low, at: left - 4, witness: [x0, x0], label: `depth ${fineFigure(step.depth, units)}` }),
    uprightDimension({ from: seat, to: low, at: left - 14, witness: [left, x0], label: `ram ${fineFigure(step.ramPosition, units)}` }),
  ];
  if (step.stop.kind !== 'none') {
    const { axisX, x, r } = step.stop;
    const fr = place(ups, r);
    dimensions.push(
      levelDimension({ from: x0, to: place(backs, axisX), at: top - 3, witness: [top, fr], label: `X ${lengthFigure(axisX, units)}` }),
      ...(stopX(step).face.length > 0 ? [levelDimension({ from: x0, to: place(backs, x), at: top - 3 - SECOND, witness: [top - 3, fr], label: `face ${lengthFigure(x, units)}`, size: LETTERS.small })] : []),
      uprightDimension({ from: seat, to: fr, at: right + 5, witness: [right - 10, right - 4], label: `R ${lengthFigure(step.stop.r, units)}` }),
    );
  }
  const measured = measuredWing(trial, step, before);
  const wing = after.flat().filter(([b]) => b * measured > 0 && b > backs[0]!.from && b < backs[0]!.to);
  const highest = wing.reduce<Vec2 | null>((best, p) => (best === null || p[1] > best[1] ? p : best), null);
  if (highest) {
    const tip: Vec2 = [place(backs, highest[0]), Math.max(top + 4, place(ups, highest[1]))];
    const { length, tolerance } = step.measure;
    const label = `outside ${lengthFigure(length, units)}${tolerance === null ? '' : ` ±${lengthFigure(tolerance, units)}`}`;
    const wide = textWidth(label, LETTERS.normal);
    const side = measured > 0 ? Math.min(tip[0] + 5, width - wide - 3) : Math.max(tip[0] - 5, wide + 3);
    dimensions.push(leader(tip, [side, Math.max(top + 5, tip[1] - 6)], [label], { rightwards: measured > 0 }));
  }
  return {
    width,
    height,
    items: [group('section', cells), ...breaks, ...dimensions],
    title: `Step ${step.number} in section: X, R, depth and ram position`,
  };
};
