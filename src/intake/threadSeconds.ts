import { readFileSync, readlinkSync } from 'node:fs';

/** Where the system counts what the thread that asks has computed; null where it does not (Linux: Documentation/scheduler/sched-stats). */
export const threadCounter = (): string | null => {
  try {
    const path = `/proc/${readlinkSync('/proc/thread-self')}/schedstat`;
    return readFileSync(path, 'latin1').length > 0 ? path : null;
  } catch {
    return null;
  }
};

/** s that this process has computed, all its threads. */
export const processSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const secondsIn = (counter: string, last: number): number => {
  try {
    return Number(readFileSync(counter, 'latin1').split(' ', 1)[0]) / 1e9;
  } catch {
    // the thread has ended
    return last;
  }
};

/**
 * s that the thread of a counter computes from now on, or a share of what the whole process does where that is more: others collect its memory, and what
 * else the process computes beside is not the file's.
 */
export const threadSeconds = (counter: string, share: number): (() => number) => {
  const before = processSeconds();
  const began = secondsIn(counter, 0);
  let last = began;
  return () => {
    last = secondsIn(counter, last);
    return Math.max(last - began, (processSeconds() - before) * share);
  };
};
