import { type FitCell, type FitColumn, answerInWords, changeInShort, columnSum, fitBoard, optionColumns, reasonInShort } from '../fit/index.js';
import { type MadeWith, type Store, type StoredPart, newId } from '../store/index.js';
import type { FitView, KeptCell } from './fitTask.js';
import { HttpError } from './httpError.js';
import { keptFits, waitingFits } from './limits.js';
import { type CellCache, type FitQuestion, runFit, runOptions } from './runFit.js';
import { TrialPool } from './trialPool.js';
import { trialSummary } from './trialSummary.js';

/** A question about parts of the store, and what is worked out beside it. */
export interface FitOrder extends Omit<FitQuestion, 'parts'> {
  readonly parts: readonly StoredPart[];
  /** Work out what each option buys. */
  readonly options: boolean;
  /** The revisions behind a column's machine and tools. */
  readonly madeWith: (column: FitColumn) => MadeWith;
  /** Machines that the buyer has: their price is not counted. */
  readonly owned: readonly string[];
}

interface Live {
  readonly order: FitOrder;
  readonly stop: AbortController;
  view: FitView;
  readonly watchers: Set<(view: FitView) => void>;
}

/** Fits, one after the other, each in the warm workers; cells and their trials are kept in the store, by what they depend on. */
export class FitDesk {
  private readonly fits = new Map<string, Live>();
  private readonly queue: Live[] = [];
  private readonly pool = new TrialPool();
  private running: Live | undefined;
  private closed = false;

  constructor(private readonly store: Store) {}

  ask(order: FitOrder, by: string): FitView {
    if (this.queue.length >= waitingFits) throw new HttpError(503, `${this.queue.length} fits are waiting already; ${waitingFits} are the most.`);
    const id = newId('f');
    const none = fitBoard(order.parts, order.columns, []);
    const view: FitView = {
      id, state: 'queued', why: null, metalId: order.metal.id, metalName: order.metal.name, quantity: order.quantity,
      toleranceClass: order.asked.toleranceClass ?? null, createdAt: new Date().toISOString(), endedAt: null, by,
      done: 0, of: order.parts.length * (order.columns.length + (order.options ? optionColumns(order.columns).length : 0)), fromCache: 0,
      parts: order.parts.map(({ id: partId, revision, name, thickness, bends }) => ({ id: partId, revision, name, thickness, bends })),
      machines: none.machines, cells: order.parts.map(() => order.columns.map(() => null)), cheapest: null, alone: [], options: [], answer: '', sums: [],
    };
    const live: Live = { order, stop: new AbortController(), view, watchers: new Set() };
    this.fits.set(id, live);
    this.forgetOldest();
    this.queue.push(live);
    this.startNext();
    return view;
  }

  view(id: string): FitView | undefined {
    const view = this.fits.get(id)?.view;
    return view && { ...view, answer: answerInWords(view), sums: view.machines.map((_, c) => columnSum(view.cells.map((row) => row[c]!))) };
  }

  /** The columns of a fit, with all of their machines and tools. */
  columns(id: string): readonly FitColumn[] {
    return this.fits.get(id)?.order.columns ?? [];
  }

  /** Newest first. */
  list(): readonly FitView[] {
    return [...this.fits.values()].map(({ view }) => view).reverse();
  }

  /** Tells each change until the fit has ended; undefined when there is none at work. */
  watch(id: string, watcher: (view: FitView) => void): (() => void) | undefined {
    const live = this.fits.get(id);
    if (live === undefined || live.view.endedAt !== null) return undefined;
    live.watchers.add(watcher);
    return () => live.watchers.delete(watcher);
  }

  /** Resolves when it has ended; cells that were done stay. */
  async stop(id: string): Promise<void> {
    const live = this.fits.get(id);
    if (live === undefined || live.view.endedAt !== null) return;
    const end = new Promise<void>((resolve) => live.watchers.add((view) => {
      if (view.endedAt !== null) resolve();
    }));
    live.stop.abort();
    const waiting = this.queue.indexOf(live);
    if (waiting >= 0) {
      this.queue.splice(waiting, 1);
      this.end(live, { state: 'stopped', why: 'Stopped by the user before it began.' });
    }
    await end;
  }

