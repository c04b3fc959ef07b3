import type { ConditionFigures } from './conditionFigures.js';

/** mm below which a figure is written as 0.000. */
const NOTHING = 0.0005;

/** What is set against the wear, with its figures: "a tilt of 0.040 mm over 1,000 mm, the ram lower to the right, and a crowning of 0.020 mm"; null where nothing is (`nothingSet` says why). */
export const settingInWords = ({ corrected, works }: Pick<ConditionFigures, 'corrected' | 'works'>): string | null => {
  if (corrected === null) return null;
  const set = [
    ...(works.tilt && Math.abs(corrected.tilt) >= NOTHING ? [`a tilt of ${Math.abs(corrected.tilt).toFixed(3)} mm over 1,000 mm, the ram lower to the ${corrected.tilt > 0 ? 'right' : 'left'},`] : []),
    ...(works.crowning && Math.abs(corrected.crowning) >= NOTHING ? [`a crowning of ${corrected.crowning.toFixed(3)} mm`] : []),
  ];
  return set.length === 0 ? null : set.join(' and ').replace(/,$/, '');
};

/** Said in its place. */
export const nothingSet = ({ works: { tilt, crowning } }: Pick<ConditionFigures, 'works'>): string =>
  tilt || crowning ? `no setting of ${tilt && crowning ? 'tilt and crowning' : tilt ? 'the tilt' : 'the crowning'} lessens it` : 'neither tilt nor crowning is there and found to work, so nothing is set against it';

/** Where work of the length asked meets least wear and what standing there avoids; null where that is not known. */
export const placeInWords = ({ elsewhere, avoided }: Pick<ConditionFigures, 'elsewhere' | 'avoided'>): string | null => {
  if (elsewhere === null) return null;
  if (avoided !== null && avoided < NOTHING) return 'no place is better than the middle';
  const [from, to] = elsewhere.window.map((at) => at.toFixed(0));
  return `from ${from} to ${to} mm${avoided === null ? '; the middle was not all measured' : `: standing there avoids ${avoided.toFixed(3)} mm of it`}`;
};
