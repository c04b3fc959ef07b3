import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Part, profilePart } from '../src/sheet/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { mulberry32 } from './mulberry32.js';
import { plainRack } from './oracle/racks.js';
import { distances, questionFloor, stateByState } from './questionCounts.js';
import { randomSerial, randomTray, randomTree } from './random.js';

/** s of processor time that one plan gets at most: all rows together stay under six minutes. */
const LIMIT = 6;
const SEED = 7;
/** Parts of each family that are planned beforehand, by their seeds; SEED is none of them. */
const WARMING = [1, 2, 3, 4, 5, 6];

/** ms that BENCH.md asks for: first plan, and proven best or impossible; null where it asks nothing. */
const asked = (n: number, diameter: number): { readonly first: number | null; readonly best: number | null } => ({
  first: n <= 16 ? 50 : null,
  best: n <= 12 ? 100 : diameter > 8 ? null : n <= 16 ? 500 : n <= 24 ? 3000 : null,
});

/** A profile with two legs of 80 on a web of 35 in its middle, as P2 narrow: no straight punch makes it, whatever the rest. */
const closingSerial = (n: number): Part => {
  const random = mulberry32(n);
  const middle = Math.floor(n / 2);
  const flanges = Array.from({ length: n + 1 }, (_, i) => (i === middle ? 35 : Math.abs(i - middle) === 1 ? 80 : 20 + Math.round(20 * random())));
  const turns = Array.from({ length: n }, (_, i) => (i === middle - 1 || i === middle ? 90 : (random() < 0.5 ? 1 : -1) * Math.round(30 + 40 * random())));
  const built = profilePart({ name: `closing profile of ${n}`, thickness: 1.5, insideRadius: 1.5, width: 150, flanges, turns });
  if (!built.ok) throw new Error(built.failure.sentence);
  return built.value;
};

interface Row {
  readonly family: string;
  readonly part: Part;
  /** The same, or another of its kind and size, with tools that cannot make it. */
  readonly impossible: Part;
}

const rows = (): readonly Row[] => [
  ...([[4, 1], [6, 1], [4, 2], [4, 3], [6, 2], [4, 4], [6, 3], [6, 4]] as const).map(([arms, depth]): Row => ({
    family: `tray ${arms} x ${depth}`, part: randomTray(SEED, arms, depth), impossible: randomTray(SEED, arms, Math.max(2, depth)),
  })),
  ...[4, 6, 8, 10, 12, 16, 20, 24].map((n): Row => ({ family: 'serial', part: randomSerial(SEED, n), impossible: closingSerial(n) })),
  ...[4, 6, 8, 10, 12, 16, 20, 24].map((n): Row => ({ family: 'tree', part: randomTree(SEED, n), impossible: randomTree(SEED + 1, n) })),
];

interface Timed {
  readonly trial: Trial;
  readonly first: number | null;
  readonly whole: number;
}

/**
 * Processor time of the first plan, of the best one proven (or the gap left at the limit), and of a refusal with its reasons, for growing
 * parts of each family on the general machine; beside it the clearance questions, their floor and those of asking every fold.
 */
export const timesBench = (print: (line: string) => void): void => {
  const machine = demoFloor().find((m) => m.id === 'general');
  const metal = metalById('dc01');
  if (!machine || !metal) throw new Error('the demo data lack the general machine or dc01');
  const timed = (part: Part, rack: Rack, seconds: number): Timed => {
    const began = cpuMilliseconds();
    let first: number | null = null;
    const trial = planTrial({ part, machine, rack, metal, quantity: 50, limits: { seconds } }, {
      now: cpuMilliseconds,
      onProgress: ({ bestSeconds }) => {
        if (bestSeconds !== undefined) first ??= cpuMilliseconds() - began;
      },
    });
    return { trial, first, whole: cpuMilliseconds() - began };
  };
  // warm: the compiler has seen the code, and taken its time over it, before the first row
  for (const seed of WARMING) {
    for (const part of [randomTray(seed, 4, 1), randomSerial(seed, 5), randomTree(seed, 4)]) {
      timed(part, demoRack(), 2);
      timed(part, plainRack('straight-r1'), 2);
    }
  }
  print(`times: one core, warm, ms of processor time, ${cpus()[0]?.model ?? 'unknown'}; general machine, whole rack; refusals with one straight punch and two dies; at most ${LIMIT} s a plan. (asked) as BENCH.md has it, - nothing asked.`);
  const head = ['family', 'n', 'D', 'first (asked)', 'best (asked)', 'ends as', 'refusal', 'ends as', 'questions: floor', 'answered anew', 'asked', 'state by state'];
  const widths = [10, 3, 3, 15, 15, 24, 9, 16, 17, 14, 9, 15];
  const line = (cells: readonly string[]): void => print(`  ${cells.map((c, i) => (i === 0 ? c.padEnd(widths[i]!) : c.padStart(widths[i]!))).join(' ')}`);
  line(head);
  const ms = (value: number | null): string => (value === null ? 'none' : value.toFixed(0));
  for (const { family, part, impossible } of rows()) {
    const n = part.bends.length;
    const diameter = Math.max(...distances(part).flat());
    const goal = asked(n, diameter);
    const { trial, first, whole } = timed(part, demoRack(), LIMIT);
    const refused = timed(impossible, plainRack('straight-r1'), LIMIT);
    const gap = (100 * (trial.seconds - trial.bound)) / trial.seconds;
    const ends = trial.verdict !== 'makes' ? trial.verdict : trial.proven ? 'proven' : `gap ${gap.toFixed(1)} % at the end`;
    line([
      family, n.toString(), diameter.toString(), `${ms(first)} (${goal.first ?? '-'})`, `${ms(whole)} (${goal.best ?? '-'})`, ends, ms(refused.whole), refused.trial.verdict,
      questionFloor(part).toString(), (trial.counts['clearance questions answered anew'] ?? 0).toString(), (trial.counts['clearance questions asked'] ?? 0).toString(), stateByState(part).toExponential(1),
    ]);
  }
  const short = timed(randomSerial(SEED, 16), demoRack(), 0.5).trial;
  print(`  serial of 16 after 500 ms: ${short.verdict === 'makes' ? `gap ${((100 * (short.seconds - short.bound)) / short.seconds).toFixed(1)} %` : short.verdict}`);
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) timesBench((line) => console.log(line));