  /** What was known of a part goes with it. */
  async forgetPart(partId: string): Promise<void> {
    for (const { view } of [...this.fits.values()].filter((live) => live.view.parts.some((p) => p.id === partId))) {
      await this.stop(view.id);
      this.fits.delete(view.id);
    }
  }

  async close(): Promise<void> {
    this.closed = true;
    this.queue.length = 0;
    this.running?.stop.abort();
    await this.pool.close();
  }

  private startNext(): void {
    if (this.closed || this.running !== undefined) return;
    const live = this.queue.shift();
    if (live === undefined) return;
    this.running = live;
    void this.run(live)
      .catch((error: Error) => {
        process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
        this.end(live, { state: 'failed', why: 'The fit broke off: a defect of the program or a full disk.' });
      })
      .finally(() => {
        this.running = undefined;
        this.startNext();
      });
  }

  private async run(live: Live): Promise<void> {
    const { order } = live;
    this.show(live, { state: 'running' });
    const question: FitQuestion = { ...order, parts: order.parts.map(({ part }) => part) };
    const hooks = { pool: this.pool, cache: this.cacheFor(live), signal: live.stop.signal };
    const { of } = live.view;
    const { cells, fromCache } = await runFit(question, {
      ...hooks,
      onCell: (p, c, cell) => {
        const row = live.view.cells[p]!.map((old, i) => (i === c ? kept(cell, order.columns[c]!.machine.currency) : old));
        live.view = { ...live.view, cells: live.view.cells.map((old, i) => (i === p ? row : old)) };
      },
      onProgress: (progress) => this.show(live, { ...progress, of }),
    });
    const { cheapest, alone } = fitBoard(live.view.parts, order.columns, cells, order.owned);
    this.show(live, { cheapest, alone });
    const before = live.view.done;
    const bought = !order.options || live.stop.signal.aborted ? null : await runOptions(question, cells, {
      ...hooks, onProgress: (progress) => this.show(live, { done: before + progress.done, fromCache: fromCache + progress.fromCache }),
    });
    const stopped = live.stop.signal.aborted;
    this.end(live, { state: stopped ? 'stopped' : 'done', why: stopped ? 'Stopped by the user.' : null, options: stopped ? [] : bought?.options ?? [] });
  }

  private cacheFor({ order, view }: Live): CellCache {
    return {
      get: async (key) => {
        const before = await this.store.cell(key);
        return before === undefined ? undefined : ({ ...(JSON.parse(before.json) as FitCell), trialId: before.trialId });
      },
      put: async (key, cell, { trial, part, column, defect }) => {
        const { id: partId, revision: partRevision } = order.parts[part]!;
        const record = await this.store.addTrial({
          partId, partRevision, metalId: order.metal.id, trial, madeWith: order.madeWith(column), summary: trialSummary(trial, defect !== undefined), ...(defect !== undefined && { defect }),
        }, view.by);
        if (record !== undefined) await this.store.addCell(key, { partId, trialId: record.id, json: JSON.stringify(cell) });
        return { ...cell, trialId: record?.id ?? null };
      },
    };
  }

  private show(live: Live, change: Partial<FitView>): void {
    live.view = { ...live.view, ...change };
    for (const watcher of live.watchers) watcher(live.view);
  }

  private end(live: Live, change: Partial<FitView>): void {
    this.show(live, { ...change, endedAt: new Date().toISOString() });
    live.watchers.clear();
  }

  private forgetOldest(): void {
    const ended = [...this.fits.values()].filter(({ view }) => view.endedAt !== null);
    for (const { view } of ended.slice(0, Math.max(0, this.fits.size - keptFits))) this.fits.delete(view.id);
  }
}

/** A cell out of the store brings its trial's id with it. */
const kept = (cell: FitCell & { readonly trialId?: string | null }, currency: string): KeptCell =>
  ({ trialId: null, ...cell, inShort: reasonInShort(cell), changeShort: changeInShort(cell, currency) });
