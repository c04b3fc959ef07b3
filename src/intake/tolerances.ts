/** mm a curve may leave the chords it is cut into: a hundredth is far below what a brake can hold or a rule can read. */
export const CURVE_CHORD = 0.01;
/** A quarter of a curve is halved at most this often: 2^10 chords of a hundredth follow anything that can be cut. */
export const MOST_HALVINGS = 10;
/** mm by which two distances may differ and still be drawn as the same: ten times what CAD systems write as exact. */
export const SAME_LENGTH = 0.01;
/** mm within which two ends are the same corner: the modelling tolerance of common CAD kernels is 0.001 to 0.005. */
export const SAME_POINT = 0.005;
/** Radians within which two directions are the same: 0.01 mm over 100 mm. */
export const SAME_DIRECTION = 1e-4;
/** mm below which an edge has no length: the kernel's own confusion is 1e-7. */
export const NO_LENGTH = 1e-6;
/** Fraction digits kept by polygon clipping (mm): 1e-6 mm over metres still fits its 53-bit integers. */
export const CLIP_DIGITS = 6;
/** mm of chord error when two arcs' regions are only compared, not kept. */
export const COMPARE_CHORD = 0.002;
/**
 * Relative error asked of the kernel's areas and volumes. Without a bound its fixed number of integration points is
 * wrong by 2 per cent on a plate with cut-out letters.
 */
export const MEASURE_SHARE = 1e-4;
/** Radians: CAD tangency is kept to about 0.01 degree, over the small radii met here to ten times that. */
export const TANGENT = 2e-3;
/**
 * Share of the thickness by which faces back to back may differ from it and still be that sheet: models turned from gauge numbers
 * or thickened face by face are off by hundredths (common practice, no source); mills are allowed more, but draw no two faces apart.
 */
export const VARYING_SHARE = 0.03;
