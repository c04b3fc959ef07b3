import type { FitBoard } from './fitBoard.js';

/** Does the set over all machines leave the drawing of a part as it is that a cheaper set, or some machine alone, would only make with a change to it? It may then cost more. */
export const leavesDrawings = ({ cheapest, drawingsFree, alone }: Pick<FitBoard, 'cheapest' | 'drawingsFree' | 'alone'>): boolean =>
  cheapest !== null && (drawingsFree !== undefined || alone.some((one) => one?.asked.some(({ part }) => !cheapest.cannot.includes(part) && !cheapest.asked.some((it) => it.part === part))));

/** What is said of a set that is proven the cheapest: of one machine alone, or with `board` of all of them. */
export const nothingCostsLess = (board?: Pick<FitBoard, 'cheapest' | 'drawingsFree' | 'alone'>): string =>
  board && leavesDrawings(board) ? 'nothing costs less that changes the drawings as little' : 'nothing costs less, as counted';
