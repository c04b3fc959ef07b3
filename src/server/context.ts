import type { Store } from '../store/index.js';
import type { EnvelopeDesk } from './envelopeDesk.js';
import type { FitDesk } from './fitDesk.js';
import type { JobPool } from './jobPool.js';
import type { PaperDesk } from './paperDesk.js';
import type { ShopKeeper } from './shopKeeper.js';

/** What the routes work with. */
export interface Context {
  readonly store: Store;
  readonly jobs: JobPool;
  readonly fits: FitDesk;
  readonly envelopes: EnvelopeDesk;
  readonly desk: PaperDesk;
  /** Layouts for several parts are planned in a worker of their own, so that drawings need not wait for them. */
  readonly layouts: PaperDesk;
  /** Floor, racks, condition records and metals: `shop.current()` is what there is to plan with. */
  readonly shop: ShopKeeper;
}
