import { describe, expect, it, vi } from 'vitest';
import { type FitCell, carriedOver, fitColumns, notTried } from '../fit/index.js';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { Trial } from '../trial/index.js';
import { contentKey } from './contentKey.js';
import { type CellCache, type FitQuestion, runFit } from './runFit.js';
import { TrialPool } from './trialPool.js';

// plans and proves in worker threads (dist)
vi.setConfig({ testTimeout: 240_000 });

const angle = (a: number, b: number) => {
  const made = profilePart({ name: `angle ${a} + ${b}`, thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [a, b], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const question: FitQuestion = {
  parts: [angle(40, 60), angle(50, 80)], columns: fitColumns(demoFloor().slice(0, 3), demoRack()), metal: metalById('dc01')!, quantity: 10, seconds: 10,
  asked: { remedies: false },
};
const memory = (): CellCache & { readonly kept: Map<string, FitCell> } => {
  const kept = new Map<string, FitCell>();
  return { kept, get: async (key) => kept.get(key), put: async (key, cell) => void kept.set(key, cell) };
};

describe('many parts on many machines', () => {
  it('every cell is planned and proved; changing one machine computes its column alone again', async () => {
    const cache = memory();
    const heard: number[] = [];
    const first = await runFit(question, { cache, onProgress: ({ done }) => heard.push(done) });
    expect(first.cells.map((row) => row.map(({ verdict, proof }) => `${verdict} ${proof.passed}`))).toEqual([
      ['makes true', 'makes true', 'makes true'], ['makes true', 'makes true', 'makes true'],
    ]);
    expect(heard).toEqual([1, 2, 3, 4, 5, 6]);
    expect([first.computed, first.fromCache]).toEqual([6, 0]);

    const [one, two, three] = demoFloor();
    const changed = { ...question, columns: fitColumns([one!, { ...two!, throat: two!.throat + 10 }, three!], demoRack()) };
    const second = await runFit(changed, { cache });
    expect([second.computed, second.fromCache]).toEqual([2, 4]);
    expect(second.cells.map((row) => row[0])).toEqual(first.cells.map((row) => row[0]));
    // another quantity is another question for every cell
    const third = await runFit({ ...question, parts: question.parts.slice(0, 1), columns: fitColumns([one!], demoRack()), quantity: 11 }, { cache });
    expect([third.computed, third.fromCache]).toEqual([1, 0]);
  });

  it('a cell whose search did not end is made by the way that another machine’s search found, planned and proved there', async () => {
    const made = profilePart({ name: 'step', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60, 50], turns: [90, -90] });
    if (!made.ok) throw new Error(made.failure.sentence);
    const columns = fitColumns(demoFloor().slice(1, 3), demoRack());
    const { metal, quantity, seconds, asked } = question;
    const cache = memory();
    const trials: Trial[] = [];
    // as it stands in the cache when the limit of processor time was reached
    const { machine, rack } = columns[1]!;
    cache.kept.set(contentKey({ part: made.value, machine, rack, metal, quantity, limits: { seconds } }, asked), { ...notTried('The computing time ended.'), verdict: 'not decided' });
    const run = await runFit({ ...question, parts: [made.value], columns }, { cache: { get: cache.get, put: async (key, cell, { trial }) => (trials.push(trial), cache.put(key, cell, { trial, part: 0, column: columns[0]! })) } });
    expect(run.cells[0]!.map(({ verdict, proof }) => `${verdict} ${proof.passed}`)).toEqual(['makes true', 'makes true']);
    expect(run.cells[0]![1]!.way).toEqual(run.cells[0]![0]!.way);
    expect(run.cells[0]![1]!.warnings.at(-1)).toContain(`by which ${columns[0]!.machine.name} makes it`);
    // whose way it is stands in the cell, so it stands in its key
    const asksThere = { part: made.value, machine, rack, metal, quantity };
    expect(contentKey(asksThere, asked, 'A')).not.toBe(contentKey(asksThere, asked, 'B'));
    const [, there] = trials;
    expect([there!.machine.id, there!.proven]).toEqual([machine.id, false]);
    // with tools of another rack that holds none of these the way is not tried
    expect(carriedOver({ part: made.value, machine, rack: { ...rack, punches: [] }, metal, quantity }, run.cells[0]![0]!.way!)).toBeNull();
  });

  it('a worker that breaks off while it looks for what helps says so, and that cell is not kept', async () => {
    const made = profilePart({ name: 'deeper channel', thickness: 1.5, insideRadius: 1.5, width: 150, flanges: [80, 40, 80], turns: [90, 90] });
    if (!made.ok) throw new Error(made.failure.sentence);
    const rack = demoRack();
    const few = { ...rack, punches: rack.punches.slice(0, 2), dies: rack.dies.filter(({ v }) => v === 12) };
    const pool = new TrialPool();
    const { cells } = await runFit({ ...question, parts: [made.value], columns: fitColumns(demoFloor().slice(1, 2), few), asked: { remedies: true } }, {
      pool, cache: { get: async () => undefined, put: () => Promise.reject(new Error('what was broken off is no answer to keep')) },
      onDoing: (_, __, what) => void (what.startsWith('would it be made') && pool.close()),
    });
    expect(cells[0]![0]).toMatchObject({ verdict: 'does not make', remedies: [], remediesCut: true });
    expect(cells[0]![0]!.inVain).toMatch(/^What would change it was not looked for to the end\. The planner broke off/);
  });

  it('stopped, it comes back at once and says of each cell that it was not tried', async () => {
    const stop = new AbortController();
    stop.abort();
    const run = await runFit(question, { signal: stop.signal });
    expect(run.cells.flat().map(({ verdict, reasons }) => `${verdict}: ${reasons[0]!.sentence}`))
      .toEqual(Array<string>(6).fill('not tried: Stopped before its turn came.'));
  });
});
