import { DEFAULT_K } from '../forming/index.js';
import { develop, type Dimension, dimensionFault, edgeAt, type Feature, type Part, plateNames } from '../sheet/index.js';
import { describeDimension } from '../trial/index.js';

/** Plates and bends bear the same numbers: these plates, joined by these bends. */
const sameTree = (a: Part, b: Part): boolean =>
  a.plates.length === b.plates.length && JSON.stringify(a.bends.map(({ id, sides }) => [id, sides.map(({ plate }) => plate)])) === JSON.stringify(b.bends.map(({ id, sides }) => [id, sides.map(({ plate }) => plate)]));

/** An edge is found by a point near it: it is the same one where it stands at the same place of an outline of as many edges. */
const sameFeature = (a: Part, b: Part, feature: Feature): boolean =>
  feature.kind !== 'edge' || (a.plates[feature.plate]!.outline.length === b.plates[feature.plate]!.outline.length && edgeAt(a, feature.plate, feature.at) === edgeAt(b, feature.plate, feature.at));

const asked = ({ tolerance, class: cls }: Dimension): string => (tolerance !== undefined ? `, plus and minus ${tolerance} mm` : cls !== undefined ? `, class ${cls}` : '');

interface Kept {
  readonly part: Part;
  /** Which dimensions the part no longer has; '' for none. */
  readonly words: string;
}

/** A part that was read again, with those dimensions of `before` that mean the same on it; those that do not are named. */
export const keptDimensions = (read: Part, before: Part): Kept => {
  const { dimensions = [] } = before;
  if (dimensions.length === 0) return { part: read, words: '' };
  const alike = sameTree(before, read);
  const sheet = develop(read, read.rule ?? { name: 'K-factor', k: DEFAULT_K });
  const stays = (it: Dimension): boolean => alike && it.between.every((feature) => sameFeature(before, read, feature)) && dimensionFault(sheet, it) === null;
  const kept = dimensions.filter(stays);
  const names = plateNames(before);
  const lost = dimensions.filter((it) => !stays(it)).map((it) => `${it.id} (${describeDimension(it, names, before)}${asked(it)})`);
  return {
    part: kept.length === 0 ? read : { ...read, dimensions: kept },
    words: lost.length === 0 ? '' : `${lost.length === 1 ? 'dimension' : 'dimensions'} dropped, not to be read on the part any longer: ${lost.join('; ')}`,
  };
};
