import { type Vec2, flatten } from '../geometry/index.js';
import { profileOf } from '../shop/index.js';
import {
  type CloseUp, angleAtShare, angleBefore, anglesDuring, closeUp, cutPlace, dieOf, leavesOpen, punchOf, rootOf, seatPose, sheetSection, stationOf, stopX, tipAt,
} from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';
import { cropItems } from './cropItems.js';
import { levelDimension, uprightDimension } from './dimension.js';
import { type Units, angleFigure, fineFigure, lengthFigure } from './format.js';
import { hatchLines } from './hatchLines.js';
import { type FillName, LETTERS, type PenName } from './pens.js';
import { type Item, type Picture, area, group, moveItems, polyline, strokes, text } from './picture.js';

/** mm of paper about each moment's scene: dimensions to its left and right, words over it, air under it. */
const ROOM = { left: 8, top: 12, right: 9, bottom: 7 } as const;
/** mm of the scene that spare room shows more of, at most: of the punch, and of what it presses on. */
const MORE = { over: 14, under: 7 } as const;
/** mm of paper between moments, and between hatch lines of cut tools. */
const GAP = 3;
const CUT_HATCH = 1.8;
const CHORD = 0.02;

/** One moment of the stroke that is drawn. */
interface Shot {
  readonly name: string;
  readonly angle: number;
  /** mm that the gauge stands back. */
  readonly behind: number;
}

const shotsOf = (trial: Trial, step: Step): readonly Shot[] => [
  { name: 'Touch', angle: angleBefore(trial, step), behind: 0 },
  { name: 'Half the ram\'s way', angle: angleAtShare(trial, step, 0.5), behind: step.stop.retract },
  { name: step.kind === 'offset bend' ? 'Pressed' : leavesOpen(step) ? 'Closed to its gap' : 'Pressed flat', angle: step.bendAngle, behind: step.stop.retract },
];

const boxOf = (ring: readonly Vec2[]): readonly [number, number, number, number] => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

const cutShape = (ring: readonly Vec2[], fill: FillName, pen: PenName, degrees: number): Item[] => {
  const way = (degrees * Math.PI) / 180;
  const lines = hatchLines({ rings: [ring], a: 0, b: 0, c: 0, nearest: 0, box: boxOf(ring) }, [Math.cos(way), -Math.sin(way)], CUT_HATCH);
  return [area(fill, ring), strokes('hatch', lines.map(([p, q]) => [[p[0], p[1]], [q[0], q[1]]] as const)), polyline(pen, ring, true)];
};

