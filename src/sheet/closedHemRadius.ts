/** mm: faces of a hem as closed as it gets lie twice this apart (common practice, no source). */
export const CLOSED_HEM_RADIUS = 0.1;

/** mm: rounding. */
const ROUND = 1e-6;

/** Does a hem of this inside radius keep a gap when it is closed, wider than one pressed flat has? */
export const staysOpen = (insideRadius: number): boolean => insideRadius > CLOSED_HEM_RADIUS + ROUND;
