/** mm a curve may leave the chords it is cut into: a hundredth is far below what a brake can hold or a rule can read. */
export const CURVE_CHORD = 0.01;

/** A quarter of a curve is halved at most this often: 2^10 chords of a hundredth follow anything that can be cut. */
export const MOST_HALVINGS = 10;
