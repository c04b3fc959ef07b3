/**
 * Every number that the replay allows itself, each with its reason. mm unless said. The base allowance is the one that
 * docs/kinematics.md states; it is written again here, since the proof shares no code with what it checks.
 */

/** Bodies that shall not touch keep at least this. Common practice, no source. */
export const ALLOWANCE = 1;

/** An arc is cut into chords that leave it by no more than this. */
export const CHORD_ERROR = 0.02;

/** What a measured distance may be wrong by: the chords of both bodies, and rounding (meshes of bends are single precision). */
export const MEASURING = 2 * CHORD_ERROR + 0.01;

/** Contact that is the purpose of the stroke may look this deep: the metal's thickness is nominal, the pose a formula. */
export const CONTACT_DEPTH = 0.05;

/**
 * The punch nose against the metal within reach: the radius under load is a little smaller than the formed one
 * (a 10 mm arc released from 95 to 90 degrees of bend angle opens by 0.34), which the pose formula only follows roughly.
 */
export const NOSE_DEPTH = 0.25;

/** Two plates of one part: drawn mitres meet without a gap, both are cut into chords, and their rounding adds. */
export const PLATE_DEPTH = 0.05 + 2 * CHORD_ERROR;

/** Beyond reach the wing may come near the nose; it may not look deeper in it than the chords of both can make it. */
export const NOSE_OVERLAP = 2 * CHORD_ERROR;

/** The sheet at the fingers: how far the touching face may lie from the stop's stated X. */
export const STOP_DEPTH = 0.05;

/**
 * With the gauge left standing, the lower edge of the turning sheet first moves back by about (t - n)^2 / 2L (n the
 * neutral line's depth, L the stopped length): 0.16 at t = 3, L = 10, before it leaves. Finger and sheet give by as much.
 */
export const STOP_PUSH = 0.25;

/** A finger that bears on less than this cannot be said to touch. */
export const LEAST_BEARING = 1;

/** Bends of one stroke lie on one line within this, and other frames that must agree do so too. */
export const COLLINEAR = 0.05;

/** Metal at either end of a bend line that may stand without tool. Common practice, no source. */
export const UNCOVERED_END = 5;

/** Play between segments that stand side by side. Common practice, no source. */
export const SEGMENT_PLAY = 0.5;

/** An empty punch stays this clear of its own die: ram position and deflection are not known better. Common practice, no source. */
export const EMPTY_GAP = 0.2;

/** Positions and lengths read from the record that must equal each other. */
export const RECORD = 0.02;

/** Degrees: angles read from the record that must equal each other. */
export const RECORD_ANGLE = 0.01;

/** A die top this much above the working one is still under the lying sheet: dies are ground to it. */
export const SAME_HEIGHT = 0.05;

/** Distances are measured up to here. */
export const HORIZON = 20;

/** However far apart, a pair is looked at again after moving this far: a round figure that people can judge. */
export const MOST_MOTION = 5;

/** Boxes decide where they show more than this, so that the exact distance cannot matter for the next look. */
export const NEAR = 3;

/** The least motion between two looks at a pair that keeps the allowance: less is found only once it is broken. */
export const CLEAR_FLOOR = 0.5;

/** The least motion between two looks at a pair that may come close without touching. */
export const TOUCH_FLOOR = 0.2;

/** Degrees of bend angle (or of a tilt): the same, where the motion is a turn. */
export const TURN_FLOOR = 0.25;

/** Degrees of bend angle between two looks at contact that is the purpose of the stroke. */
export const CONTACT_STEP = 2;

/**
 * Degrees of bend angle: the least step of metal that may come near the step's own punch. Seen from the punch, a point
 * within 35 of the tip (where flanks end) moves 0.16 in that, the wing turning by half of it.
 */
export const NOSE_STEP = 0.5;

/** mm: how far floor, frames and windows reach; further than any sheet. */
export const FAR = 20_000;

/** Shared space thinner than this is two faces that meet. */
export const ROUNDING = 0.01;

/** Flat metal kept beyond where the shoulder bears on it, over the V between the shoulders' tangent points. Common practice, no source. */
export const FLANGE_MARGIN = 0.07;

/** Thicknesses that a flange lies under the land of an offset tool. Common practice, no source. */
export const OFFSET_HOLD = 2;

/** A slit of no more than this across the flat parts nothing. Common practice, no source. */
export const SLIT = 1;

/** How far metal beside a bend may miss what is asked by rounding and chords. */
export const FLANGE_MEASURING = 0.1;
