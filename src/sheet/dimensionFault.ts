import { cross3, dot3, length3, turn } from '../geometry/index.js';
import type { Developed } from './developed.js';
import { edgeAt, featurePlane, valueOf } from './dimension.js';
import { fold } from './fold.js';
import type { Dimension, Feature } from './part.js';

/** Faces and edges within this sine are parallel: a length can be read between them. */
const PARALLEL = 1e-3;
/** mm: two features in one plane have no length between them. */
const LEAST = 0.01;

const missing = ({ part }: Developed, feature: Feature): string | null => {
  const plate = part.plates[feature.plate];
  if (plate === undefined) return `the part has no plate ${feature.plate + 1}`;
  if (feature.kind === 'edge') {
    const v = plate.outline[edgeAt(part, feature.plate, feature.at)];
    return v === undefined || v.bulge !== 0 ? `plate ${feature.plate + 1} has no straight edge` : null;
  }
  if (feature.kind !== 'corner') return null;
  const bend = part.bends[feature.bend];
  if (bend === undefined) return `the part has no bend number ${feature.bend + 1}`;
  return bend.sides.some((side) => side.plate === feature.plate) ? null : `bend ${bend.id} does not join plate ${feature.plate + 1}`;
};

/** Why no length can be read between the two features of a dimension, in a sentence; null where one can. */
export const dimensionFault = (sheet: Developed, { between }: Pick<Dimension, 'between'>): string | null => {
  for (const feature of between) {
    const lost = missing(sheet, feature);
    if (lost !== null) return `No dimension: ${lost}.`;
  }
  const { poses } = fold(sheet, sheet.part.bends.map(({ bendAngle }) => bendAngle));
  const [p, q] = between.map((feature) => turn(poses[feature.plate]!, featurePlane(sheet, feature).normal)) as [ReturnType<typeof turn>, ReturnType<typeof turn>];
  if (length3(cross3(p, q)) > PARALLEL) {
    const angle = (Math.acos(Math.min(1, Math.abs(dot3(p, q)))) * 180) / Math.PI;
    return `No length lies between the two: they stand at ${angle.toFixed(1)} degrees to each other.`;
  }
  if (valueOf(sheet, { between }) < LEAST) return 'No length lies between the two: they lie in one plane.';
  return null;
};
