import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import type { Part } from '../src/sheet/index.js';
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

/** Two punches and one V, square and acute; `more`: ids of further punches. Every order is asked of the proof stroke by stroke. */
export const smallRack = (more: readonly string[] = []): Rack => {
  const rack = demoRack();
  return { ...rack, dies: rack.dies.filter((d) => d.v === 12), punches: rack.punches.filter((p) => ['straight-r1', 'gooseneck', ...more].includes(p.id)) };
};

/** Bends up to which every order is asked of the proof engine. */
const MOST_BENDS = 8;
/** P8's 256 folds with ears take the proof engine days; a closing hem is a second state of its bend, which its judge does not hold (P14). */
const LEFT_OUT: ReadonlySet<string> = new Set(['P8', 'P14']);
/** P15 is bent to 130 degrees of bend angle: under the acute punch. */
const MORE_PUNCHES: Readonly<Record<string, readonly string[]>> = { P15: ['acute-30'] };

/** The benchmark parts that are asked, each with its rack; `only` one of them by its id. */
export const exhaustedParts = (only?: string): readonly { readonly part: Part; readonly rack: Rack }[] =>
  benchParts().filter((b) => b.part.bends.length <= MOST_BENDS && !LEFT_OUT.has(b.id) && (only === undefined || b.id === only)).map((b) => ({ part: b.part, rack: smallRack(MORE_PUNCHES[b.id]) }));

/** Prints a line for each part, or for `only` one benchmark part; answers with how many did not agree. */
export const exhaustiveBench = async (perFamily: number, print: (line: string) => void, only?: string): Promise<number> => {
  const metal = metalById('dc01');
  const machine = demoFloor().find((m) => m.id === 'general');
  if (!metal || !machine) throw new Error('the demo data lack dc01 or the general machine');
  const parts = [...exhaustedParts(only)];
  for (const family of only === undefined ? FAMILIES : []) {
    for (let seed = 1, found = 0; found < perFamily; seed++) {
      const part = familyPart(family, seed);
      if (part.bends.length > 4) continue;
      parts.push({ part, rack: smallRack() });
      found++;
    }
  }
  let wrong = 0;
  for (const { part, rack } of parts) {
    const { planner, oracle, verdicts } = await exhaust({ part, machine, rack, metal, quantity: 50 });
    const sum = (pick: (v: Verdicts) => number): number => verdicts.reduce((s, v) => s + pick(v), 0);
    const same = planner === null ? oracle === null : oracle !== null && Math.abs(planner - oracle) <= SAME_COST;
    if (!same || sum((v) => v.wrongYes.length) > 0) wrong++;
    const said = (s: number | null): string => (s === null ? 'no order' : `${s.toFixed(3)} s`);
    print(`exhaustive, ${part.name}: ${same ? 'agrees' : 'DISAGREES'}, planner ${said(planner)}, every order on the proof's answers ${said(oracle)}; strokes: ` +
      `${sum((v) => v.accepted)} yes by both, ${sum((v) => v.refused)} no by both, ${sum((v) => v.byRule)} by rule, ${sum((v) => v.careful.length)} no by the planner alone, ${sum((v) => v.wrongYes.length)} yes by the planner alone`);
    for (const line of verdicts.flatMap((v) => [...v.wrongYes.map((w) => `YES ALONE ${w}`), ...v.careful.map((w) => `no alone ${w}`)])) print(`    ${line}`);
  }
  return wrong;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  process.exitCode = (await exhaustiveBench(Number(process.argv[2] ?? 4), (line) => console.log(line), process.argv[3])) > 0 ? 1 : 0;
}
