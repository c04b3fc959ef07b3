import type { Vec2, Vec3 } from '../geometry/index.js';
import type { Trial } from '../trial/index.js';
import type { Body } from './body.js';
import { drawScene, fitTo, pointsOf } from './drawScene.js';
import { PART_VIEW, largestPlate } from './partPicture.js';
import { LETTERS } from './pens.js';
import { type Item, type Picture, area, group, moveItems, polyline, text } from './picture.js';
import { anglesAfter, bendIndex } from '../stroke/index.js';
import { sheetBody } from './sheetBody.js';
import { textWidth } from './textWidth.js';

export interface UnfoldingPathOptions {
  readonly width?: number;
  readonly height?: number;
  /** Folds in a row; as many as fit well when absent. */
  readonly perRow?: number;
}

/** mm of paper: the strip under each fold in which the path runs with its names. */
const STRIP = 9;
const STATION = 2.6;
const GAP = 3;

const disc = (at: Vec2, radius: number): Vec2[] =>
  Array.from({ length: 36 }, (_, k): Vec2 => {
    const a = (k * Math.PI) / 18;
    return [at[0] + radius * Math.cos(a), at[1] + radius * Math.sin(a)];
  });

/** The bed-sheet order: left to right, then down and right to left, so that the path never jumps. */
const cellOf = (k: number, perRow: number): readonly [number, number] => {
  const row = Math.floor(k / perRow);
  const column = k % perRow;
  return [row % 2 === 0 ? column : perRow - 1 - column, row];
};

/** The rows that leave the folds largest: the best `perRow` for `count` folds of a shape (width over height) in a box. */
const bestPerRow = (count: number, width: number, height: number, shape: number): number => {
  let best = { perRow: 1, size: 0 };
  for (let perRow = 1; perRow <= count; perRow++) {
    const rows = Math.ceil(count / perRow);
    const w = width / perRow - GAP;
    const h = height / rows - STRIP - GAP;
    const size = Math.min(w, h * shape);
    if (size > best.size) best = { perRow, size };
  }
  return best.perRow;
};

const sizeOn = (bodies: readonly Body[]): readonly [number, number] => {
  const unit = fitTo(PART_VIEW, pointsOf(bodies), { x: 0, y: 0, width: 1e6, height: 1e6 }, 1);
  const points: readonly Vec3[] = pointsOf(bodies);
  const along = (v: Vec3): readonly [number, number] => {
    const ds = points.map((p) => p[0] * v[0] + p[1] * v[1] + p[2] * v[2]);
    return [Math.min(...ds), Math.max(...ds)];
  };
  const [r, u] = [along(unit.view.right), along(unit.view.up)];
  return [r[1] - r[0], u[1] - u[0]];
};

/**
 * The unfolding as one path from the blank to the finished piece: each step a station on it with the sheet as it then is,
 * all at one scale and seen from one place, the bend just made drawn by its station's name.
 */
export const unfoldingPath = (trial: Trial, options: UnfoldingPathOptions = {}): Picture => {
  const { width = 250, height = 70 } = options;
  const { sheet, steps } = trial;
  const root = largestPlate(sheet);
  const numbers = [0, ...steps.map((step) => step.number)];
  const bodies = numbers.map((n, k) => {
    const next = steps[k];
    const running = next ? next.bends.map((id) => bendIndex(trial, id)) : [];
    return sheetBody(sheet, anglesAfter(trial, n), root, running);
  });
  const sizes = bodies.map((body) => sizeOn([body]));
  const [wide, tall] = [Math.max(...sizes.map(([w]) => w)), Math.max(...sizes.map(([, h]) => h))];
  const perRow = options.perRow ?? bestPerRow(bodies.length, width, height, wide / tall);
  const rows = Math.ceil(bodies.length / perRow);
  const [cellWidth, cellHeight] = [width / perRow, height / rows];
  const scale = Math.min((cellWidth - GAP) / wide, (cellHeight - STRIP - GAP) / tall);
  const nodes = bodies.map((_, k): Vec2 => {
    const [column, row] = cellOf(k, perRow);
    return [(column + 0.5) * cellWidth, (row + 1) * cellHeight - STRIP + STATION + 0.4];
  });
  const folds = bodies.map((body, k): Item => {
    const [column, row] = cellOf(k, perRow);
    const box = { x: GAP / 2, y: GAP / 2, width: cellWidth - GAP, height: cellHeight - STRIP - GAP };
    const items = drawScene([body], fitTo(PART_VIEW, pointsOf([body]), box, scale));
    const name = k === 0 ? 'blank' : `step ${numbers[k]}`;
    return group(name, moveItems(items, column * cellWidth, row * cellHeight));
  });
  const turns = nodes.flatMap((node, k): Vec2[] => {
    const next = nodes[k + 1];
    return next && next[1] !== node[1] ? [node, [node[0] + turnOut(k, perRow, cellWidth), node[1]], [node[0] + turnOut(k, perRow, cellWidth), next[1]]] : [node];
  });
  const stations = nodes.flatMap((node, k): Item[] => {
    const last = k === nodes.length - 1;
    const step = steps[k - 1];
    const label = step ? `${step.bends.join(', ')}  ${step.kind === 'hem close' ? 'closed' : step.kind === 'offset bend' ? 'offset' : `${Number(step.bendAngle.toFixed(1))}° bend`}` : 'blank';
    const words = last && step ? `${label}: finished` : label;
    const shown = textWidth(words, LETTERS.small) > cellWidth ? step?.bends.join(', ') ?? words : words;
    return [
      area(last ? 'ink' : 'paper', disc(node, STATION)),
      polyline('outline', disc(node, STATION), true),
      text([node[0], node[1] + 1], String(numbers[k]), LETTERS.normal, { bold: true, fill: last ? 'paper' : 'ink' }),
      text([node[0], node[1] + STATION + LETTERS.small + 0.4], shown, LETTERS.small, { patch: true }),
    ];
  });
  return {
    width,
    height,
    items: [polyline('outline', turns), ...folds, ...stations],
    title: `${sheet.part.name}: one path from the blank to the finished piece in ${steps.length} steps`,
  };
};

/** How far the path swings out beside the last fold of a row before it comes back on the next. */
const turnOut = (k: number, perRow: number, cellWidth: number): number =>
  (Math.floor(k / perRow) % 2 === 0 ? 1 : -1) * (cellWidth / 2 - 1);
