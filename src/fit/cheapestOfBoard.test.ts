import { describe, expect, it } from 'vitest';
import { type Machine, demoFloor, demoRack } from '../shop/index.js';
import type { Remedy, RemedyItem } from '../trial/index.js';
import { cheapestInShort, cheapestOfAll } from './cheapestWords.js';
import { type FitBoard, fitBoard } from './fitBoard.js';
import type { FitCell } from './fitCell.js';
import { fitColumns } from './fitColumn.js';

// The board's cheapest against its own model: each part on one machine, things at their prices, only changes that are confirmed, what the
// buyer must agree to only for parts that nothing else makes. A line scribed by eye and another machine are no ways.

const MACHINES: readonly Machine[] = demoFloor().slice(0, 3);
const columns = fitColumns(MACHINES, demoRack());
const price = (column: number): number => MACHINES[column]!.price;

const makes: FitCell = {
  verdict: 'makes', margins: [], spreads: [], reasons: [], remedies: [], seconds: 40, partsAnHour: 95, changeOver: 840, computeSeconds: 0.1, proof: { checked: true, passed: true }, warnings: [], way: null,
};
const no: FitCell = { ...makes, verdict: 'does not make', reasons: [{ code: 'no stop', sentence: 'No finger reaches it.', bends: ['b1'] }], proof: { checked: false, passed: false } };
const change = (items: readonly RemedyItem[], confirmed = true): Remedy => ({ sentence: 'With it the part is made.', confirmed, items });
const lifted = (...remedies: readonly Remedy[]): FitCell => ({ ...no, verdict: 'makes with remedy', remedies });
const asked = (kind: 'tolerance' | 'radius' | 'relief' | 'split' | 'scribed line' | 'daylight' | 'two passes'): RemedyItem => ({ kind, id: kind, name: `a ${kind}`, price: null });
const option = (column: number, name = 'Z', cost = 9_800): RemedyItem => ({ kind: 'option', id: `${MACHINES[column]!.id}/${name}`, name, price: cost });
const punch = (column: number, cost = 400): RemedyItem => ({ kind: 'punch', id: `punch of ${MACHINES[column]!.id}`, name: 'punch', price: cost });

const part = { name: 'angle', thickness: 1.5, bends: 1 };
/** One row for each part, `no` where a machine is left out. */
const board = (...rows: readonly (readonly FitCell[])[]): FitBoard => fitBoard(rows.map(() => part), columns, rows.map((row) => columns.map((_, c) => row[c] ?? no)));

describe('the cheapest of a board, rule by rule', () => {
  it.each([asked('tolerance'), asked('radius'), asked('relief'), asked('split')])('$kind costs nothing, and is not taken where an option or another machine leaves the drawing as it is', (item) => {
    const beside = board([lifted(change([item]), change([option(0)]))]);
    expect(beside.cheapest).toMatchObject({ price: price(0) + 9_800, asked: [], options: [{ price: 9_800 }] });
    const elsewhere = board([lifted(change([item])), makes]).cheapest!;
    expect(elsewhere).toMatchObject({ price: price(1), asked: [] });
    expect(elsewhere.machines.map(({ name }) => name)).toEqual([MACHINES[1]!.name]);
  });

  it('a change of the drawing is taken where the part has nothing else, and named', () => {
    expect(board([lifted(change([asked('relief')]))]).cheapest).toMatchObject({ price: price(0), cannot: [], asked: [{ part: 0, what: 'a relief' }] });
    // the other part's option says nothing of this one
    expect(board([lifted(change([asked('split')]))], [lifted(change([asked('split')]), change([option(0)]))]).cheapest)
      .toMatchObject({ price: price(0) + 9_800, asked: [{ part: 0, what: 'a split' }] });
  });

  it('is told at the head in one sentence: how many, by what, for how much, and what asks for another drawing', () => {
    const told = board([makes], [no, lifted(change([option(1)]))], [lifted(change([asked('split')]))], [no]);
    const [a, b] = [MACHINES[0]!, MACHINES[1]!].map(({ name, price: cost }) => `${name} (${cost.toLocaleString('en')} EUR)`);
    expect(cheapestInShort(told)).toEqual([`The most for the least: 3 of 4, 1 of them only if the drawing allows a change, by ${b} + ${a} + Z (9,800 EUR): ${(price(0) + price(1) + 9_800).toLocaleString('en')} EUR in all, nothing costs less, as counted.`]);
    expect(cheapestInShort(board([no]))).toEqual([]);
  });

  it('beside it stands the set that changes drawings wherever it saves money, only where it costs less or makes more', () => {
    const seamOrMachine = board([makes], [lifted(change([asked('split')])), makes]);
    expect(seamOrMachine.cheapest).toMatchObject({ price: price(0) + price(1), asked: [] });
    expect(seamOrMachine.drawingsFree).toMatchObject({ price: price(0), cannot: [], asked: [{ part: 1, what: 'a split' }] });
    expect(cheapestInShort(seamOrMachine).map((words) => words.split(':')[0])).toEqual(['The most with the fewest drawings changed', 'If drawings may change wherever it saves money']);
    expect(cheapestInShort(seamOrMachine)[0]).toContain('nothing costs less that changes the drawings as little');
    expect(cheapestOfAll(seamOrMachine)[1]).toMatch(/^if drawings may change wherever it saves money, .*angle only with a split, if the drawing allows it$/);
    expect(board([makes], [lifted(change([asked('split')]))])).not.toHaveProperty('drawingsFree');
    // an option without a price is no way that counts, the seam is one
    const dear: RemedyItem = { ...option(0), price: null };
    const more = board([makes], [lifted(change([asked('split')]), change([dear]))]);
    expect([more.cheapest!.cannot, more.drawingsFree!.cannot]).toEqual([[1], []]);
  });

  it('two passes leave the drawing as it is and cost nothing', () => {
    expect(board([lifted(change([asked('two passes')]), change([option(0)]))]).cheapest).toMatchObject({ price: price(0), asked: [], options: [] });
  });

  it.each([asked('scribed line'), asked('daylight')])('$kind is no way', (item) => {
    expect(board([lifted(change([item]))], [makes]).cheapest).toMatchObject({ price: price(0), cannot: [0] });
    expect(board([lifted(change([option(0), item]))], [makes]).cheapest).toMatchObject({ cannot: [0], options: [] });
  });

  it('a change that was not planned again is no way', () => {
    expect(board([lifted(change([option(0)], false))], [makes]).cheapest).toMatchObject({ price: price(0), cannot: [0], options: [] });
    expect(board([lifted(change([asked('relief')], false), change([option(0)]))]).cheapest).toMatchObject({ price: price(0) + 9_800, asked: [] });
  });

  it('all of a change is paid for, each thing once', () => {
    const both = lifted(change([option(0), punch(0)]));
    expect(board([both], [both], [lifted(change([punch(0)]))]).cheapest).toMatchObject({ price: price(0) + 9_800 + 400, options: [{ price: 9_800 }], tools: [{ price: 400 }] });
  });
});

