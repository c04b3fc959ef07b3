/** A set of folds: those with all groups of `made` made and none of `unmade` (bits of groups); the others are free. */
export interface Cube {
  readonly made: number;
  readonly unmade: number;
}

/**
 * Cubes that together hold every fold that is not `good`, and no good one: each is grown from one bad fold by freeing groups
 * as long as no good fold falls in. `strokes` groups in all; folds with `self` made are nobody's business.
 */
export const cubesOfBad = (strokes: number, self: number, good: ReadonlySet<number>): readonly Cube[] => {
  const cubes: Cube[] = [];
  const holds = ({ made, unmade }: Cube, fold: number): boolean => (fold & made) === made && (fold & unmade) === 0;
  const all = 2 ** strokes - 1;
  for (let fold = 0; fold <= all; fold++) {
    if ((fold & (1 << self)) !== 0 || good.has(fold) || cubes.some((c) => holds(c, fold))) continue;
    let cube: Cube = { made: fold, unmade: all & ~fold & ~(1 << self) };
    for (let g = 0; g < strokes; g++) {
      const wider: Cube = { made: cube.made & ~(1 << g), unmade: cube.unmade & ~(1 << g) };
      if (![...good].some((f) => holds(wider, f))) cube = wider;
    }
    cubes.push(cube);
  }
  return cubes;
};
