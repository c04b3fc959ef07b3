import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { planAndProve } from '../src/fit/index.js';
import { closeStepReader, readStep } from '../src/intake/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import type { Part } from '../src/sheet/index.js';
import { goesOnFrom, openCheckpoint } from './checkpoint.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { type Family, FAMILIES, familyPart } from './oracle/families.js';

/** One case: what makes it again on any machine of this kind. */
interface Case {
  readonly part: { readonly family: Family; readonly seed: number } | { readonly file: string };
  readonly machine: string;
}

interface Line {
  readonly id: string;
  readonly planned: boolean;
  readonly passed: boolean;
  readonly verdict: string;
  readonly smallest: number | null;
}

const SHARED = new URL('../../shared/parts/', pathToFileURL(`${process.cwd()}/bench/`));
const REPRO = 'test/repro';
/** Where the campaign has got to: a line for each case done by this code. Delete it to begin anew. */
const CHECKPOINT = 'out/campaign.jsonl';
/** s of processor time for one plan. */
const PLAN_LIMIT = 20;
/** Lines between two words about how far it is. */
const SAY = 25;

const idOf = ({ part, machine }: Case): string => `${'file' in part ? part.file : `${part.family} ${part.seed}`} on ${machine}`;

/** Every published bent part on every machine, then seeded parts of all families, machine by machine in turn, without end; from a later seed on only these. */
function* cases(first: number): Generator<Case> {
  const floor = demoFloor().map((m) => m.id);
  const list = new URL('MANIFEST.tsv', SHARED);
  const rows = existsSync(list) ? readFileSync(list, 'utf8').trim().split('\n').slice(1).map((l) => l.split('\t')) : [];
  for (const [file, , , , , , kind] of first > 1 ? [] : rows) {
    if (kind === 'bent' && /\.(step|stp)$/i.test(file!)) for (const machine of floor) yield { part: { file: file! }, machine };
  }
  for (let seed = first; ; seed++) for (const family of FAMILIES) yield { part: { family, seed }, machine: floor[seed % floor.length]! };
}

const partsOf = async ({ part }: Case): Promise<readonly Part[]> => {
  if (!('file' in part)) return [familyPart(part.family, part.seed)];
  const { parts } = await readStep(readFileSync(new URL(part.file, SHARED)), part.file);
  return parts.map((p) => p.part);
};

/**
 * Plans and proves cases until so many plans have been replayed, `seconds` of processor time for each plan; what an earlier run did is counted, not done again. A plan
 * that the proof rejects becomes a file under test/repro. Answers with how many were rejected, over all runs.
 */
export const campaign = async (count: number, print: (line: string) => void, first = 1, seconds = PLAN_LIMIT): Promise<number> => {
  const metal = metalById('dc01');
  if (!metal) throw new Error('the metals have no dc01');
  const kept = openCheckpoint<Line>(CHECKPOINT);
  const done = new Map(kept.done.map((l) => [l.id, l]));
  const tally = (): { plans: number; rejected: number; smallest: number } => {
    const plans = [...done.values()].filter((l) => l.planned);
    return { plans: plans.length, rejected: plans.filter((l) => !l.passed).length, smallest: Math.min(Infinity, ...plans.map((l) => l.smallest ?? Infinity)) };
  };
  const say = (): void => {
    const { plans, rejected, smallest } = tally();
    print(`campaign: ${done.size} cases, ${plans} plans replayed, ${rejected} rejected, smallest clearance ${smallest.toFixed(2)} mm`);
  };
  if (done.size + kept.others > 0) print(`campaign: ${goesOnFrom(kept, 'cases', CHECKPOINT)}`);
  for (const one of cases(first)) {
    if (tally().plans >= count) break;
    const id = idOf(one);
    if ('file' in one.part ? [...done.keys()].some((k) => k.startsWith(`${id}, part `)) : done.has(id)) continue;
    const machine = demoFloor().find((m) => m.id === one.machine)!;
    const parts = await partsOf(one);
    for (const [i, part] of parts.entries()) {
      const trial = await planAndProve({ part, machine, rack: demoRack(), metal, quantity: 50, limits: { seconds } }, { now: cpuMilliseconds });
      const line: Line = {
        id: 'file' in one.part ? `${id}, part ${i + 1}` : id, planned: trial.proof.checked, passed: trial.proof.passed, verdict: trial.verdict, smallest: trial.proof.smallestClearance,
      };
      done.set(line.id, line);
      kept.add(line);
      if (line.planned && !line.passed) {
        const name = line.id.replace(/[^\w]+/g, '-').toLowerCase();
        mkdirSync(REPRO, { recursive: true });
        writeFileSync(`${REPRO}/${name}.json`, `${JSON.stringify({ ...one, solid: i, findings: trial.proof.findings }, null, 1)}\n`);
        print(`  REJECTED: ${line.id}: ${trial.proof.findings[0]!}`);
      }
      if (done.size % SAY === 0) say();
    }
  }
  say();
  await closeStepReader();
  return tally().rejected;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [count = 100, first = 1, seconds = PLAN_LIMIT] = process.argv.slice(2).map(Number);
  process.exitCode = (await campaign(count, (line) => console.log(line), first, seconds)) > 0 ? 1 : 0;
}
