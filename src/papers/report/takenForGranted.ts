import { notReckoned } from '../../fit/index.js';
import type { ReportData } from './reportData.js';

/** Why no set is told to be the cheapest: that of each machine alone is reckoned in one go with it, once every part was tried. */
const notReckoned = ({ alone }: ReportData['board']): string =>
  alone.length === 0 ? 'not reckoned, since not every part has been tried on every machine' : 'not reckoned, since the prices are in several currencies';

/** What the report rests on and nobody has said: each sentence once. */
export const takenForGranted = ({ parts, board, walk }: Pick<ReportData, 'parts' | 'board' | 'walk'>): readonly string[] => [
  ...new Set([
    ...parts.flatMap(({ sheet }) => sheet.part.assumptions.map(({ sentence }) => `${sheet.part.name}: ${sentence}`)),
    ...(walk?.assumptions ?? []),
    `How "cheapest" is counted: ${board.cheapest?.model ?? notReckoned(board)}`,
  ]),
];
