import type { BoardMachine, Cheapest, ColumnSum, FitBoard, FitCell } from '../fit/index.js';

/** A part of a fit: which one, and which revision of it. */
export interface FitPart {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  /** mm */
  readonly thickness: number;
  readonly bends: number;
}

/** A cell with the trial that it was read from, where that was kept. */
export interface KeptCell extends FitCell {
  readonly trialId: string | null;
  /** Why not, in a few words; null where it is made. */
  readonly inShort: string | null;
  /** What would change it, in a few words; null where nothing is to be said. */
  readonly changeShort: string | null;
}

/** A fit as the API shows it. */
export interface FitView {
  readonly id: string;
  readonly state: 'queued' | 'running' | 'done' | 'stopped' | 'failed';
  /** One sentence where the state needs it. */
  readonly why: string | null;
  readonly metalId: string;
  readonly metalName: string;
  readonly quantity: number;
  /** ISO 2768-1 class asked of what carries no tolerance of its own, null for none. */
  readonly toleranceClass: string | null;
  readonly createdAt: string;
  readonly endedAt: string | null;
  readonly by: string;
  /** s of processor time that the search for a cell is given. */
  readonly seconds: number;
  /** What is being worked on, in words; null while nothing is. */
  readonly doing: string | null;
  /** Cells done, of how many (those with an option fitted too), how many of them known before. */
  readonly done: number;
  readonly of: number;
  readonly fromCache: number;
  readonly parts: readonly FitPart[];
  readonly machines: readonly BoardMachine[];
  /** A row for each part, a cell for each machine; null while it is not computed. */
  readonly cells: readonly (readonly (KeptCell | null)[])[];
  /** Which machine makes all parts, or the most, in words; and of each machine how many, why not the others, what would change it. */
  readonly answer: string;
  readonly sums: readonly ColumnSum[];
  /** Null until all cells are there. */
  readonly cheapest: FitBoard['cheapest'];
  readonly drawingsFree?: Cheapest;
  readonly alone: FitBoard['alone'];
  /** What each option buys; empty until it is known. */
  readonly options: FitBoard['options'];
}

/** What a list and the stream of changes tell of a fit: all but the board. */
export type FitSummary = Omit<FitView, 'cells' | 'answer' | 'sums' | 'cheapest' | 'drawingsFree' | 'alone' | 'options'>;

export const fitSummary = ({ cells: _, cheapest: __, alone: ___, options: ____, answer: _____, sums: ______, drawingsFree: _______, ...summary }: FitView): FitSummary => summary;
