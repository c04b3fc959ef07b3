import type { Vec2 } from '../geometry/index.js';
import type { FillName, PenName } from './pens.js';
import { textWidth } from './textWidth.js';

/** Straight lines through the points. */
export interface Polyline {
  readonly kind: 'polyline';
  readonly points: readonly Vec2[];
  readonly closed?: boolean;
  readonly pen: PenName;
}

/** Many single lines drawn with one pen: visible edges, hatching, scale ticks. */
export interface Strokes {
  readonly kind: 'strokes';
  readonly lines: readonly (readonly [Vec2, Vec2])[];
  readonly pen: PenName;
}

/** An area; rings inside rings are holes (even-odd). */
export interface Area {
  readonly kind: 'area';
  readonly rings: readonly (readonly Vec2[])[];
  readonly fill: FillName;
}

export interface Text {
  readonly kind: 'text';
  readonly at: Vec2;
  readonly text: string;
  /** mm of paper, the em. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly fill: FillName;
  /** Degrees, counter-clockwise as seen on the paper. */
  readonly turned?: number;
  /** A patch of paper behind the letters, so that no line runs through them. */
  readonly patch?: boolean;
}

/** Things that belong together: 'dimension', 'plate 3', 'station S1': for pages that light them up. */
export interface Group {
  readonly kind: 'group';
  readonly name: string;
  readonly items: readonly Item[];
}

export type Item = Polyline | Strokes | Area | Text | Group;

/**
 * A drawing as plain data, the same for the page (`pictureToSvg`) and the paper (`drawPicture`). Millimetres of
 * paper, origin at the upper left corner, x to the right, y down.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
  /** What the picture shows, in a sentence: read out where it cannot be seen. */
  readonly title: string;
}

export const polyline = (pen: PenName, points: readonly Vec2[], closed = false): Polyline => ({
  kind: 'polyline',
  points,
  closed,
  pen,
});
export const strokes = (pen: PenName, lines: readonly (readonly [Vec2, Vec2])[]): Strokes => ({ kind: 'strokes', lines, pen });
export const area = (fill: FillName, ...rings: readonly (readonly Vec2[])[]): Area => ({ kind: 'area', rings, fill });
export const group = (name: string, items: readonly Item[]): Group => ({ kind: 'group', name, items });

export const text = (
  at: Vec2,
  letters: string,
  size: number,
  style: Partial<Pick<Text, 'anchor' | 'bold' | 'fill' | 'turned' | 'patch'>> = {},
): Text => ({ kind: 'text', at, text: letters, size, anchor: 'middle', fill: 'ink', ...style });

const moveItem = (item: Item, by: Vec2): Item => {
  const move = (p: Vec2): Vec2 => [p[0] + by[0], p[1] + by[1]];
  switch (item.kind) {
    case 'polyline':
      return { ...item, points: item.points.map(move) };
    case 'strokes':
      return { ...item, lines: item.lines.map(([p, q]) => [move(p), move(q)] as const) };
    case 'area':
      return { ...item, rings: item.rings.map((ring) => ring.map(move)) };
    case 'text':
      return { ...item, at: move(item.at) };
    case 'group':
      return { ...item, items: item.items.map((inner) => moveItem(inner, by)) };
  }
};

/** The items shifted on the paper by (x, y) mm. */
export const moveItems = (items: readonly Item[], x: number, y: number): Item[] =>
  items.map((item) => moveItem(item, [x, y]));

/** The corners of a text's patch: its box, baseline at `at`, a little air on each side, turned with it. */
export const patchOf = (item: Text): Vec2[] => {
  const width = textWidth(item.text, item.size, item.bold ?? false);
  const left = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? -width / 2 : -width;
  const air = item.size * 0.16;
  const box: Vec2[] = [
    [left - air, -item.size * 0.76 - air],
    [left + width + air, -item.size * 0.76 - air],
    [left + width + air, item.size * 0.1 + air],
    [left - air, item.size * 0.1 + air],
  ];
  const angle = (-(item.turned ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return box.map(([x, y]): Vec2 => [item.at[0] + x * c - y * s, item.at[1] + x * s + y * c]);
};

/** All points that the items reach, texts by their boxes: for checking that nothing leaves the paper. */
export const extentOf = (items: readonly Item[]): readonly [Vec2, Vec2] => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (points: readonly Vec2[]): void => {
    for (const [x, y] of points) [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  };
  const visit = (item: Item): void => {
    if (item.kind === 'polyline') take(item.points);
    else if (item.kind === 'strokes') item.lines.forEach(take);
    else if (item.kind === 'area') item.rings.forEach(take);
    else if (item.kind === 'text') take(patchOf(item));
    else item.items.forEach(visit);
  };
  items.forEach(visit);
  return [[x0, y0], [x1, y1]];
};
