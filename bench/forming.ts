import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';
import { airBend, airBendAtDepth, type AirBendSetup } from '../src/forming/index.js';
import { metalById } from '../src/metal/index.js';
import { threadClock } from '../src/server/index.js';

/** One bend solved both ways: the depth for an angle, and the angle for that depth. Must stay under this warm, ms. */
const LIMIT = 5;
/** Not counted: the engine still compiles. */
const WARMING = 100;
const ROUNDS = 400;
/** Rounds between two readings of the thread's clock, which the system moves on some ms at a time. */
const BATCH = 50;

const cases: readonly (readonly [string, AirBendSetup])[] = (
  [
    ['dc01', 2, 16, 1, 2],
    ['1.4301', 1.5, 12, 1, 1.5],
    ['6061-t6', 2, 16, 2, 2],
    ['s700mc', 4, 40, 4, 4],
    ['wear-400', 8, 100, 10, 8],
  ] as const
).map(([id, thickness, v, tipRadius, shoulderRadius]) => [
  `${id} t ${thickness} V ${v}`,
  { metal: metalById(id)!, thickness, v, vConvention: 'sharp', dieAngle: 75, shoulderRadius, tipRadius },
]);

const bothWays = (setup: AirBendSetup): void => {
  const there = airBend({ ...setup, bendAngle: 90 });
  if (!there.ok) throw new Error(there.reason.sentence);
  const back = airBendAtDepth({ ...setup, depth: there.value.depth });
  if (!back.ok) throw new Error(back.reason.sentence);
};

const medianOf = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/**
 * Prints a line for each case: the thread's own time a round (median of the batches), by which the limit is judged; the time that
 * passed (median, least, greatest) and the processor time of the whole process a round, which count the work of others and of the
 * engine's other threads too; and the first round, which builds the section.
 */
export const formingBench = (print: (line: string) => void): void => {
  print(`forming: one bend to 90 degrees solved both ways, ms, ${ROUNDS} rounds (${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version})`);
  const thread = threadClock();
  for (const [name, setup] of cases) {
    const begun = performance.now();
    bothWays(setup);
    const first = performance.now() - begun;
    for (let i = 1; i < WARMING; i++) bothWays(setup);
    const times: number[] = [];
    const batches: number[] = [];
    const busy = process.cpuUsage();
    for (let done = 0; done < ROUNDS; done += BATCH) {
      const from = thread();
      for (let i = 0; i < BATCH; i++) {
        const began = performance.now();
        bothWays(setup);
        times.push(performance.now() - began);
      }
      batches.push((thread() - from) / BATCH);
    }
    const { user, system } = process.cpuUsage(busy);
    const own = medianOf(batches);
    print(
      `  ${name.padEnd(20)} thread ${own.toFixed(2)} (aim under ${LIMIT}: ${own < LIMIT ? 'kept' : 'missed'})  passed: median ${medianOf(times).toFixed(2)}` +
        `  min ${Math.min(...times).toFixed(2)}  max ${Math.max(...times).toFixed(2)}  process ${((user + system) / 1000 / ROUNDS).toFixed(2)}  first ${first.toFixed(1)}`,
    );
  }
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) formingBench((line) => console.log(line));
