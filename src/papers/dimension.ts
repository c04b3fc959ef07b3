import type { Vec2 } from '../geometry/index.js';
import { LETTERS, type PenName } from './pens.js';
import { type Item, area, group, polyline, strokes, text } from './picture.js';
import { textWidth } from './textWidth.js';

/** mm of paper: an arrow's length and half its width; how far a witness line passes its dimension line and stays off the body. */
const ARROW = 2.2;
const ARROW_HALF = 0.36;
const PAST = 1.2;
const OFF = 0.6;

/** A slim filled arrow whose point is at `tip`, pointing along the unit direction. */
export const arrowHead = (tip: Vec2, direction: Vec2, fill: 'ink' | 'accent' | 'warning' = 'ink'): Item => {
  const [dx, dy] = direction;
  const base: Vec2 = [tip[0] - dx * ARROW, tip[1] - dy * ARROW];
  return area(fill, [tip, [base[0] - dy * ARROW_HALF, base[1] + dx * ARROW_HALF], [base[0] + dy * ARROW_HALF, base[1] - dx * ARROW_HALF]]);
};

/** What lies between two places on one axis of the paper, measured along a line beside them. */
interface Span {
  /** The measured places on the axis (x for a level dimension, y for an upright one). */
  readonly from: number;
  readonly to: number;
  /** Where the dimension line lies on the other axis. */
  readonly at: number;
  /** Where the witness lines start on the other axis; none at an end when absent. */
  readonly witness: readonly [number | null, number | null];
  readonly label: string;
  readonly size?: number;
}

const spanItems = ({ from, to, at, witness, label, size = LETTERS.normal }: Span, upright: boolean): Item => {
  const point = (along: number, across: number): Vec2 => (upright ? [across, along] : [along, across]);
  const unit = (sign: number): Vec2 => (upright ? [0, sign] : [sign, 0]);
  const [low, high] = from < to ? [from, to] : [to, from];
  const [witnessLow, witnessHigh] = from < to ? witness : [witness[1], witness[0]];
  const width = textWidth(label, size);
  const room = high - low;
  const lines: [Vec2, Vec2][] = [];
  const add = (place: number, start: number | null): void => {
    if (start === null) return;
    const way = Math.sign(at - start);
    if (way !== 0) lines.push([point(place, start + way * OFF), point(place, at + way * PAST)]);
  };
  add(low, witnessLow);
  add(high, witnessHigh);
  const inside = room > 2 * ARROW + 1;
  const heads = inside
    ? [arrowHead(point(low, at), unit(-1)), arrowHead(point(high, at), unit(1))]
    : [arrowHead(point(low, at), unit(1)), arrowHead(point(high, at), unit(-1))];
  const fits = room > width + 2 * ARROW + 1.5;
  // outside, the letters stand past the higher end (right, or below)
  const tail = inside && fits ? 0 : inside ? 0 : ARROW * 1.8;
  const middle = fits ? (low + high) / 2 : high + tail + 1.2 + width / 2;
  lines.push([point(low - (inside ? 0 : tail), at), point(fits ? high + tail : high + tail + 1.2 + width, at)]);
  const letters = upright
    ? text([at - 0.9, middle], label, size, { turned: 90 })
    : text([middle, at - 0.9], label, size);
  return group('dimension', [strokes('thin', lines), ...heads, letters]);
};

/** A dimension between two x places, its line level at y = `at`; the figure stands on it. */
export const levelDimension = (span: Span): Item => spanItems(span, false);

/** A dimension between two y places, its line upright at x = `at`; the figure reads from the right. */
export const uprightDimension = (span: Span): Item => spanItems(span, true);

/** A line from a thing to words beside it: point with an arrow, a bend, then letters on a short level line. */
export const leader = (
  tip: Vec2, elbow: Vec2, label: readonly string[],
  style: { size?: number; pen?: PenName; bold?: boolean; rightwards?: boolean } = {},
): Item => {
  const { size = LETTERS.normal, pen = 'thin', bold = false, rightwards = elbow[0] >= tip[0] } = style;
  const width = Math.max(...label.map((line) => textWidth(line, size, bold)));
  const end: Vec2 = [elbow[0] + (rightwards ? width + 1 : -width - 1), elbow[1]];
  const [dx, dy] = [tip[0] - elbow[0], tip[1] - elbow[1]];
  const length = Math.max(Math.hypot(dx, dy), 1e-9);
  return group('leader', [
    ...label.map((line, i) =>
      text([elbow[0] + (rightwards ? 0.5 : -0.5), elbow[1] - 0.8 + i * size * 1.25], line, size, {
        anchor: rightwards ? 'start' : 'end',
        bold,
        patch: true,
      }),
    ),
    polyline(pen, [tip, elbow, end]),
    arrowHead(tip, [dx / length, dy / length], pen === 'accent' ? 'accent' : 'ink'),
  ]);
};
