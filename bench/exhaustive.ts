import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import type { Part } from '../src/sheet/index.js';
import { groupsOf } from '../src/trial/groups.js';
import { type Searched, type TrialInput, planTrial } from '../src/trial/index.js';
import { everyOrder } from './oracle/everyOrder.js';
import { FAMILIES, familyPart } from './oracle/families.js';
import { type Verdicts, judge } from './oracle/judge.js';
import { problemOf } from './oracle/problem.js';
import { benchParts } from './parts.js';

/** Every order on the proof engine's answers, beside what the planner found on its own. */
export interface Exhausted {
  readonly planner: number | null;
  readonly oracle: number | null;
  readonly verdicts: readonly Verdicts[];
}

/** s: nearer than this two costs are one (see agreement). */
export const SAME_COST = 1e-4;

/**
 * Plans a part; then for each search that the plan took, asks the proof engine about every stroke in every fold and finds the best
 * of every order on those answers. The first set of tools with an order counts, as with the planner.
 */
export const exhaust = async (input: TrialInput): Promise<Exhausted> => {
  const all: Searched[] = [];
  planTrial(input, { onSearch: (s) => void all.push(s) });
  const verdicts: Verdicts[] = [];
  for (const searched of all) {
    const judged = await judge(searched, input);
    verdicts.push(judged.verdicts);
    const best = everyOrder(problemOf(searched.task, input.machine, input.quantity, judged.answer));
    const planner = searched.result.kind === 'plan' ? searched.result.seconds : null;
    if (best || planner !== null) return { planner, oracle: best?.seconds ?? null, verdicts };
  }
  return { planner: null, oracle: null, verdicts };
};

/** Two punches and one V, square and acute; `more`: ids of further punches and dies. Every order is asked of the proof stroke by stroke. */
export const smallRack = (more: readonly string[] = []): Rack => {
  const rack = demoRack();
  return { ...rack, dies: rack.dies.filter((d) => d.v === 12 || more.includes(d.id)), punches: rack.punches.filter((p) => ['straight-r1', 'gooseneck', ...more].includes(p.id)) };
};

/** Strokes up to which every order is asked of the proof engine. */
const MOST_STROKES = 8;
/** P15 is bent to 130 degrees of bend angle: under the acute punch; P14's hems want it too, over a narrow V, and flat tools to close them. */
const MORE: Readonly<Record<string, readonly string[]>> = { P14: ['acute-30', 'die-v8-30', 'flattening', 'anvil'], P15: ['acute-30'] };
/** P8 with the one punch and the one V that make it: 256 folds with ears. */
const onlyP8 = (): Rack => {
  const rack = demoRack();
  return { ...rack, dies: rack.dies.filter((d) => d.id === 'die-v10-85'), punches: rack.punches.filter((p) => p.id === 'gooseneck-deep') };
};
/** P14's base meets the beams of all others while its hem is pre-bent. */
const MACHINES: Readonly<Record<string, string>> = { P14: 'small-fast' };
const MACHINE = 'general';
/** Asked by its name only: it takes 24 minutes of processor time. */
const SLOW = 'P8';

interface Asked {
  readonly part: Part;
  readonly rack: Rack;
  readonly machine: string;
}

/** The benchmark parts that are asked, each with its rack and machine; `only` one of them by its id. */
export const exhaustedParts = (only?: string): readonly Asked[] =>
  benchParts().filter((b) => groupsOf(b.part).length <= MOST_STROKES && (only === undefined ? b.id !== SLOW : b.id === only)).map((b) => ({ part: b.part, rack: b.id === SLOW ? onlyP8() : smallRack(MORE[b.id]), machine: MACHINES[b.id] ?? MACHINE }));

/** Prints a line for each part, or for `only` one benchmark part; answers with how many did not agree. */
export const exhaustiveBench = async (perFamily: number, print: (line: string) => void, only?: string): Promise<number> => {
  const metal = metalById('dc01');
  const floor = demoFloor();
  if (!metal) throw new Error('the metals have no dc01');
  const parts: Asked[] = [...exhaustedParts(only)];
  for (const family of only === undefined ? FAMILIES : []) {
    for (let seed = 1, found = 0; found < perFamily; seed++) {
      const part = familyPart(family, seed);
      if (part.bends.length > 4) continue;
      parts.push({ part, rack: smallRack(), machine: MACHINE });
      found++;
    }
  }
  let wrong = 0;
  for (const { part, rack, machine: id } of parts) {
    const machine = floor.find((m) => m.id === id)!;
    const { planner, oracle, verdicts } = await exhaust({ part, machine, rack, metal, quantity: 50 });
    const sum = (pick: (v: Verdicts) => number): number => verdicts.reduce((s, v) => s + pick(v), 0);
    const same = planner === null ? oracle === null : oracle !== null && Math.abs(planner - oracle) <= SAME_COST;
    if (!same || sum((v) => v.wrongYes.length) > 0) wrong++;
    const said = (s: number | null): string => (s === null ? 'no order' : `${s.toFixed(3)} s`);
    print(`exhaustive, ${part.name}: ${same ? 'agrees' : 'DISAGREES'}, planner ${said(planner)}, every order on the proof's answers ${said(oracle)}; strokes: ` +
      `${sum((v) => v.accepted)} yes by both, ${sum((v) => v.refused)} no by both, ${sum((v) => v.byRule)} by rule, ${sum((v) => v.turned)} the same turned round, ${sum((v) => v.careful.length)} no by the planner alone, ${sum((v) => v.wrongYes.length)} yes by the planner alone`);
    for (const line of verdicts.flatMap((v) => [...v.wrongYes.map((w) => `YES ALONE ${w}`), ...v.careful.map((w) => `no alone ${w}`)])) print(`    ${line}`);
  }
  return wrong;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  process.exitCode = (await exhaustiveBench(Number(process.argv[2] ?? 4), (line) => console.log(line), process.argv[3])) > 0 ? 1 : 0;
}
