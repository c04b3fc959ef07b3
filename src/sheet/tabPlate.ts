import { setback } from '../forming/index.js';
import { type Vec2, add2, length2, scale2, sub2, unit2 } from '../geometry/index.js';
import { cornersOf, inset } from './inset.js';
import type { Part } from './part.js';
import { type Result, done, refused } from './result.js';
import { type Sketch, type Turn, grow, partOf, polygon, radiusOf, turnOf } from './sketch.js';

/** Equal tabs in one line along an edge. mm, outside length. */
export interface TabRow {
  readonly count: number;
  readonly width: number;
  readonly length: number;
  readonly turn: Turn;
}

/** A plate with rows of tabs, each row bent along one line. */
export interface TabPlate {
  readonly name: string;
  readonly thickness: number;
  readonly insideRadius: number;
  /** Outside length and width in mm, or the outside corners of a convex polygon, counter-clockwise. */
  readonly base: readonly [number, number] | readonly Vec2[];
  /** For each edge in turn, its row of tabs or none. */
  readonly rows: readonly (TabRow | undefined)[];
}

/** The part, tabs spread evenly along each edge; or the row that does not fit. */
export const tabPlate = (spec: TabPlate): Result<Part> => {
  const { name, thickness, insideRadius, rows } = spec;
  const corners = cornersOf(spec.base);
  if (rows.length !== corners.length) return refused('wrong measure', `A base of ${corners.length} edges needs ${corners.length} rows, not ${rows.length}.`);
  const back = (row: TabRow | undefined): number =>
    row === undefined ? 0 : setback(radiusOf(row.turn, insideRadius), thickness, Math.abs(turnOf(row.turn)));
  const base = inset(corners, rows.map(back));
  const sketch: Sketch = { plates: [{ outline: [], holes: [] }], bends: [] };
  const outline: Vec2[] = [];
  for (const [i, row] of rows.entries()) {
    const [start, end] = [base[i]!, base[(i + 1) % base.length]!];
    outline.push(start);
    if (row === undefined) continue;
    const flat = row.length - back(row);
    const space = (length2(sub2(end, start)) - row.count * row.width) / (row.count + 1);
    if (flat <= 0 || space <= 0) {
      return refused('flange too short', `The row on edge ${i + 1} leaves ${flat.toFixed(2)} mm flat in a tab and ${space.toFixed(2)} mm between tabs.`, { by: -Math.min(flat, space) });
    }
    const along = unit2(sub2(end, start));
    for (let k = 0; k < row.count; k++) {
      const from = add2(start, scale2(along, space + k * (space + row.width)));
      const to = add2(from, scale2(along, row.width));
      outline.push(from, to);
      grow(sketch, 0, { from, to }, row.turn, insideRadius, polygon([
        [0, 0],
        [row.width, 0],
        [row.width, flat],
        [0, flat],
      ]));
    }
  }
  sketch.plates[0] = { outline: polygon(outline), holes: [] };
  return done(partOf(name, thickness, sketch, 'Base and tabs are outside measures.'));
};
