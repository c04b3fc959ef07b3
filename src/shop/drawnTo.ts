/** mm by which a profile may miss its tip, its top or its stated height: rounding in a drawing, no more. */
export const DRAWN_TO = 0.01;
