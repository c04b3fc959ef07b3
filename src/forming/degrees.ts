/** Radians in a degree. */
export const DEGREE = Math.PI / 180;
