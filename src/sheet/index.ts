export type { Assumption, Bend, BendSide, Line, Part, Plate, Side } from './part.js';
export type { Developed } from './developed.js';
