import type { Dimension, Feature, Part } from '../sheet/index.js';

/** A feature as it is called on paper. `names` are the plates'. */
const featureWords = (feature: Feature, names: readonly string[], part: Part): string => {
  const plate = names[feature.plate]!;
  if (feature.kind === 'corner') return `outer corner of ${part.bends[feature.bend]!.id} on ${plate}`;
  return feature.kind === 'edge' ? `edge of ${plate}` : `${feature.side} face of ${plate}`;
};

/** "B face of the base to edge of the flange beyond b1". */
export const describeDimension = ({ between: [one, other] }: Pick<Dimension, 'between'>, names: readonly string[], part: Part): string =>
  one.kind === 'corner' && other.kind === 'corner'
    ? `${names[one.plate]!}, outside, from ${part.bends[one.bend]!.id} to ${part.bends[other.bend]!.id}`
    : `${featureWords(one, names, part)} to ${featureWords(other, names, part)}`;
