import { describe, expect, it } from 'vitest';
import { threadClock } from './threadClock.js';

describe('the clock of a thread', () => {
  it('stands still while the thread waits, and never runs ahead of what the process has computed', async () => {
    const clock = threadClock();
    const whole = process.cpuUsage();
    const before = clock();
    await new Promise((resolve) => setTimeout(resolve, 400));
    const waited = clock() - before;
    // the event loop's own work is a few ms; 400 ms passed
    expect(waited).toBeLessThan(200);
    const from = clock();
    let sum = 0;
    for (let k = 0; clock() - from < 100; k++) sum += Math.sqrt(k);
    const { user, system } = process.cpuUsage(whole);
    expect(sum).toBeGreaterThan(0);
    // 100 ms computed are in the process's own account too, to the two counters' ticks of some ms
    expect((user + system) / 1000).toBeGreaterThan(90);
  });
});
