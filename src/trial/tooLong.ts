import { length2, sub2 } from '../geometry/index.js';
import type { Machine, Segment } from '../shop/index.js';
import { UNCOVERED_END } from './limits.js';
import type { Tooling } from './tooling.js';

/** mm of tools in all: no row is longer. */
const lengthIn = (segments: readonly Segment[]): number => segments.reduce((sum, { length, count }) => sum + length * count, 0);

/**
 * Is there a bend longer than the bed, or than all segments of any pair together, even with both its ends bare? Then no plan whatever
 * stands on this machine with these tools, and a bed that was found too short is an answer.
 */
export const tooLong = ({ sheet, pairs }: Pick<Tooling, 'sheet' | 'pairs'>, { length }: Machine): boolean =>
  sheet.part.bends.some(({ sides: [{ line }] }) => {
    const least = length2(sub2(line.to, line.from)) - 2 * UNCOVERED_END;
    return least > length || pairs.every(({ punch, die }) => Math.min(lengthIn(punch.segments), lengthIn(die.segments)) < least);
  });
