import { type FitCell, type FitColumn, type OptionColumn, answerInWords, changeInShort, columnSum, fitBoard, optionColumns, reasonInShort } from '../fit/index.js';
import { type MadeWith, type Store, type StoredPart, type TrialColumn, newId } from '../store/index.js';
import { type FitSummary, type FitView, type KeptCell, fitSummary } from './fitTask.js';
import { found, HttpError } from './httpError.js';
import { keepSeconds, keptFits, listedFits, waitingFits } from './limits.js';
import { type CellCache, type CellOf, type FitQuestion, runFit, runOptions } from './runFit.js';
import { TrialPool } from './trialPool.js';
import { trialSummary } from './trialSummary.js';

/** A question about parts of the store, and what is worked out beside it. */
export interface FitOrder extends Omit<FitQuestion, 'parts'> {
  readonly parts: readonly StoredPart[];
  /** Work out what each option buys. */
  readonly options: boolean;
  /** s for a cell with an option fitted; as for the others when absent. */
  readonly optionSeconds?: number;
  /** The revisions behind each column's machine and tools, by `madeWithKey`. */
  readonly madeWith: Readonly<Record<string, MadeWith>>;
  /** Machines that the buyer has: their price is not counted. */
  readonly owned: readonly string[];
  /** Cells that an earlier fit has decided. */
  readonly known?: FitView['cells'];
}

/** What the revisions behind a column depend on; an option fitted is none of it. */
export const madeWithKey = ({ whose, machine, rack }: FitColumn): string => JSON.stringify([whose, machine.id, rack.id]);

const columnOf = (column: FitColumn | OptionColumn): TrialColumn => ({ whose: column.whose, option: 'option' in column ? column.option : null });

/** A fit as it stands in the store: the question, and the board as it last was. The parts stand there themselves. */
interface KeptFit {
  readonly view: FitView;
  readonly order: Omit<FitOrder, 'parts' | 'known'>;
}

interface Live {
  readonly order: FitOrder;
  readonly stop: AbortController;
  view: FitView;
  readonly watchers: Set<(view: FitView) => void>;
}

/** ms between two words of what is being worked on. */
const DOING = 1000;

/** Fits, one after the other, each in the warm workers; the store keeps them, and cells and their trials by what they depend on. */
export class FitDesk {
  private readonly fits = new Map<string, Live>();
  private readonly queue: Live[] = [];
  private readonly pool = new TrialPool();
  private running: Live | undefined;
  private closed = false;

  constructor(private readonly store: Store) {}

  async ask(order: FitOrder, by: string): Promise<FitView> {
    if (this.queue.length >= waitingFits) throw new HttpError(503, `${this.queue.length} fits are waiting already; ${waitingFits} are the most.`);
    const id = newId('f');
    const none = fitBoard(order.parts, order.columns, []);
    const view: FitView = {
      id, state: 'queued', why: null, metalId: order.metal.id, metalName: order.metal.name, quantity: order.quantity,
      toleranceClass: order.asked.toleranceClass ?? null, createdAt: new Date().toISOString(), endedAt: null, by, seconds: order.seconds, doing: null,
      done: 0, of: order.parts.length * (order.columns.length + (order.options ? optionColumns(order.columns).length : 0)), fromCache: 0,
      parts: order.parts.map(({ id: partId, revision, name, thickness, bends }) => ({ id: partId, revision, name, thickness, bends })),
      machines: none.machines, cells: order.parts.map(() => order.columns.map(() => null)), cheapest: null, alone: [], options: [], answer: '', sums: [],
    };
    const live: Live = { order, stop: new AbortController(), view, watchers: new Set() };
    await this.keep(live);
    this.fits.set(id, live);
    this.forgetOldest();
    this.queue.push(live);
    this.startNext();
    return view;
  }

