import type { BoardMachine, FitCell, PieceDifference, PieceRecord } from '../../fit/index.js';
import type { FitPart, FitView } from '../../server/index.js';
import type { Machine } from '../../shop/index.js';
import { nameOnRecord } from '../nameOnRecord.js';

/** What GET /api/fits/:id/report answers (docs/api.md). */
export interface Report {
  readonly answer: string;
  readonly cheapest: readonly string[];
  /** Every part is made by what is named there. */
  readonly all: boolean;
  readonly alone: readonly string[];
  readonly typed: { readonly date?: string };
  readonly metal: { readonly name: string };
  readonly quantity: number;
  readonly walkTrialId: string | null;
  readonly demonstrated: readonly { readonly part: string; readonly machine: string; readonly records: readonly PieceRecord[]; readonly differences: readonly PieceDifference[] }[];
  /** For each part: why machines do not make it, those with the same reasons together. */
  readonly why: readonly (readonly { readonly heading: string; readonly lines: readonly { readonly sign: string; readonly words: string }[] }[])[];
  /** Of every part, and beside the verdicts of each. */
  readonly beware: { readonly ofAll: readonly string[]; readonly ofPart: readonly (readonly string[])[] };
  readonly taken: readonly string[];
  readonly racks: readonly { readonly name: string; readonly demo: boolean }[];
  readonly how: readonly { readonly sign: string; readonly words: string }[];
  readonly parts: readonly (FitPart & { readonly demo: boolean })[];
  readonly machines: readonly BoardMachine[];
  readonly sums: FitView['sums'];
  readonly options: FitView['options'];
  readonly site: readonly Pick<Machine, 'name' | 'site' | 'price' | 'currency' | 'demo'>[];
  readonly cells: readonly (readonly (FitCell & { readonly trialId: string | null })[])[];
}

/** What is typed for the paper, kept in this browser until the next time. */
export const TYPED = [['buyer', 'For whom'], ['who', 'Who hands it over'], ['delivery', 'Delivery'], ['warranty', 'Warranty'], ['remarks', 'Remarks']] as const;
export type Typed = Readonly<Record<(typeof TYPED)[number][0], string>>;
const KEPT = 'brakewright.report';

const NOTHING: Typed = { buyer: '', who: '', delivery: '', warranty: '', remarks: '' };

export const keptTyped = (): Typed => {
  try {
    return { ...NOTHING, ...(JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Partial<Typed>) };
  } catch {
    return NOTHING;
  }
};
export const keepTyped = (typed: Typed): void => localStorage.setItem(KEPT, JSON.stringify(typed));

/** The query that prints what was typed; who hands it over is the name on record where none is typed. */
export const queryOf = (typed: Typed): string => new URLSearchParams(Object.entries({ ...typed, who: typed.who.trim() === '' ? nameOnRecord() : typed.who }).filter(([, words]) => words.trim() !== '')).toString();
