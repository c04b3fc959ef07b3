import type { Part } from '../sheet/index.js';
import type { Group } from './groups.js';

/** mm of tool that a stroke loads: an offset tool folds both its bends over one length. */
export const strokeLength = (part: Part, { bends, offset }: Group): number =>
  (offset ? bends.slice(0, 1) : bends).reduce((sum, b) => sum + bendLength(part, b), 0);

/** mm of metal that a bend folds. */
export const bendLength = (part: Part, bend: number): number =>
  part.bends[bend]!.zone.reduce((sum, contour) => {
    const us = contour.map((v) => v.x);
    return sum + (us.length > 0 ? Math.max(...us) - Math.min(...us) : 0);
  }, 0);
