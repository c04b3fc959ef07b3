import { apply, flatten, signedArea } from '../geometry/index.js';
import type { Metal } from '../metal/index.js';
import { type Developed, fold } from '../sheet/index.js';
import { CHORD_ERROR } from './limits.js';

/** The same with its weight, kg. */
export const blankSize = (sheet: Developed, { density }: Pick<Metal, 'density'>): { readonly longest: number; readonly kilograms: number } => {
  const { longest, area } = developedSize(sheet);
  return { longest, kilograms: area * sheet.part.thickness * density * 1e-9 };
};

/** The blank's longest side over its plates (mm) and about its area (mm2), for handling: no stitching needed. */
export const developedSize = (sheet: Developed): { readonly longest: number; readonly area: number } => {
  const { part } = sheet;
  const flat = fold(sheet, part.bends.map(() => 0));
  const points = part.plates.flatMap((p, i) => flatten(p.outline, CHORD_ERROR).map((q) => apply(flat.poses[i]!, [q[0], q[1], 0])));
  const extent = (axis: 0 | 1): number => Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]));
  const plates = part.plates.reduce((sum, p) => sum + signedArea(p.outline) + p.holes.reduce((s, h) => s - Math.abs(signedArea(h)), 0), 0);
  const strips = part.bends.reduce((sum, b, i) => sum + b.zone.reduce((s, c) => s + signedArea(c), 0) * sheet.allowances[i]!, 0);
  return { longest: Math.max(extent(0), extent(1)), area: plates + strips };
};
