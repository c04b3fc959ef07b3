import type { Store } from '../store/index.js';
import type { EnvelopeDesk } from './envelopeDesk.js';
import type { FitDesk } from './fitDesk.js';
import type { JobPool } from './jobPool.js';
import type { PaperDesk } from './paperDesk.js';
import type { oneAtATime } from './oneAtATime.js';
import type { ShopKeeper } from './shopKeeper.js';
import type { Uploads } from './uploads.js';

/** What the routes work with. */
export interface Context {
  readonly store: Store;
  readonly jobs: JobPool;
  readonly fits: FitDesk;
  readonly envelopes: EnvelopeDesk;
  readonly desk: PaperDesk;
  /** Layouts for several parts are planned in a worker of their own, so that drawings need not wait for them. */
  readonly layouts: PaperDesk;
  /** What takes a second to reckon: one bend, a metal's curve. */
  readonly sums: PaperDesk;
  readonly uploads: Uploads;
  /** Reads one file after the other. */
  readonly inTurn: ReturnType<typeof oneAtATime>;
  /** Floor, racks, condition records and metals: `shop.current()` is what there is to plan with. */
  readonly shop: ShopKeeper;
}
