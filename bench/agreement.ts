import { mkdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { demoFloor } from '../src/shop/index.js';
import { goesOnFrom, openCheckpoint } from './checkpoint.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { compare } from './oracle/agreement.js';
import { FAMILIES, type Family, familyPart } from './oracle/families.js';
import { oracleRack } from './oracle/racks.js';

/** s: what the mixed-integer solver gets for one model when nothing else is said. */
const SOLVER_LIMIT = 20;
/** Bends up to which the mixed-integer solver is asked. */
const SOLVER_BENDS = 10;
/** s of processor time for one plan. */
const PLAN_LIMIT = 60;
/** Where the comparison has got to: a line for each part done by this code. Delete it to begin anew. */
const CHECKPOINT = 'out/agreement.jsonl';
const REPRO = 'test/repro/agreement';

interface Line {
  readonly family: Family;
  readonly seed: number;
  readonly verdict: string;
  readonly searches: number;
  readonly notClaimed: number;
  readonly settled: number;
  readonly gaveUp: number;
  readonly wrong: readonly string[];
}

/**
 * The planner's best cost against two oracles on seeded parts of each family, seeds `first` to `count`, machine by machine in turn: every order by subset
 * dynamic programming on each, the mixed-integer solver up to ten bends for `solverLimit` seconds. A disagreement becomes a file
 * under test/repro/agreement. What an earlier run did is counted, not done again; answers with how many parts disagree.
 */
export const agreementBench = async (count: number, print: (line: string) => void, solverLimit = SOLVER_LIMIT, first = 1): Promise<number> => {
  const metal = metalById('dc01');
  if (!metal) throw new Error('the metals have no dc01');
  const floor = demoFloor();
  const kept = openCheckpoint<Line>(CHECKPOINT);
  const done = kept.done.filter((l) => l.seed >= first && l.seed <= count);
  if (done.length + kept.others > 0) print(`agreement: ${goesOnFrom({ ...kept, done }, 'parts', CHECKPOINT)}`);
  for (let seed = first; seed <= count; seed++) {
    for (const family of FAMILIES) {
      if (done.some((l) => l.family === family && l.seed === seed)) continue;
      const machine = floor[seed % floor.length]!;
      const part = familyPart(family, seed);
      // many tool lengths suit a tray: the deeper it is, the fewer punches leave a model that the oracles get through
      const rack = family !== 'tray' ? 'three punches' : part.bends.length > 6 ? 'one punch' : 'two punches';
      const one = await compare(
        { part, machine, rack: oracleRack(rack), metal, quantity: 50, limits: { seconds: PLAN_LIMIT } }, part.bends.length <= SOLVER_BENDS ? solverLimit : null, cpuMilliseconds,
      );
      const { trial: { verdict }, searches, notClaimed, settled, gaveUp, wrong } = one;
      const line: Line = { family, seed, verdict, searches, notClaimed, settled, gaveUp, wrong };
      done.push(line);
      kept.add(line);
      if (wrong.length === 0) continue;
      mkdirSync(REPRO, { recursive: true });
      writeFileSync(`${REPRO}/${family}-${seed}-on-${machine.id}.json`, `${JSON.stringify({ part: { family, seed }, machine: machine.id, rack, wrong }, null, 1)}\n`);
      for (const w of wrong) print(`  DISAGREES: ${part.name} on ${machine.id}: ${w}`);
    }
  }
  for (const family of FAMILIES) {
    const mine = done.filter((l) => l.family === family);
    const sum = (pick: (l: Line) => number): number => mine.reduce((s, l) => s + pick(l), 0);
    const agreed = mine.filter((l) => l.wrong.length === 0).length;
    print(`agreement, ${family}: ${mine.length} parts (${mine.filter((l) => l.verdict === 'makes').length} made, ${mine.filter((l) => l.verdict === 'not decided').length} not decided), ${sum((l) => l.searches)} searches; ` +
      `every order agrees on ${agreed} of ${mine.length}; the mixed-integer solver settled ${sum((l) => l.settled)}, gave up ${sum((l) => l.gaveUp)}; ${sum((l) => l.notClaimed)} searches claim no best order`);
  }
  return done.filter((l) => l.wrong.length > 0).length;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [count = 20, limit = SOLVER_LIMIT, first = 1] = process.argv.slice(2).map(Number);
  process.exitCode = (await agreementBench(count, (line) => console.log(line), limit, first)) > 0 ? 1 : 0;
}
