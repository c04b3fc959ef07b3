import { type ArmFlange, type Part, type Sketch, grow, partOf, polygon, profilePart, trayPart } from '../src/sheet/index.js';
import { mulberry32 } from './mulberry32.js';

const THICKNESS = 1.5;
const INSIDE_RADIUS = 1.5;
/** Flat strip that a bend takes up in the layouts below, mm: more than any allowance of a 90 degree bend at this radius. */
const STRIP = 4;

const between = (random: () => number, low: number, high: number): number => low + (high - low) * random();
/** To half a millimetre, as on a drawing. */
const halves = (x: number): number => Math.round(2 * x) / 2;

/**
 * A tray with `arms` edges (4 a rectangle, else a regular polygon) and arms `depth` flanges deep, all turned towards A by
 * 90 degrees: flange, return, lip and so on, each shorter than the one before.
 */
export const randomTray = (seed: number, arms = 4, depth = 2): Part => {
  const random = mulberry32(seed);
  const edge = halves(between(random, 120, 300));
  const arm = (): ArmFlange[] =>
    Array.from({ length: depth }, (_, k) => ({ length: halves(between(random, 20, 40) / (k + 1) + 6), turn: 90 }));
  const base: readonly [number, number] | readonly (readonly [number, number])[] =
    arms === 4
      ? [edge, halves(between(random, 100, 250))]
      : Array.from({ length: arms }, (_, i) => [edge * Math.cos((2 * Math.PI * i) / arms), edge * Math.sin((2 * Math.PI * i) / arms)] as const);
  const same = arm();
  const built = trayPart({
    name: `random tray, seed ${seed}, ${arms} arms of ${depth}`,
    thickness: THICKNESS,
    insideRadius: INSIDE_RADIUS,
    base,
    // opposite arms alike, as on most trays
    arms: Array.from({ length: arms }, (_, i) => (i % 2 === 0 ? same : same.map((flange) => ({ ...flange })))),
  });
  if (!built.ok) throw new Error(`seed ${seed}: ${built.failure.sentence}`);
  return built.value;
};

/** A profile of `n` bends of 30 to 90 degrees to either side; it may run through itself when folded. */
export const randomSerial = (seed: number, n: number): Part => {
  const random = mulberry32(seed);
  const built = profilePart({
    name: `random profile, seed ${seed}, ${n} bends`,
    thickness: THICKNESS,
    insideRadius: INSIDE_RADIUS,
    width: halves(between(random, 80, 300)),
    flanges: Array.from({ length: n + 1 }, () => halves(between(random, 15, 80))),
    turns: Array.from({ length: n }, () => (random() < 0.6 ? 1 : -1) * Math.round(between(random, 30, 90))),
  });
  if (!built.ok) throw new Error(`seed ${seed}: ${built.failure.sentence}`);
  return built.value;
};

interface Box {
  /** Lower left corner and quarter turns of the plate's frame in the flat layout. */
  readonly x: number;
  readonly y: number;
  readonly quarter: number;
  readonly length: number;
  readonly width: number;
}

/** Corners of the box in the layout: x from 0 to length, y from 0 to width of its own frame. */
const extent = (box: Box, margin: number): readonly [number, number, number, number] => {
  const [cx, cy] = [
    [1, 0, -1, 0][box.quarter]! * box.length + [0, -1, 0, 1][box.quarter]! * box.width,
    [0, 1, 0, -1][box.quarter]! * box.length + [1, 0, -1, 0][box.quarter]! * box.width,
  ];
  return [Math.min(box.x, box.x + cx) - margin, Math.min(box.y, box.y + cy) - margin, Math.max(box.x, box.x + cx) + margin, Math.max(box.y, box.y + cy) + margin];
};

/**
 * A tree of up to `n` bends of rectangular plates that grow from the edges of one another without overlapping in the flat;
 * bend angles 20 to 135 degrees to either side. Tabs may be narrower than the edge they grow from. With `apart` false they may
 * overlap: parts to be refused.
 */
export const randomTree = (seed: number, n = 8, apart = true): Part => {
  const random = mulberry32(seed);
  const sketch: Sketch = { plates: [], bends: [] };
  const boxes: Box[] = [];
  const outlineOf = ({ length, width }: Box) =>
    polygon([
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ]);
  const first: Box = { x: 0, y: 0, quarter: 0, length: halves(between(random, 60, 200)), width: halves(between(random, 60, 200)) };
  boxes.push(first);
  sketch.plates.push({ outline: outlineOf(first), holes: [] });
  for (let tries = 0; tries < 20 * n && sketch.bends.length < n; tries++) {
    const parent = Math.floor(random() * boxes.length);
    const box = boxes[parent]!;
    const edge = Math.floor(random() * 4);
    const along = edge % 2 === 0 ? box.length : box.width;
    if (along < 20) continue;
    const length = random() < 0.4 ? along : halves(between(random, 12, along));
    const start = random() < 0.5 ? 0 : halves(between(random, 0, along - length));
    const corners = [
      [0, 0],
      [box.length, 0],
      [box.length, box.width],
      [0, box.width],
    ] as const;
    const way = ([[1, 0], [0, 1], [-1, 0], [0, -1]] as const)[edge]!;
    const at = (s: number) => [corners[edge]![0] + way[0] * s, corners[edge]![1] + way[1] * s] as const;
    const line = { from: at(start), to: at(start + length) };
    // the child's frame: x against the edge, y outwards: its corner is the edge's far end, across the strip
    const turned = (box.quarter + edge + 2) % 4;
    const [px, py] = [line.to[0] + way[1] * STRIP, line.to[1] - way[0] * STRIP];
    const [c, s] = [[1, 0, -1, 0][box.quarter]!, [0, 1, 0, -1][box.quarter]!];
    const child: Box = {
      x: box.x + c * px - s * py,
      y: box.y + s * px + c * py,
      quarter: turned,
      length,
      width: halves(between(random, 12, 90)),
    };
    const [x0, y0, x1, y1] = extent(child, 0);
    const free = boxes.every((other) => {
      const [a0, b0, a1, b1] = extent(other, other === box ? STRIP / 2 : 2 * STRIP);
      return x1 <= a0 || a1 <= x0 || y1 <= b0 || b1 <= y0;
    });
    if (apart && !free) continue;
    const turn = (random() < 0.6 ? 1 : -1) * Math.round(between(random, 20, 135));
    grow(sketch, parent, line, turn, INSIDE_RADIUS, outlineOf(child));
    boxes.push(child);
  }
  return partOf(`random tree, seed ${seed}`, THICKNESS, sketch, 'Plates are drawn flat, between tangent lines.');
};
