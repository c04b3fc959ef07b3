/** mm: faces of a hem as closed as it gets lie twice this apart (common practice, no source). */
export const CLOSED_HEM_RADIUS = 0.1;
