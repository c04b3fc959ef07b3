import { type Vec3, add3, dot3, length3, scale3, unit3 } from '../geometry/index.js';
import { anglesAfter, bendIndex, dieOf, punchOf, rootOf, seatPose, stationOf, stepOf, strokeInWords, tipAt } from '../stroke/index.js';
import type { Move, Step, Trial } from '../trial/index.js';
import { arrow, arrowCorners } from './arrow.js';
import { type Body, moveBody } from './body.js';
import { cropItems } from './cropItems.js';
import { type Box, drawScene, fitTo, pointsOf } from './drawScene.js';
import { bedBodies, fingerBodies, toolBodies } from './machineBodies.js';
import type { Units } from './format.js';
import type { Picture } from './picture.js';
import { sheetBody } from './sheetBody.js';
import { viewFrom } from './view.js';

/** From the operator's right shoulder. */
const STEP_VIEW = viewFrom(32, 26);

/** mm along the bed that a close-up shows. */
const CLOSE = 160;
/** mm of bed shown past the tools and the part. */
const BESIDE = 35;
/** mm of paper. */
const MARGIN = 1.5;

export interface StepPictureOptions {
  readonly width?: number;
  readonly height?: number;
  /** Only the right-hand end of the bend, larger: for long parts. */
  readonly closeup?: boolean;
  /** Of the ruler on the bed. */
  readonly units?: Units;
}

/** The longest shift among the moves: the one that a person sees as the way in or out. */
const wayOf = (moves: readonly Move[]): Vec3 | null => {
  const shifts = moves.flatMap((move) => (move.kind === 'shift' && length3(move.by) > 0 ? [move.by] : []));
  return shifts.reduce<Vec3 | null>((best, by) => (best === null || length3(by) > length3(best) ? by : best), null);
};

const extentAlong = (bodies: readonly Body[]): readonly [number, number] => {
  const alongs = pointsOf(bodies).map((p) => p[0]);
  return [Math.min(...alongs), Math.max(...alongs)];
};

interface StepScene {
  readonly sheet: Body;
  readonly machine: readonly Body[];
}

const sceneOf = (trial: Trial, step: Step, when: 'before' | 'after', units: Units = 'mm'): StepScene => {
  const station = stationOf(trial, step);
  const running = step.bends.map((id) => bendIndex(trial, id));
  const first = running[0]!;
  const angles = anglesAfter(trial, when === 'before' ? step.number - 1 : step.number);
  const sheet = moveBody(seatPose(trial, step, angles[first]!), sheetBody(trial.sheet, angles, rootOf(trial, step), running));
  const die = dieOf(trial, step.die);
  const tip =
    when === 'before'
      ? station.dieTop + step.ramOpening
      : tipAt(trial, step, angles[first]!);
  const tools = [
    ...toolBodies(punchOf(trial, step.punch), station.punchFacing, station.punchSegments, tip),
    ...toolBodies(die, station.dieFacing, station.dieSegments, station.dieTop),
  ];
  const [low, high] = extentAlong([...tools, sheet]);
  const riserWidth = trial.risers[0]?.width ?? 60;
  return {
    sheet,
    machine: [
      ...tools,
      ...bedBodies(trial.machine, station, riserWidth, low - BESIDE, high + BESIDE, units),
      ...(step.stop.kind === 'none' ? [] : fingerBodies(trial.machine, step, when === 'before' ? 0 : step.stop.retract)),
    ],
  };
};

/** Width over height of the scene before the stroke, as the step's picture shows it: pages choose the paper's shape by it. */
export const stepShape = (trial: Trial, stepNumber: number): number => {
  const step = stepOf(trial, stepNumber);
  const { sheet, machine } = sceneOf(trial, step, 'before');
  const points = pointsOf([sheet, ...machine]);
  const extent = (axis: Vec3): number => {
    const places = points.map((p) => dot3(p, axis));
    return Math.max(...places) - Math.min(...places);
  };
  return extent(STEP_VIEW.right) / extent(STEP_VIEW.up);
};

