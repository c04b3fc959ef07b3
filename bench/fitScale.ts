// npm run bench -- fitScale [parts] [machines] [rounds]: many parts on many machines. First the whole board once with two workers (seconds, memory), then a
// part of it with one and with two workers by turns: trials a second, how busy this thread is, median of the rounds.
import { cpus } from 'node:os';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { fitColumns } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { type FitQuestion, TrialPool, runFit } from '../src/server/index.js';
import { type Part, type Turn, profilePart, trayPart } from '../src/sheet/index.js';
import { type Machine, demoFloor, demoRack } from '../src/shop/index.js';
import { mulberry32 } from './mulberry32.js';

const SEED = 20_261;
/** s of search for each cell: small parts take far less. */
const SECONDS = 5;
/** The board with one and with two workers is this part of the whole one: five rounds of it are to take minutes. */
const SHARE = 25;
/** How often a board is run with each number of workers unless told. */
const ROUNDS = 5;

/** A seeded small part: an angle, a channel, a step or a tray, as a workshop bends by the hundred. */
const smallPart = (index: number, random: () => number): Part => {
  const mm = (from: number, to: number): number => Math.round(from + (to - from) * random());
  const thickness = [1, 1.5, 2, 3][Math.floor(random() * 4)]!;
  const same = { name: `small part ${index + 1}`, thickness, insideRadius: thickness };
  const width = mm(60, 400);
  const least = 10 * thickness;
  const leg = (): number => mm(least, 80);
  const kind = index % 4;
  const turns: readonly (readonly Turn[])[] = [[90], [90, 90], [90, -90]];
  const made = kind === 3
    ? trayPart({ ...same, base: [mm(120, 300), mm(120, 250)], arms: Array.from({ length: 4 }, () => [{ length: mm(least, 40), turn: 90 }]) })
    : profilePart({ ...same, width, turns: turns[kind]!, flanges: kind === 0 ? [leg(), leg()] : [leg(), mm(100, 160), leg()] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};

/** The demo floor, and then its machines again with throat, opening and width between the frames varied by the seed. */
const machinesUpTo = (count: number, random: () => number): readonly Machine[] => {
  const floor = demoFloor();
  return Array.from({ length: count }, (_, i): Machine => {
    const m = floor[i % floor.length]!;
    if (i < floor.length) return m;
    const by = (least: number, most: number): number => Math.round((least + (most - least) * random()) / 10) * 10;
    const round = Math.floor(i / floor.length) + 1;
    return {
      ...m, id: `${m.id}-${round}`, name: `${m.name} ${round}`, throat: m.throat + by(-50, 100), openHeight: m.openHeight + by(-30, 80), betweenFrames: m.betweenFrames + by(-100, 0),
    };
  });
};

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const mib = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(0)} MiB`;

/** Prints what it measures; returns how many cells came without an answer. */
export const fitScaleBench = async (partCount: number, machineCount: number, rounds: number, print: (line: string) => void): Promise<number> => {
  const random = mulberry32(SEED);
  const parts = Array.from({ length: partCount }, (_, i) => smallPart(i, random));
  const machines = machinesUpTo(machineCount, random);
  const question: FitQuestion = { parts, columns: fitColumns(machines, demoRack()), metal: metalById('dc01')!, quantity: 50, seconds: SECONDS, asked: { remedies: false, toleranceClass: 'c' } };
  print(`fit, seed ${SEED}: ${parts.length} parts on ${machines.length} machines, ${cpus().length} cores`);

  const memory: number[] = [];
  const began = performance.now();
  const computedBefore = process.cpuUsage();
  const { cells } = await runFit(question, { workers: 2, onCell: () => memory.push(process.memoryUsage().rss) });
  const seconds = (performance.now() - began) / 1000;
  const computed = process.cpuUsage(computedBefore);
  const counts = new Map<string, number>();
  for (const { verdict } of cells.flat()) counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  const quarter = Math.max(1, Math.floor(memory.length / 4));
  print(`whole board, two workers: ${seconds.toFixed(1)} s, ${(cells.flat().length / seconds).toFixed(2)} trials/s, ${((computed.user + computed.system) / 1e6).toFixed(0)} s of processor time; ${[...counts].map(([v, n]) => `${n} ${v}`).join(', ')}`);
  print(`memory of the whole process, median of each quarter of the cells: ${[0, 1, 2, 3].map((q) => mib(median(memory.slice(q * quarter, (q + 1) * quarter)))).join(', ')}; most ${mib(Math.max(...memory))}`);

  const smaller: FitQuestion = { ...question, parts: parts.slice(0, Math.max(4, Math.ceil(partCount / SHARE))) };
  const rates = new Map<number, number[]>([[1, []], [2, []]]);
  // processor time of the whole process for each trial: it tells waiting (the same for both) from cores that hinder each other (more with two)
  const prices = new Map<number, number[]>([[1, []], [2, []]]);
  const busy: number[] = [];
  const pools = new Map([1, 2].map((workers) => [workers, new TrialPool()]));
  // warm: what is measured is planning, not the loading of engines
  for (const [workers, pool] of pools) await runFit({ ...smaller, parts: smaller.parts.slice(0, 4) }, { workers, pool });
  for (let round = 0; round < rounds; round++) {
    for (const workers of [1, 2]) {
      const before = performance.eventLoopUtilization();
      const used = process.cpuUsage();
      const at = performance.now();
      const run = await runFit(smaller, { workers, pool: pools.get(workers)! });
      rates.get(workers)!.push(run.computed / ((performance.now() - at) / 1000));
      const { user, system } = process.cpuUsage(used);
      prices.get(workers)!.push((user + system) / 1e6 / run.computed);
      busy.push(performance.eventLoopUtilization(before).utilization);
    }
  }
  for (const pool of pools.values()) await pool.close();
  const [one, two] = [median(rates.get(1)!), median(rates.get(2)!)];
  const spread = (workers: number): string => `${Math.min(...rates.get(workers)!).toFixed(2)} to ${Math.max(...rates.get(workers)!).toFixed(2)}`;
  print(`${smaller.parts.length * machines.length} cells, median of ${rounds}: ${one.toFixed(2)} trials/s with one worker (${spread(1)}), ${two.toFixed(2)} with two (${spread(2)}): ${(two / one).toFixed(2)} times; warm workers`);
  print(`processor time for each trial, median: ${median(prices.get(1)!).toFixed(2)} s with one worker, ${median(prices.get(2)!).toFixed(2)} s with two; so ${(one * median(prices.get(1)!)).toFixed(2)} and ${(two * median(prices.get(2)!)).toFixed(2)} cores at work`);
  print(`this thread is busy ${(median(busy) * 100).toFixed(1)} % of the time (median)`);
  return counts.get('not decided') ?? 0;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [parts = 100, machines = 10, rounds = ROUNDS] = process.argv.slice(2).map(Number);
  await fitScaleBench(parts, machines, rounds, (line) => console.log(line));
}
