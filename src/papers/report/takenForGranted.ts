import { notReckoned } from '../../fit/index.js';
import type { ReportData } from './reportData.js';

/** What the report rests on and nobody has said: each sentence once. */
export const takenForGranted = ({ parts, board, walk }: Pick<ReportData, 'parts' | 'board' | 'walk'>): readonly string[] => [
  ...new Set([
    ...parts.flatMap(({ sheet }) => sheet.part.assumptions.map(({ sentence }) => `${sheet.part.name}: ${sentence}`)),
    ...(walk?.assumptions ?? []),
    `How "cheapest" is counted: ${board.cheapest?.model ?? notReckoned(board)}`,
  ]),
];
