import type { Developed } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import type { Pair } from './bodies.js';
import type { Group } from './groups.js';
import type { Stroke } from './stroke.js';
import type { Branch, Seat, View } from './views.js';

/** What a question about one stroke is asked of: the sheet in one fold, its seat, the tools, the machine. */
export interface Setting {
  readonly sheet: Developed;
  readonly machine: Machine;
  readonly group: Group;
  readonly seat: Seat;
  readonly pair: Pair;
  readonly bend: Stroke;
  /** The sheet's metal, plate by plate, and the same gathered into branches. */
  readonly views: readonly View[];
  readonly branches: readonly Branch[];
  readonly angleOf: (bend: number) => number;
}