  /** The same question with more time for the cells that were not decided or not tried; what was decided stays. */
  async again(id: string, seconds: number, by: string): Promise<FitView | undefined> {
    const before = await this.kept(id);
    if (before === undefined) return undefined;
    const { view, order } = before;
    if (view.endedAt === null) throw new HttpError(409, 'The fit is still under way.');
    const parts = [];
    for (const { id: partId, revision } of view.parts) parts.push(found(await this.store.part(partId, revision), 'A part of this fit was purged.'));
    return this.ask({ ...order, parts, seconds, optionSeconds: order.optionSeconds ?? order.seconds, known: view.cells }, by);
  }

  async view(id: string): Promise<FitView | undefined> {
    const view = (await this.kept(id))?.view;
    return view && { ...view, answer: answerInWords(view), sums: view.machines.map((_, c) => columnSum(view.cells.map((row) => row[c]!))) };
  }

  /** The columns of a fit, with all of their machines and tools. */
  async columns(id: string): Promise<readonly FitColumn[]> {
    return (await this.kept(id))?.order.columns ?? [];
  }

  /** Newest first. */
  async list(): Promise<readonly FitSummary[]> {
    const stored = (await this.store.fits(listedFits)).map((text) => JSON.parse(text) as FitSummary);
    return stored.map((summary) => {
      const live = this.fits.get(summary.id);
      return live ? fitSummary(live.view) : leftOver(summary);
    });
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
      await this.end(live, { state: 'stopped', why: 'Stopped by the user before it began.' }).catch((error: Error) => this.broken(live, error));
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
    for (const live of this.fits.values()) if (live.view.endedAt === null) await this.keep(live);
    await this.pool.close();
  }

  private async kept(id: string): Promise<KeptFit | undefined> {
    const live = this.fits.get(id);
    if (live) return live;
    const text = await this.store.fit(id);
    if (text === undefined) return undefined;
    const { view, order } = JSON.parse(text) as KeptFit;
    return { view: leftOver(view), order };
  }

  private async keep({ view, order: { parts: _, known: __, ...order } }: Live): Promise<void> {
    await this.store.keepFit({
      id: view.id, partIds: [...new Set(view.parts.map((part) => part.id))], createdAt: view.createdAt,
      summary: JSON.stringify(fitSummary(view)), json: JSON.stringify({ view, order } satisfies KeptFit),
    });
  }

  private startNext(): void {
    if (this.closed || this.running !== undefined) return;
    const live = this.queue.shift();
    if (live === undefined) return;
    this.running = live;
    void this.run(live)
      .catch((error: Error) => this.broken(live, error))
      .finally(() => {
        this.running = undefined;
        this.startNext();
      });
  }

  private async run(live: Live): Promise<void> {
    const { order } = live;
    this.show(live, { state: 'running' });
    const question: FitQuestion = { ...order, parts: order.parts.map(({ part }) => part) };
    let [said, written] = [0, Date.now()];
    const hooks = {
      pool: this.pool, cache: this.cacheFor(live), signal: live.stop.signal,
      onDoing: (part: number, { machine }: FitColumn, what: string) => {
        if (Date.now() - said < DOING) return;
        said = Date.now();
        this.show(live, { doing: `${order.parts[part]!.name} on ${machine.name}: ${what}` });
      },
    };
    const { of } = live.view;
    const { cells, fromCache } = await runFit(question, {
      ...hooks,
      given: (p, c) => {
        const cell = order.known?.[p]?.[c] ?? null;
        return cell === null || cell.verdict === 'not decided' || cell.verdict === 'not tried' || cell.remediesCut ? null : cell;
      },
      onCell: (p, c, cell) => {
        const row = live.view.cells[p]!.map((old, i) => (i === c ? kept(cell) : old));
        live.view = { ...live.view, cells: live.view.cells.map((old, i) => (i === p ? row : old)) };
        if (Date.now() - written < keepSeconds * 1000 || this.closed) return;
        written = Date.now();
        void this.keep(live).catch(() => undefined); // its end is kept or told
      },
      onProgress: (progress) => this.show(live, { ...progress, of }),
    });
    const { cheapest, drawingsFree, alone } = fitBoard(live.view.parts, order.columns, cells, order.owned);
    this.show(live, { cheapest, ...(drawingsFree && { drawingsFree }), alone });
    const before = live.view.done;
    const bought = !order.options || live.stop.signal.aborted ? null : await runOptions({ ...question, seconds: order.optionSeconds ?? order.seconds }, cells, {
      ...hooks, onProgress: (progress) => this.show(live, { done: before + progress.done, fromCache: fromCache + progress.fromCache }),
    });
    const stopped = live.stop.signal.aborted;
    await this.end(live, { state: stopped ? 'stopped' : 'done', why: stopped ? 'Stopped by the user.' : null, options: stopped ? [] : bought?.options ?? [] });
  }

