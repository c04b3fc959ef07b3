import type { FitBoard, NotRead, PieceDifference, PieceRecord } from '../../fit/index.js';
import type { Developed } from '../../sheet/index.js';
import type { Machine } from '../../shop/index.js';
import type { Trial } from '../../trial/index.js';
import type { Units } from '../format.js';

/** A part as the report draws it. */
export interface ReportPart {
  /** As formed by a trial's tools where there is one, else developed by a named rule. */
  readonly sheet: Developed;
  /** What the flat lengths rest on, in words. */
  readonly flatBy: string;
  readonly demo: boolean;
}

/** What a person typed: printed as it stands, under its own heading. */
export interface ReportTyped {
  readonly date?: string;
  readonly who?: string;
  /** For whom. */
  readonly buyer?: string;
  readonly delivery?: string;
  readonly warranty?: string;
  readonly remarks?: string;
}

/** Pieces made of one part on one machine. */
export interface Demonstrated {
  readonly part: string;
  readonly machine: string;
  /** Those that no later entry corrects. */
  readonly records: readonly PieceRecord[];
  readonly differences: readonly PieceDifference[];
}

/** All that the buyer's report is made from; plain data. */
export interface ReportData {
  readonly board: FitBoard;
  /** In the board's order. */
  readonly parts: readonly ReportPart[];
  readonly machines: readonly Machine[];
  /** Every rack that a column was planned with. */
  readonly racks: readonly { readonly name: string; readonly demo: boolean }[];
  readonly metal: { readonly id: string; readonly name: string };
  readonly quantity: number;
  /** One part on one machine, shown stroke by stroke; null where nothing is made. */
  readonly walk: Trial | null;
  /** What was really made: kept apart from all predictions. */
  readonly demonstrated: readonly Demonstrated[];
  /** What was handed in and is no part that a brake can bend. */
  readonly notRead?: readonly NotRead[];
  readonly typed: ReportTyped;
  readonly units?: Units;
}
