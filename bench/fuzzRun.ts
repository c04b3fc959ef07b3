import { mkdirSync, writeFileSync } from 'node:fs';
import { goesOnFrom, openCheckpoint } from './checkpoint.js';

/** s to the sentence, and MiB at most. */
const MOST_SECONDS = 10;
const MOST_MIB = 1024;
const REPRO = 'test/repro/intake';
/** Files between two words about how far it is. */
const SAY = 100;

/** How one damaged file ended. */
interface Done {
  readonly seed: number;
  readonly end: string;
  /** s of computing, all threads together, and by the clock. */
  readonly computing: number;
  readonly clock: number;
  /** MiB, the most that the process had so far. */
  readonly memory: number;
  /** What is wrong with it; empty where nothing is. */
  readonly wrong: string;
}

interface Campaign {
  /** 'step' or 'dxf': names the checkpoint and the files that reproduce what was found. */
  readonly kind: string;
  readonly first: number;
  readonly count: number;
  /** The file of a seed, and what became of it: a code, and every sentence it was refused with. */
  readonly bytes: (seed: number) => Uint8Array;
  readonly read: (bytes: Uint8Array, seed: number) => Promise<{ readonly end: string; readonly sentences: readonly string[] }>;
}

const computing = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const worst = (all: readonly Done[], of: 'computing' | 'clock' | 'memory'): Done | undefined => all.reduce<Done | undefined>((a, b) => (a === undefined || b[of] > a[of] ? b : a), undefined);

/**
 * Reads damaged files one by one: each must end in a part or a sentence inside 10 s of computing and 1 GiB. A line for each stands in
 * out/fuzz-KIND.jsonl, so that a run of the same code that was broken off goes on where it was; delete it to begin anew. What fails is kept under test/repro/intake.
 * Answers with the number of failures.
 */
export const fuzzRun = async ({ kind, first, count, bytes, read }: Campaign): Promise<number> => {
  const checkpoint = `out/fuzz-${kind}.jsonl`;
  const kept = openCheckpoint<Done>(checkpoint);
  const done = new Map(kept.done.filter(({ seed }) => seed >= first && seed < first + count).map((one) => [one.seed, one]));
  if (done.size + kept.others > 0) console.log(goesOnFrom({ ...kept, done: [...done.values()] }, 'files', checkpoint));
  const words = (): string => {
    const all = [...done.values()];
    const [slow, long, large] = [worst(all, 'computing'), worst(all, 'clock'), worst(all, 'memory')];
    return `slowest seed ${slow?.seed} ${slow?.computing.toFixed(2)} s of computing, seed ${long?.seed} ${long?.clock.toFixed(1)} s by the clock, ${large?.memory.toFixed(0)} MiB at most, ${all.filter(({ wrong }) => wrong !== '').length} bad`;
  };
  for (let seed = first; seed < first + count; seed++) {
    if (done.has(seed)) continue;
    const damaged = bytes(seed);
    const [began, clock] = [computing(), performance.now()];
    let [end, wrong] = ['thrown', ''];
    try {
      const ended = await read(damaged, seed);
      end = ended.end;
      const silent = ended.sentences.find((sentence) => !/^\S.{8,}\.$/s.test(sentence));
      if (silent !== undefined) wrong = `no sentence: ${silent}`;
    } catch (fault) {
      wrong = `thrown: ${fault instanceof Error ? (fault.stack ?? fault.message).split('\n').slice(0, 3).join(' ') : String(fault)}`;
    }
    const one: Done = { seed, end, computing: computing() - began, clock: (performance.now() - clock) / 1000, memory: process.resourceUsage().maxRSS / 1024, wrong };
    const over = one.computing > MOST_SECONDS ? `${one.computing.toFixed(1)} s of computing` : one.memory > MOST_MIB ? `${one.memory.toFixed(0)} MiB` : '';
    const judged = { ...one, wrong: wrong === '' ? over : wrong };
    done.set(seed, judged);
    kept.add(judged);
    if (judged.wrong !== '') {
      mkdirSync(REPRO, { recursive: true });
      writeFileSync(`${REPRO}/${kind}-seed-${seed}.json`, `${JSON.stringify({ seed, end, wrong: judged.wrong })}\n`);
      console.log(`seed ${seed}: ${judged.wrong}`);
    }
    if (done.size % SAY === 0) console.log(`${done.size}: ${words()}`);
  }
  const ends: Record<string, number> = {};
  for (const { end } of done.values()) ends[end] = (ends[end] ?? 0) + 1;
  console.log(`${done.size} files from seed ${first}: ${Object.entries(ends).sort((a, b) => b[1] - a[1]).map(([end, n]) => `${n} ${end}`).join(', ')}`);
  console.log(words());
  return [...done.values()].filter(({ wrong }) => wrong !== '').length;
};
