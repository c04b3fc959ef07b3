import type { ConditionFigures } from './conditionFigures.js';

/** What is set against the wear, with its figures: "a tilt of 0.040 mm over 1,000 mm and a crowning of 0.020 mm"; null where neither is there and found to work. */
export const settingInWords = ({ corrected, works }: Pick<ConditionFigures, 'corrected' | 'works'>): string | null => {
  if (corrected === null) return null;
  const set = [
    ...(works.tilt ? [`a tilt of ${corrected.tilt.toFixed(3)} mm over 1,000 mm`] : []),
    ...(works.crowning ? [`a crowning of ${corrected.crowning.toFixed(3)} mm`] : []),
  ];
  return set.length === 0 ? null : set.join(' and ');
};

/** Said in its place. */
export const NOTHING_SET = 'neither tilt nor crowning is there and found to work, so nothing is set against it';
