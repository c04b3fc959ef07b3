import { type Vec2, bounds, flatten } from '../geometry/index.js';
import type { Blank } from '../sheet/index.js';
import { bendLineWords, blankPlaced } from './blankPlaced.js';
import { CAVEAT } from '../forming/index.js';
import { levelDimension, uprightDimension } from './dimension.js';
import { type Units, lengthFigure, lengthText } from './format.js';
import { LETTERS } from './pens.js';
import { type Item, polyline, strokes, text } from './picture.js';
import { pictureToSvg } from './pictureToSvg.js';

/** mm of paper: an A4 sheet lying, and the room around the drawing for dimensions and for the lines of words below. */
const PAPER = { width: 297, height: 210 };
const ROOM = { left: 22, top: 20, right: 12, bottom: 30 };
/** mm on, mm off: long dashes for a bend towards A, short ones towards B, beside the letter. */
const DASHES = { A: [8, 2], B: [2.5, 2] } as const;
/** mm of paper by which chords may leave an arc. */
const CHORD = 0.02;

/** A line cut into dashes that begin and end with a whole or part dash. */
const dashed = (from: Vec2, to: Vec2, [on, off]: readonly [number, number]): (readonly [Vec2, Vec2])[] => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const at = (s: number): Vec2 => [from[0] + ((to[0] - from[0]) * s) / length, from[1] + ((to[1] - from[1]) * s) / length];
  const dashes: (readonly [Vec2, Vec2])[] = [];
  for (let s = 0; s < length; s += on + off) dashes.push([at(s), at(Math.min(length, s + on))]);
  return dashes;
};

/**
 * The blank as a drawing-office sheet (SVG, A4 lying): ink lines on white, bend lines long-dashed towards A and short-dashed
 * towards B with id, letter and bend angle, overall dimensions, and a title line that says by which rule it is nominal.
 */
export const blankSvg = (blank: Blank, options: { readonly rule?: string; readonly units?: Units } = {}): string => {
  const { units = 'mm', rule } = options;
  const { outline, holes, bendLines } = blankPlaced(blank);
  const [, high] = bounds([outline]);
  const room: Vec2 = [PAPER.width - ROOM.left - ROOM.right, PAPER.height - ROOM.top - ROOM.bottom];
  const scale = Math.min(room[0] / high[0], room[1] / high[1]);
  const [left, top] = [ROOM.left + (room[0] - high[0] * scale) / 2, ROOM.top + (room[1] - high[1] * scale) / 2];
  const at = ([x, y]: Vec2): Vec2 => [left + x * scale, top + (high[1] - y) * scale];
  const ring = (contour: Blank['outline']): Vec2[] => flatten(contour, CHORD / scale).map(at);
  const lines = bendLines.map((line): Item => strokes('thin', dashed(at(line.from), at(line.to), DASHES[line.direction])));
  const words = bendLines.map((line): Item => {
    const [p, q] = [at(line.from), at(line.to)];
    const angle = (Math.atan2(p[1] - q[1], q[0] - p[0]) * 180) / Math.PI;
    const readable = angle > 91 ? angle - 180 : angle <= -89 ? angle + 180 : angle;
    return text([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2 + 0.8], bendLineWords(line, '°'), LETTERS.small, { turned: readable, patch: true });
  });
  const [right, bottom] = at([high[0], 0]);
  const nominal = rule === undefined ? 'Blank' : `Blank, nominal by rule ${rule}`;
  const below = PAPER.height - ROOM.bottom;
  const note = (row: number, line: string): Item => text([ROOM.left, below + 12 + row * 4.5], line, LETTERS.normal, { anchor: 'start' });
  return pictureToSvg({
    ...PAPER,
    items: [
      polyline('outline', ring(outline), true),
      ...holes.map((hole) => polyline('edge', ring(hole), true)),
      ...lines,
      ...words,
      levelDimension({ from: left, to: right, at: top - 7, witness: [top, top], label: lengthFigure(blank.length, units) }),
      uprightDimension({ from: top, to: bottom, at: left - 7, witness: [left, left], label: lengthFigure(blank.width, units) }),
      text([ROOM.left, below + 7], `${blank.name}: ${nominal}`, LETTERS.name, { anchor: 'start', bold: true }),
      note(0, `Thickness ${lengthText(blank.thickness, units)}, A side up. Lengths in ${units}; bend angles are angles turned through. Bends towards A long-dashed, towards B short-dashed.`),
      note(1, rule === undefined ? CAVEAT : `Nominal: the real blank depends on metal, V and tip. ${CAVEAT}`),
    ],
    title: `${nominal} of ${blank.name}, seen from its A side`,
  });
};
