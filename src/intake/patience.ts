/** s below which it is not looked again. */
const SOONEST = 0.05;

const computing = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

export interface Patience {
  /** Begins anew. */
  readonly again: () => void;
  readonly stop: () => void;
}

/**
 * Calls `givenUp` once this process has computed for `allowed` s (all its threads; by the clock at least as long), at the latest after `most` s by
 * the clock: on a machine that is busy with other work a sound file takes long and computes little.
 */
export const patience = (allowed: number, most: number, givenUp: () => void): Patience => {
  let timer: NodeJS.Timeout | undefined;
  const stop = (): void => clearTimeout(timer);
  const again = (): void => {
    stop();
    const [began, clock] = [computing(), performance.now()];
    const look = (): void => {
      const used = computing() - began;
      const passed = (performance.now() - clock) / 1000;
      if (passed >= most || (passed >= allowed && used >= allowed)) givenUp();
      else wait(Math.min(most - passed, Math.max(allowed - used, allowed - passed)));
    };
    const wait = (seconds: number): void => {
      timer = setTimeout(look, 1000 * Math.max(SOONEST, seconds));
    };
    wait(Math.min(allowed, most));
  };
  again();
  return { again, stop };
};
