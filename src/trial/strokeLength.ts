import { type Interval, signedArea } from '../geometry/index.js';
import type { Bend, Part } from '../sheet/index.js';
import type { Group } from './groups.js';

/** Share of the arc. */
const MIDDLE = 0.5;

/** mm of tool that a stroke loads: an offset tool folds both its bends over one length. */
export const strokeLength = (part: Part, { bends, offset }: Group): number =>
  (offset ? bends.slice(0, 1) : bends).reduce((sum, b) => sum + bendLength(part, b), 0);

/**
 * From where to where along a bend's line its metal is bent: what goes across the middle of the arc, for metal that ends before it hardly
 * turns. Holes are filled. mm
 */
export const lengthsBent = ({ zone }: Bend): readonly Interval[] => {
  const outlines = zone.filter((contour) => signedArea(contour) > 0);
  const across = outlines.flatMap((contour): readonly Interval[] => {
    const places = contour.flatMap((p, i) => {
      const q = contour[(i + 1) % contour.length]!;
      return p.y > MIDDLE !== q.y > MIDDLE ? [p.x + ((q.x - p.x) * (MIDDLE - p.y)) / (q.y - p.y)] : [];
    }).sort((a, b) => a - b);
    return places.flatMap((from, k) => (k % 2 === 0 ? [[from, places[k + 1]!] as const] : []));
  });
  return across.length > 0 ? across : outlines.map((contour) => [Math.min(...contour.map((v) => v.x)), Math.max(...contour.map((v) => v.x))]);
};

/** mm of metal that a bend folds. */
export const bendLength = (part: Part, bend: number): number => lengthsBent(part.bends[bend]!).reduce((sum, [from, to]) => sum + to - from, 0);
