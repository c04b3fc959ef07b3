/** Every allowance and bound of the planner, each with its reason. mm unless said. */

/** V openings looked at, as multiples of the thickness. Common practice, no source. */
export const V_LEAST = 4;
export const V_MOST = 16;

/** What bodies that shall not touch keep between them. Common practice, no source; the proof asks the same. */
export const BASE_ALLOWANCE = 1;

/** A running wing may come near the punch's nose (the nose angle is a limit of its own); this covers rounding alone. */
export const NOSE_ALLOWANCE = 0.02;

/** How far an arc of a plate or tool is left when it is cut into chords for clearance. */
export const CHORD_ERROR = 0.02;

/** Plates of one part may touch: drawn mitres meet without a gap, both plates are cut into chords, and their rounding adds. The proof grants the same. */
export const PLATE_OVERLAP = 0.05 + 2 * CHORD_ERROR;

/** Two plates that may run into each other are looked at until no point moves further than this between two looks; it counts as overlap. */
export const PLATE_MOTION = 0.01;

/** A rotation is cut until no point moves further than this between two looks; it is added to the allowance. */
export const SWEEP_MOTION = 0.1;

/** Where bodies overlap by more than four times this, looks this far apart are close enough: the answer only widens. */
export const ROUGH_MOTION = 1;

/** Along the bed what is ruled out may reach so much further than closer looks would find: the answer only widens. */
export const ROUGH_ALONG = 0.5;

/** What rules out no more than this of an end of what a bend needs is looked at closely before it forbids the stroke. */
export const NEAR_END = 3;

/** What counts as lying on the die top: drawn thickness and modelled gaps differ by rounding. */
export const ON_DIE_TOP = 0.01;

/** How much of a bend line's end may stand without tool. Common practice, no source. */
export const UNCOVERED_END = 5;

/** Room left between the sheet and what it passes over while it is carried. Common practice, no source. */
export const CARRY_ROOM = 3;

/** A stop edge shorter than this lets the sheet skew. Common practice, no source. */
export const LEAST_STOP_EDGE = 5;

/** Bend lines nearer than this to one straight line are bent by one stroke. */
export const COLLINEAR = 0.05;

/** Stations keep so much room between them for hands and clamps. Common practice, no source. */
export const BETWEEN_STATIONS = 40;

/** A sheet at its station keeps so much from the tools of any other: it is laid to a mark along the bed by hand. Common practice, no source. */
export const BESIDE_SHEET = 10;
