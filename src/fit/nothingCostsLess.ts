import type { FitBoard } from './fitBoard.js';

/** Does the set over all machines leave the drawing of a part as it is that some machine alone would only make with a change to it? It may then cost more than that machine. */
export const leavesDrawings = ({ cheapest, alone }: Pick<FitBoard, 'cheapest' | 'alone'>): boolean =>
  cheapest !== null && alone.some((one) => one?.asked.some(({ part }) => !cheapest.cannot.includes(part) && !cheapest.asked.some((it) => it.part === part)));

/** What is said of a set that is proven the cheapest: of one machine alone, or with `board` of all of them. */
export const nothingCostsLess = (board?: Pick<FitBoard, 'cheapest' | 'alone'>): string =>
  board && leavesDrawings(board) ? 'nothing costs less that changes the drawings as little' : 'nothing costs less, as counted';