/** The arrow beside the sheet: where it goes in, or where it comes out. */
const wayArrow = (sheet: Body, step: Step, when: 'before' | 'after', dieTop: number, closeup: boolean): Vec3[] => {
  const by = wayOf(when === 'before' ? step.wayIn : step.wayOut);
  if (!by) return [];
  const d = unit3(by);
  const points = pointsOf([sheet]);
  const size = (axis: 0 | 1 | 2): readonly [number, number] => [
    Math.min(...points.map((p) => p[axis])),
    Math.max(...points.map((p) => p[axis])),
  ];
  const [low, high] = size(0);
  const box = [closeup ? [Math.max(low, high - CLOSE), high] as const : [low, high] as const, size(1), size(2)] as const;
  const length = 0.16 * Math.hypot(box[0][1] - box[0][0], box[1][1] - box[1][0]);
  const centre: Vec3 = [(box[0][0] + box[0][1]) / 2, (box[1][0] + box[1][1]) / 2, dieTop];
  // outside the sheet's box on the side that it comes from or goes to
  const way = when === 'before' ? scale3(d, -1) : d;
  const half = box.map(([a, b]) => (b - a) / 2);
  const reach = Math.min(...way.map((v, k) => (Math.abs(v) < 1e-6 ? Infinity : half[k]! / Math.abs(v))));
  const gap = reach + 0.25 * length;
  const tip = add3(centre, scale3(way, when === 'before' ? gap : gap + length));
  const normal: Vec3 = Math.abs(d[2]) > 0.7 ? [0, -1, 0] : [0, 0, 1];
  return arrowCorners(tip, d, normal, length);
};

/**
 * The sheet in the machine at a step: 'before', at its seat against the fingers with the running bend flat and the ram
 * open; 'after', bent and released with the punch still at its inner apex. The station's tools, the fingers, the bed with
 * its ruler; B side hatched; an arrow in the accent for the way in or out. A hem is shown pre-bent on the anvil, and closed.
 */
export const stepPicture = (
  trial: Trial, stepNumber: number, when: 'before' | 'after', options: StepPictureOptions = {},
): Picture => {
  const { width = 130, height = 95, closeup = false, units = 'mm' } = options;
  const step = stepOf(trial, stepNumber);
  const { sheet, machine } = sceneOf(trial, step, when, units);
  const way = wayArrow(sheet, step, when, stationOf(trial, step).dieTop, closeup);
  const bodies = [sheet, ...machine];
  const other = sceneOf(trial, step, when === 'before' ? 'after' : 'before');
  const frame: Box = { x: MARGIN, y: MARGIN, width: width - 2 * MARGIN, height: height - 2 * MARGIN };
  const [, right] = extentAlong([sheet]);
  const all = [...pointsOf(bodies), ...way];
  // the right end, and as much again to its left, where nothing but long edges runs through
  const end = closeup ? all.filter((p) => p[0] > right - CLOSE && p[0] < right + BESIDE * 2) : all;
  const shown = closeup ? [...end, ...end.map((p): Vec3 => [p[0] - CLOSE, p[1], p[2]])] : end;
  // both pictures of a step at one scale
  const twin = fitTo(STEP_VIEW, pointsOf([other.sheet, ...other.machine]), frame);
  const to = fitTo(STEP_VIEW, shown.length > 0 ? shown : all, frame, closeup ? Infinity : twin.scale);
  const items = [...drawScene(bodies, to, closeup ? frame : null), ...(way.length > 0 ? [arrow(way, to)] : [])];
  const what = when === 'before' ? 'in its place before the stroke' : 'after the stroke';
  return {
    width,
    height,
    items: closeup ? cropItems(items, frame) : items,
    title: `Step ${step.number}, ${strokeInWords(trial, step)}: the sheet ${what}, side ${step.sideUp} up`,
  };
};
