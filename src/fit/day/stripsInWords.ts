import type { DayStop } from './dayPlan.js';

/** The test strips to cut for a part, as '4 of 100 by 100 mm' for each size; empty where a part before it has bent the same. */
export const stripsInWords = ({ strips }: Pick<DayStop, 'strips'>): readonly string[] => {
  const sizes = new Map<string, number>();
  for (const { along, across, bends } of strips) {
    const size = `${along.toFixed(0)} by ${across.toFixed(0)} mm`;
    sizes.set(size, (sizes.get(size) ?? 0) + bends.length);
  }
  return [...sizes].map(([size, count]) => `${count} of ${size}`);
};
