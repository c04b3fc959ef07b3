import { arrowHead } from './dimension.js';
import { labelRow } from './labelRow.js';
import { LETTERS } from './pens.js';
import { type Item, group, polyline, text } from './picture.js';
import { textWidth } from './textWidth.js';

export interface Labelled {
  /** Where the leader's arrow stands: the middle of the station and the top of its punch. mm of paper */
  readonly x: number;
  readonly top: number;
  /** What may stand in the label, from the longest to the shortest. */
  readonly words: readonly string[];
}

/** mm of paper: base of the letters, the line under them, air between two labels. */
const BASE = 2.7;
const LINE = 3.5;
const AIR = 3;

/**
 * The names of the stations in one row over the bed. The leaders fall from their labels, which stand in the order of the stations, to the
 * level `kink` and go down upright from there: so none crosses another, and no letters stand in their way. All labels of a row say as much.
 */
export const stationLabels = (stations: readonly Labelled[], width: number, kink: number): readonly Item[] => {
  const sorted = [...stations].sort((a, b) => a.x - b.x);
  const most = Math.max(0, ...sorted.map(({ words }) => words.length));
  for (let k = 0; k < most; k++) {
    const shown = sorted.map(({ words }) => words[Math.min(k, words.length - 1)]!);
    const widths = shown.map((words) => textWidth(words, LETTERS.normal) + 1);
    const places = labelRow(sorted.map(({ x }) => x), widths, 1, width - 1, AIR);
    if (places === null) continue;
    return sorted.map(({ x, top }, i): Item => {
      const [middle, half] = [places[i]!, widths[i]! / 2];
      return group('leader', [
        text([middle, BASE], shown[i]!, LETTERS.normal),
        polyline('thin', [[middle - half, LINE], [middle + half, LINE]]),
        polyline('thin', [[middle, LINE], [x, kink], [x, top]]),
        arrowHead([x, top], [0, 1]),
      ]);
    });
  }
  return [];
};
