import { type Contour, type Vec2, vertex } from '../geometry/index.js';
import { bendKind, rolledAssumptions } from './bendKind.js';
import type { Bend, Line, Part, Plate } from './part.js';

/** A bend angle with its sign: positive towards the A side, negative towards B. A radius of its own where given (mm). */
export type Turn = number | { readonly turn: number; readonly insideRadius: number };

export const turnOf = (turn: Turn): number => (typeof turn === 'number' ? turn : turn.turn);
export const radiusOf = (turn: Turn, insideRadius: number): number =>
  typeof turn === 'number' ? insideRadius : turn.insideRadius;

/** A part in the making: plates and bends that grow from a first plate. */
export interface Sketch {
  readonly plates: Plate[];
  /** How each is made is said when the thickness is. */
  readonly bends: Omit<Bend, 'kind'>[];
}

export const polygon = (points: readonly Vec2[]): Contour => points.map(([x, y]) => vertex(x, y));

/** The full strip of a bend of the given length. */
export const fullZone = (length: number): readonly Contour[] => [
  polygon([
    [0, 0],
    [length, 0],
    [length, 1],
    [0, 1],
  ]),
];

/**
 * Adds a plate across a bend. `edge` runs along the parent's outline (counter-clockwise, metal on its left); the new
 * plate's own frame has u of the bend as x: its `outline` begins on y = 0 between x = `start` and start + length of the edge.
 * Returns the new plate's index.
 */
export const grow = (
  sketch: Sketch,
  parent: number,
  edge: Line,
  turn: Turn,
  insideRadius: number,
  outline: Contour,
  start = 0,
): number => {
  const length = Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]);
  const child = sketch.plates.push({ outline, holes: [] }) - 1;
  const bendAngle = Math.abs(turnOf(turn));
  sketch.bends.push({
    id: `b${sketch.bends.length + 1}`,
    // plate 0 lies to the right of its line: against the run of its outline
    sides: [
      { plate: parent, line: { from: edge.to, to: edge.from } },
      { plate: child, line: { from: [start, 0], to: [start + length, 0] } },
    ],
    bendAngle,
    direction: turnOf(turn) > 0 ? 'A' : 'B',
    insideRadius: radiusOf(turn, insideRadius),
    zone: fullZone(length),
  });
  return child;
};

/** The finished sketch as a part drawn in mm. */
export const partOf = (name: string, thickness: number, sketch: Sketch, sentence: string): Part => {
  const bends = sketch.bends.map((bend): Bend => ({ ...bend, kind: bendKind(bend.bendAngle, bend.insideRadius, thickness) }));
  return {
    name,
    thickness,
    plates: sketch.plates,
    bends,
    assumptions: [{ code: 'profile', sentence, plates: [], bends: [] }, ...rolledAssumptions(bends, thickness)],
    unit: 'mm',
  };
};
