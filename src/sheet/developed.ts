import type { Part } from './part.js';

/**
 * A part together with the flat length that each of its bends takes up (mm, in the order of `part.bends`). The
 * lengths come from a named rule (then the blank is nominal) or from the radii that a trial's tools form.
 */
export interface Developed {
  readonly part: Part;
  readonly allowances: readonly number[];
}
