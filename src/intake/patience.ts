import { processSeconds } from './threadSeconds.js';

/** s below which it is not looked again. */
const SOONEST = 0.05;

export interface Patience {
  /** Begins anew, from now on by `computed`. */
  readonly again: (computed?: () => number) => void;
  readonly stop: () => void;
  /** s computed since it began. */
  readonly used: () => number;
}

/**
 * Calls `givenUp` once so much was computed, by `computed` in s (all threads of this process when absent), and passed by the clock as `allowed` s, at the
 * latest after `most` s by the clock: on a machine that is busy with other work a sound file takes long and computes little.
 */
export const patience = (allowed: number, most: number, givenUp: () => void, computed: () => number = processSeconds): Patience => {
  let timer: NodeJS.Timeout | undefined;
  const stop = (): void => clearTimeout(timer);
  let computing = computed;
  let began = 0;
  const used = (): number => computing() - began;
  const again = (by = computing): void => {
    stop();
    computing = by;
    began = computing();
    const clock = performance.now();
    const look = (): void => {
      const passed = (performance.now() - clock) / 1000;
      if (passed >= most || (passed >= allowed && used() >= allowed)) givenUp();
      else wait(Math.min(most - passed, Math.max(allowed - used(), allowed - passed)));
    };
    const wait = (seconds: number): void => {
      timer = setTimeout(look, 1000 * Math.max(SOONEST, seconds));
    };
    wait(Math.min(allowed, most));
  };
  again();
  return { again, stop, used };
};