/** One moment at a scale, its upper left corner at (0, 0). */
const drawShot = (trial: Trial, step: Step, shot: Shot, { backs, ups }: CloseUp, scale: number, units: Units): readonly Item[] => {
  const station = stationOf(trial, step);
  const { thickness } = trial.sheet.part;
  const x = (back: number): number => ROOM.left + (back - backs[0]) * scale;
  const y = (up: number): number => ROOM.top + (ups[1] - up) * scale;
  const ring = (points: readonly Vec2[], back: number, up: number): Vec2[] => points.map((p): Vec2 => [x(p[0] + back), y(p[1] + up)]);
  const [left, right, top, bottom] = [x(backs[0]), x(backs[1]), y(ups[1]), y(ups[0])];
  const [touch, tip] = [tipAt(trial, step, angleBefore(trial, step)), tipAt(trial, step, shot.angle)];
  const punch = flatten(profileOf(punchOf(trial, step.punch), station.punchFacing), CHORD);
  const die = flatten(profileOf(dieOf(trial, step.die), station.dieFacing), CHORD);
  const { finger } = trial.machine.gauge;
  const metal = sheetSection(trial.sheet, anglesDuring(trial, step, shot.angle), rootOf(trial, step), seatPose(trial, step, shot.angle), cutPlace(trial, step));
  const scene = cropItems([
    ...(step.stop.kind === 'none' ? [] : cutShape(ring(flatten(finger.profile, CHORD), step.stop.axisX + shot.behind, step.stop.r), 'paper', 'edge', 0).filter(({ kind }) => kind !== 'strokes')),
    ...cutShape(ring(die, 0, station.dieTop), 'tool', 'outline', 135),
    ...cutShape(ring(punch, 0, tip), 'tool', 'outline', 45),
    ...(tip < touch ? [polyline('hidden', ring(punch, 0, touch), true)] : []),
    // one area: pieces that meet leave no seam, and the gap in a closed hem is not drawn over
    area('ink', ...metal.map((piece) => ring(piece, 0, 0))),
    strokes('centre', [[[x(0), top], [x(0), bottom]]]),
  ], { x: left, y: top, width: right - left, height: bottom - top });
  const offset = step.kind === 'offset bend';
  const upper = station.dieTop + thickness;
  const under = tip - thickness;
  const dimensions: Item[] = [
    ...(offset
      ? (tip < touch ? [uprightDimension({ from: y(under), to: y(upper), at: left - 2.5, witness: [left, left], label: lengthFigure(upper - under, units), size: LETTERS.small })] : [])
      : [uprightDimension({ from: y(station.dieTop), to: y(tip), at: left - 2.5, witness: [left, left], label: lengthFigure(tip - station.dieTop, units), size: LETTERS.small })]),
    ...(tip < touch ? [uprightDimension({ from: y(touch), to: y(tip), at: right + 4, witness: [right, right], label: fineFigure(touch - tip, units), size: LETTERS.small })] : []),
    ...(tip === touch && step.stop.kind !== 'none' && step.stop.axisX < backs[1]
      ? [levelDimension({ from: x(0), to: x(step.stop.axisX), at: bottom + 5, witness: [bottom, y(station.dieTop)], label: [`X ${lengthFigure(step.stop.axisX, units)}`, ...stopX(step).face.map(({ value }) => `face ${lengthFigure(value, units)}`)].join(', '), size: LETTERS.small })]
      : []),
  ];
  const angles = `bend angle ${angleFigure(shot.angle)}, included ${angleFigure(180 - shot.angle)}`;
  return [
    group('section', scene),
    ...dimensions,
    text([left, 3.6], shot.name, LETTERS.normal, { anchor: 'start', bold: true }),
    text([left, 7], `ram ${fineFigure(tip, units)} ${units} over the die seat`, LETTERS.small, { anchor: 'start' }),
    text([left, 10], angles, LETTERS.small, { anchor: 'start' }),
  ];
};

/**
 * A hem being closed, or an offset being made, in section from the operator's right: at touch, half way of the ram, and at its lowest. Dimensions: to
 * the left what lies between anvil and punch (of an offset: over both flanges), to the right the ram's way from touch, and X where the stop is in sight.
 */
export const pressedSection = (trial: Trial, step: Step, { width = 180, height = 74, units = 'mm' }: { readonly width?: number; readonly height?: number; readonly units?: Units }): Picture => {
  const { backs, ups } = closeUp(trial, step);
  const [w, h] = [backs[1] - backs[0], ups[1] - ups[0]];
  const scaleIn = (columns: number, rows: number): number =>
    Math.min(((width - GAP * (columns - 1)) / columns - ROOM.left - ROOM.right) / w, ((height - GAP * (rows - 1)) / rows - ROOM.top - ROOM.bottom) / h);
  const beside = scaleIn(3, 1) >= scaleIn(1, 3);
  const scale = beside ? scaleIn(3, 1) : scaleIn(1, 3);
  const spare = ((beside ? height : (height - GAP * 2) / 3) - ROOM.top - ROOM.bottom) / scale - h;
  const under = Math.min(spare / 3, MORE.under);
  const shown: CloseUp = { backs, ups: [ups[0] - under, ups[1] + Math.min(spare - under, MORE.over)] };
  const [wide, high] = [w * scale + ROOM.left + ROOM.right, (shown.ups[1] - shown.ups[0]) * scale + ROOM.top + ROOM.bottom];
  const shots = shotsOf(trial, step);
  const items = shots.flatMap((shot, k) =>
    moveItems(drawShot(trial, step, shot, shown, scale, units), beside ? k * ((width + GAP) / 3) + ((width - 2 * GAP) / 3 - wide) / 2 : Math.max(0, (width - wide) / 2), beside ? Math.max(0, (height - high) / 2) : k * ((height + GAP) / 3)));
  return { width, height, items, title: `Step ${step.number} in section: ${shots.map(({ name }) => name.toLowerCase()).join(', ')}` };
};
