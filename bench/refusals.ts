import { mkdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { demoFloor } from '../src/shop/index.js';
import { goesOnFrom, openCheckpoint } from './checkpoint.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { FAMILIES, type Family } from './oracle/families.js';
import { plainRack } from './oracle/racks.js';
import { checkRefusal } from './oracle/refusal.js';
import { refusablePart } from './oracle/refusablePart.js';

/** s of processor time for one plan. */
const PLAN_LIMIT = 20;
/** One seed in so many makes a tray too. */
const TRAYS = 10;
/** Where the check has got to: a line for each part done by this code. Delete it to begin anew. */
const CHECKPOINT = 'out/refusals.jsonl';
const REPRO = 'test/repro/refusals';

interface Line {
  readonly family: Family;
  readonly seed: number;
  readonly refused: boolean;
  /** Conflicts of bodies told, the furthest that one lay from what was measured (mm), and strokes replayed. */
  readonly conflicts: number;
  readonly others: number;
  readonly furthest: number;
  readonly replayed: number;
  readonly wrong: readonly string[];
}

/**
 * Seeded parts with one straight punch only, so that many are refused, machine by machine in turn, until `count` have been: each told
 * conflict held against the proof engine. Answers with how many refusals do not hold.
 */
export const refusalsBench = async (count: number, print: (line: string) => void): Promise<number> => {
  const metal = metalById('dc01');
  if (!metal) throw new Error('the metals have no dc01');
  const floor = demoFloor();
  const kept = openCheckpoint<Line>(CHECKPOINT);
  const done = [...kept.done];
  if (done.length + kept.others > 0) print(`refusals: ${goesOnFrom(kept, 'parts', CHECKPOINT)}`);
  const refused = (): Line[] => done.filter((l) => l.refused);
  for (let seed = 1; refused().length < count; seed++) {
    for (const family of FAMILIES) {
      // a tray takes as long as twenty profiles
      if ((family === 'tray' && seed % TRAYS !== 0) || done.some((l) => l.family === family && l.seed === seed)) continue;
      const machine = floor[seed % floor.length]!;
      const one = await checkRefusal({ part: refusablePart(family, seed), machine, rack: plainRack('straight-r1'), metal, quantity: 50, limits: { seconds: PLAN_LIMIT } }, cpuMilliseconds, true);
      const measured = one?.conflicts.filter((c) => c.measured !== null) ?? [];
      const line: Line = {
        family, seed, refused: one !== null, conflicts: measured.length, others: (one?.conflicts.length ?? 0) - measured.length,
        furthest: Math.max(0, ...measured.map((c) => Math.abs(c.told - c.measured!))), replayed: measured.filter((c) => c.finding !== undefined).length, wrong: one?.wrong ?? [],
      };
      done.push(line);
      kept.add(line);
      if (line.wrong.length === 0) continue;
      mkdirSync(REPRO, { recursive: true });
      writeFileSync(`${REPRO}/${family}-${seed}-on-${machine.id}.json`, `${JSON.stringify({ part: { family, seed }, machine: machine.id, wrong: line.wrong }, null, 1)}\n`);
      for (const w of line.wrong) print(`  DOES NOT HOLD: ${family} ${seed} on ${machine.id}: ${w}`);
    }
  }
  const all = refused();
  const sum = (pick: (l: Line) => number): number => all.reduce((s, l) => s + pick(l), 0);
  print(`refusals: ${all.length} of ${done.length} parts refused (${FAMILIES.map((f) => `${all.filter((l) => l.family === f).length} ${f}`).join(', ')}); ${sum((l) => l.conflicts)} conflicts of bodies told, ` +
    `furthest from the proof engine's depth ${Math.max(0, ...all.map((l) => l.furthest)).toFixed(3)} mm, ${sum((l) => l.replayed)} strokes replayed; ${sum((l) => l.others)} reasons of other kinds; ` +
    `${all.filter((l) => l.wrong.length > 0).length} refusals do not hold`);
  return all.filter((l) => l.wrong.length > 0).length;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  process.exitCode = (await refusalsBench(Number(process.argv[2] ?? 20), (line) => console.log(line))) > 0 ? 1 : 0;
}
