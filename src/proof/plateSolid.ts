import { type Contour, flatten } from '../geometry/index.js';
import { type Kernel, type Manifold, section } from './engine.js';
import { CHORD_ERROR } from './tolerances.js';

/** A plate's metal in its own frame, `thickness` thick about z = 0. Without `holes` it is the outline filled. */
export const plateSolid = (
  kernel: Kernel,
  outline: Contour,
  holes: readonly Contour[],
  thickness: number,
): Manifold => {
  const flat = section(kernel, [outline, ...holes].map((c) => flatten(c, CHORD_ERROR)), 'Positive');
  const solid = flat.extrude(thickness, 0, 0, [1, 1], true);
  flat.delete();
  return solid;
};
