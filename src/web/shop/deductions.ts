import type { MeasuredDeduction } from '../../forming/index.js';
import type { ShopRevision } from '../../store/index.js';

/** The shop's measured deductions as the server tells them. */
export interface MeasuredAnswer {
  /** Null while nothing was taken in. */
  readonly revision: number | null;
  readonly rows: readonly MeasuredDeduction[];
  readonly revisions: readonly ShopRevision[];
}
