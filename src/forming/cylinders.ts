/** What two cylinders bear, N, and whether that can be. */
export interface CylinderForces {
  readonly left: number;
  readonly right: number;
  /** True when one of them would have to pull: the ram is levered up and the stroke is refused. */
  readonly levered: boolean;
}

/**
 * Forces of two cylinders at -spacing/2 and +spacing/2 for a resultant at `at` (mm to the operator's right of the
 * middle): statics. Each may bear half the rating.
 *
 * @example cylinderForces(600e3, 250, 2550) // left 241176, right 358824
 */
export const cylinderForces = (force: number, at: number, spacing: number): CylinderForces => {
  const left = force * (0.5 - at / spacing);
  const right = force * (0.5 + at / spacing);
  return { left, right, levered: left < 0 || right < 0 };
};
