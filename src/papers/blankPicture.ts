import { type Contour, type Vec2, bounds } from '../geometry/index.js';
import type { Blank } from '../sheet/index.js';
import { levelDimension, uprightDimension } from './dimension.js';
import { flatRing } from './flatRing.js';
import { type Units, lengthFigure, roundFigure } from './format.js';
import { LETTERS } from './pens.js';
import { type Picture, type Text, patchOf, polyline, strokes, text } from './picture.js';
import { textWidth } from './textWidth.js';

export interface BlankPictureOptions {
  readonly width?: number;
  readonly height?: number;
  readonly units?: Units;
  /** Its overall sizes with their dimension lines; true when absent. Without them it is drawn larger, where a table beside it says them. */
  readonly sizes?: boolean;
}

/** mm of paper about the blank: for the two dimensions, and without them. */
const ROOM = { left: 9, top: 8, right: 2, bottom: 2 };
const BARE = { left: 2, top: 2, right: 2, bottom: 2 };
const CHORD = 0.05;
/** mm: a bend line too short for letters of this height stays without its name. */
const LEAST = 1.4;

/** The names that stand clear of those before them: where lines lie closer than letters are high, only some bear names. */
const apart = (names: readonly Text[]): Text[] => {
  const kept: Text[] = [];
  const boxOf = (name: Text): readonly [number, number, number, number] => {
    const patch = patchOf(name);
    const [xs, ys] = [patch.map((p) => p[0]), patch.map((p) => p[1])];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  };
  for (const name of names) {
    const a = boxOf(name);
    const free = kept.map(boxOf).every((b) => a[0] >= b[2] || b[0] >= a[2] || a[1] >= b[3] || b[1] >= a[3]);
    if (free) kept.push(name);
  }
  return kept;
};

/** The flat blank from its A side, its greater length level, with its overall sizes and its bend lines (chain-dotted, named). */
export const blankPicture = (blank: Blank, options: BlankPictureOptions = {}): Picture => {
  const { width = 90, height = 60, units = 'mm', sizes = true } = options;
  const room = sizes ? ROOM : BARE;
  const a = (-blank.angle * Math.PI) / 180;
  const turn = ([x, y]: Vec2): Vec2 => [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
  const points = (contour: Contour): Vec2[] => flatRing(contour, CHORD).points.map(turn);
  const outline = points(blank.outline);
  const [[x0, y0], [x1, y1]] = bounds([outline.map(([x, y]) => ({ x, y, bulge: 0 }))]);
  const [w, h] = [width - room.left - room.right, height - room.top - room.bottom];
  const scale = Math.min(w / (x1 - x0), h / (y1 - y0));
  const left = room.left + (w - (x1 - x0) * scale) / 2;
  const top = room.top + (h - (y1 - y0) * scale) / 2;
  const at = ([x, y]: Vec2): Vec2 => [left + (x - x0) * scale, top + (y1 - y) * scale];
  const [right, bottom] = at([x1, y0]);
  const lines = blank.bendLines.map(({ from, to }) => [at(turn(from)), at(turn(to))] as const);
  // a name stands on its line, read from below or from the right
  const names = blank.bendLines.map(({ id, direction }, i): Text | null => {
    const [p, q] = lines[i]!;
    const angle = (Math.atan2(-(q[1] - p[1]), q[0] - p[0]) * 180) / Math.PI;
    const turned = angle > 91 ? angle - 180 : angle <= -89 ? angle + 180 : angle;
    const label = `${id} ${direction}`;
    const long = Math.hypot(q[0] - p[0], q[1] - p[1]) - 1;
    const size = Math.min(LETTERS.small, (LETTERS.small * long) / textWidth(label, LETTERS.small));
    if (size < LEAST) return null;
    // the letters' middle on the line, whichever way it runs
    const drop = size * 0.36;
    const way = (turned * Math.PI) / 180;
    return text([(p[0] + q[0]) / 2 + drop * Math.sin(way), (p[1] + q[1]) / 2 + drop * Math.cos(way)], label, size, { turned, patch: true });
  });
  return {
    width,
    height,
    items: [
      polyline('outline', outline.map(at), true),
      ...blank.holes.map((hole) => polyline('edge', points(hole).map(at), true)),
      strokes('centre', lines),
      ...apart(names.filter((name) => name !== null)),
      ...(sizes ? [
        levelDimension({ from: left, to: right, at: top - 4, witness: [top, top], label: lengthFigure(blank.length, units) }),
        uprightDimension({ from: top, to: bottom, at: left - 4, witness: [left, left], label: lengthFigure(blank.width, units) }),
      ] : []),
    ],
    title: `Blank of ${blank.name}, seen from its A side: ${roundFigure(blank.length, units)} by ${roundFigure(blank.width, units)} ${units}`,
  };
};