  private cacheFor({ order, view }: Live): CellCache {
    // a cell leads to its own part's trial in its own column, also where another's asked the very same
    const keyOf = (key: string, { part, column }: CellOf): string => JSON.stringify([order.parts[part]!.id, columnOf(column), key]);
    return {
      get: async (key, from) => {
        const before = await this.store.cell(keyOf(key, from));
        return before === undefined ? undefined : ({ ...(JSON.parse(before.json) as FitCell), trialId: before.trialId });
      },
      put: async (key, cell, from) => {
        const { trial, part, column, defect } = from;
        const { id: partId, revision: partRevision } = order.parts[part]!;
        const record = await this.store.addTrial({
          partId, partRevision, metalId: order.metal.id, trial, madeWith: order.madeWith[madeWithKey(column)]!, column: columnOf(column),
          asked: { toleranceClass: order.asked.toleranceClass ?? null, scribedLine: 'refused', measured: 'taken' }, summary: trialSummary(trial, defect !== undefined), ...(defect !== undefined && { defect }),
        }, view.by);
        if (record !== undefined) await this.store.addCell(keyOf(key, from), { partId, trialId: record.id, json: JSON.stringify(cell) });
        return { ...cell, trialId: record?.id ?? null };
      },
    };
  }

  private show(live: Live, change: Partial<FitView>): void {
    live.view = { ...live.view, ...change };
    for (const watcher of live.watchers) watcher(live.view);
  }

  /** Kept first, told then. Where the program is closing, what is kept already says that it broke off. */
  private async end(live: Live, change: Partial<FitView>): Promise<void> {
    if (this.closed) return;
    live.view = ended(live.view, change);
    await this.keep(live);
    this.told(live);
  }

  private told(live: Live): void {
    this.show(live, {});
    live.watchers.clear();
  }

  private async broken(live: Live, error: Error): Promise<void> {
    if (this.closed) return;
    process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
    const change = { state: 'failed', why: 'The fit broke off: a defect of the program or a full disk.' } as const;
    await this.end(live, change).catch(() => {
      // Not even that could be written: whoever watches, or waits for its end, must still see it.
      live.view = ended(live.view, change);
      this.told(live);
    });
  }

  private forgetOldest(): void {
    const ended = [...this.fits.values()].filter(({ view }) => view.endedAt !== null);
    for (const { view } of ended.slice(0, Math.max(0, this.fits.size - keptFits))) this.fits.delete(view.id);
  }
}

const ended = (view: FitView, change: Partial<FitView>): FitView => ({ ...view, ...change, doing: null, endedAt: new Date().toISOString() });

/** One that was under way when the program ended: when that was nobody knows, so the time it was asked stands for it. */
const leftOver = <T extends FitSummary>(fit: T): T => (fit.endedAt !== null ? fit : {
  ...fit, state: 'stopped', doing: null, endedAt: fit.createdAt, why: 'The program ended while this was worked on. What was done is kept; try the rest again.',
});

/** A cell out of the store brings its trial's id with it. */
const kept = (cell: FitCell & { readonly trialId?: string | null }): KeptCell =>
  ({ trialId: null, ...cell, inShort: reasonInShort(cell), changeShort: changeInShort(cell) });
