import { readFileSync } from 'node:fs';

/** Nanoseconds that the thread that reads it has computed, first of the numbers (Linux: Documentation/scheduler/sched-stats). */
const COUNTER = '/proc/thread-self/schedstat';
/** ms of time passed between two readings of the counter: a reading costs some 50 µs, and no thread computes more than the time that passes. */
const BETWEEN = 10;

const counted = (): number => Number(readFileSync(COUNTER, 'latin1').split(' ', 1)[0]) / 1e6;

/**
 * A clock of the processor time that this thread has used, ms: a limit by it is kept alike on a computer that is idle and on one that is busy.
 * Where the system does not count threads, the time that passes.
 */
export const threadClock = (): (() => number) => {
  try {
    if (!(counted() > 0)) return () => performance.now();
  } catch {
    return () => performance.now();
  }
  let readAt = -Infinity;
  let last = 0;
  return () => {
    const passed = performance.now();
    if (passed - readAt >= BETWEEN) {
      readAt = passed;
      last = Math.max(last, counted());
    }
    return last;
  };
};
