import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';
import { airBend, airBendAtDepth, type AirBendSetup } from '../src/forming/index.js';
import { metalById } from '../src/metal/index.js';

/** One bend solved both ways: the depth for an angle, and the angle for that depth. Must stay under this warm, ms. */
const LIMIT = 5;
const ROUNDS = 200;

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

/** Prints a line for each case: median, least and greatest of the warm rounds, and the first (which builds the section). */
export const formingBench = (print: (line: string) => void): void => {
  print(`forming: one bend to 90 degrees solved both ways, ms, ${ROUNDS} rounds (${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version})`);
  for (const [name, setup] of cases) {
    const times: number[] = [];
    let busy = process.cpuUsage();
    for (let i = 0; i <= ROUNDS; i++) {
      const began = performance.now();
      const there = airBend({ ...setup, bendAngle: 90 });
      if (!there.ok) throw new Error(there.reason.sentence);
      const back = airBendAtDepth({ ...setup, depth: there.value.depth });
      if (!back.ok) throw new Error(back.reason.sentence);
      times.push(performance.now() - began);
      if (i === 0) busy = process.cpuUsage();
    }
    const first = times.shift()!;
    times.sort((a, b) => a - b);
    const median = times[times.length >> 1]!;
    // on a machine shared with others the clock counts their work too
    const spent = process.cpuUsage(busy);
    const processor = (spent.user + spent.system) / 1000 / ROUNDS;
    print(
      `  ${name.padEnd(20)} median ${median.toFixed(2)}  min ${times[0]!.toFixed(2)}  max ${times[times.length - 1]!.toFixed(2)}  first ${first.toFixed(1)}  processor time ${processor.toFixed(2)}` +
        `  (aim under ${LIMIT}: ${processor < LIMIT ? 'kept' : 'missed'})`,
    );
  }
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) formingBench((line) => console.log(line));
