import type { Metal } from '../metal/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { Store } from '../store/index.js';
import type { FitDesk } from './fitDesk.js';
import type { JobPool } from './jobPool.js';
import type { PaperDesk } from './paperDesk.js';

/** What the routes work with. */
export interface Context {
  readonly store: Store;
  readonly jobs: JobPool;
  readonly fits: FitDesk;
  readonly desk: PaperDesk;
  readonly machines: readonly Machine[];
  readonly rack: Rack;
  readonly metals: readonly Metal[];
}
