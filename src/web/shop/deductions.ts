import type { FittedTools, MeasuredDeduction } from '../../forming/index.js';
import type { ShopRevision } from '../../store/index.js';

/** The shop's measured deductions as the server tells them. */
export interface MeasuredAnswer {
  /** Null while nothing was taken in. */
  readonly revision: number | null;
  readonly rows: readonly MeasuredDeduction[];
  /** The same rows by metal and tools, each with its fitted K. */
  readonly tools: readonly FittedTools[];
  readonly revisions: readonly ShopRevision[];
}
