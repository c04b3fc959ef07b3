import type { Reason } from './trial.js';
import type { View } from './views.js';

/** Something that stands in a stroke's way, with its witness; `Reason` is made of it when it is to be read. */
export interface Conflict {
  readonly code: Reason['code'];
  readonly body: string;
  readonly phase: 'way in' | 'ram closing' | 'stroke' | 'ram opening' | 'way out' | 'stop' | 'set-up';
  /** mm of overlap; at most 0 when it only comes too near. */
  readonly by: number;
  readonly view: View | null;
  /** Met by the punch near the bend line's ends only: where a segment with a foot (an ear) could stand clear. */
  readonly atEnds?: boolean;
  /** Met only past what must stand on tools: shorter tools clear it, so that alone it forbids nothing. */
  readonly beside?: boolean;
  /** What the sentence adds, where the bodies alone do not say it. */
  readonly note?: string;
}