/** mulberry32 (public domain). */
const seeded = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
};

const BOUGHT = new Set(['option', 'punch']);
const TO_AGREE = new Set(['tolerance', 'radius', 'relief', 'split']);
const NO_WAY = new Set(['scribed line', 'daylight']);

/** Every set of things there are on the board, by counting in binary: what it costs, and which parts it makes by the model's own sentence; with `free` any change of a drawing counts as none. */
const naive = (rows: readonly (readonly FitCell[])[], free = false): { readonly price: number; readonly cannot: readonly number[] } => {
  const ways = rows.map((row) => row.flatMap((cell, c) => (cell.verdict === 'makes' ? [[]] : cell.remedies.filter((r) => r.confirmed).map((r) => r.items!)).map((items) => ({ c, items })))
    .filter(({ items }) => !items.some(({ kind }) => NO_WAY.has(kind))));
  const allowed = ways.map((of) => {
    const drawn = of.filter(({ items }) => !items.some(({ kind }) => TO_AGREE.has(kind)));
    return drawn.length > 0 && !free ? drawn : of;
  });
  const things = new Map<string, number>();
  for (const { c, items } of allowed.flat()) {
    things.set(`machine ${c}`, price(c));
    for (const item of items) if (BOUGHT.has(item.kind)) things.set(item.id, item.price!);
  }
  const names = [...things.keys()];
  let least = Infinity;
  for (let set = 0; set < 2 ** names.length; set++) {
    const has = new Set(names.filter((_, i) => (set & (1 << i)) !== 0));
    const costs = [...has].reduce((sum, name) => sum + things.get(name)!, 0);
    if (costs < least && allowed.every((of) => of.length === 0 || of.some(({ c, items }) => has.has(`machine ${c}`) && items.every((i) => !BOUGHT.has(i.kind) || has.has(i.id))))) least = costs;
  }
  return { price: least, cannot: allowed.flatMap((of, i) => (of.length === 0 ? [i] : [])) };
};

it('the cheapest of 200 seeded boards costs what trying every set of things costs', () => {
  let freer = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const random = seeded(seed);
    const whole = (n: number): number => Math.floor(random() * n);
    const item = (c: number): RemedyItem => [
      option(c, 'Z', 9_800), option(c, 'Y', 4_000), punch(c, 30_000), asked('tolerance'), asked('radius'), asked('relief'), asked('split'), asked('scribed line'), asked('daylight'), asked('two passes'),
    ][whole(10)]!;
    const cell = (c: number): FitCell =>
      whole(4) === 0 ? makes : lifted(...Array.from({ length: whole(4) }, () => change(Array.from({ length: 1 + whole(2) }, () => item(c)), whole(4) > 0)));
    const rows = Array.from({ length: 1 + whole(4) }, () => columns.map((_, c) => cell(c)));
    const { cheapest, drawingsFree } = board(...rows);
    expect({ price: cheapest!.price, cannot: cheapest!.cannot }, `seed ${seed}`).toEqual(naive(rows));
    expect(cheapest!.proven, `seed ${seed}`).toBe(true);
    // all prices are entered, so both make the same parts
    expect(drawingsFree?.price ?? cheapest!.price, `seed ${seed}, drawings free`).toBe(naive(rows, true).price);
    freer += drawingsFree ? 1 : 0;
  }
  expect(freer).toBeGreaterThan(10);
});
