import type { MeasuredDeduction } from '../forming/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { Metal } from '../metal/index.js';
import type { JobEnd, JobRecord, MadeWith, NewJob, Store, TrialAsked } from '../store/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { HttpError } from './httpError.js';
import { planSeconds, proofSeconds, waitingJobs, workers } from './limits.js';
import { type RunningTrial, TrialPool } from './trialPool.js';
import { trialSummary } from './trialSummary.js';
import type { Progress } from './trialTask.js';

/** A job as the API shows it. */
export interface JobView extends JobRecord {
  /** 0 to 1. */
  readonly share: number;
  /** What is being done, in words. */
  readonly what: string;
  readonly bestSeconds: number | null;
  readonly bound: number | null;
  readonly verdict: Trial['verdict'] | null;
}

export interface JobAsked extends NewJob {
  readonly machine: Machine;
  readonly metal: Metal;
  readonly rack: Rack;
  readonly madeWith: MadeWith;
  /** The shop's measured deductions, where they are to be taken. */
  readonly deductions?: readonly MeasuredDeduction[];
  readonly measured: TrialAsked['measured'];
  readonly seconds?: number;
  readonly toleranceClass?: TrialInput['toleranceClass'];
}

interface Live {
  readonly asked: JobAsked;
  readonly by: string;
  record: JobRecord;
  progress: Progress;
  running?: RunningTrial;
  stopAsked: boolean;
  readonly watchers: Set<(view: JobView) => void>;
}

/** Planning jobs: a queue, at most two workers, and what is to be seen of each. A job outlives a restart as its record only. */
export class JobPool {
  private readonly live = new Map<string, Live>();
  private readonly queue: Live[] = [];
  private readonly pool = new TrialPool();
  private busy = 0;
  private closed = false;

  constructor(private readonly store: Store) {}

  async ask(jobs: readonly JobAsked[], by: string): Promise<readonly JobRecord[]> {
    if (this.queue.length + jobs.length > waitingJobs) {
      throw new HttpError(503, `${this.queue.length} jobs are waiting already; ${waitingJobs} are the most.`);
    }
    const records = await this.store.addJobs(jobs, by);
    for (const [index, record] of records.entries()) {
      const live: Live = { asked: jobs[index]!, by, record, progress: { what: 'waiting', share: 0 }, stopAsked: false, watchers: new Set() };
      this.live.set(record.id, live);
      this.queue.push(live);
    }
    this.startNext();
    return records;
  }

  async view(id: string): Promise<JobView | undefined> {
    const live = this.live.get(id);
    if (live !== undefined) return viewOf(live.record, live.progress);
    const record = await this.store.job(id);
    return record === undefined ? undefined : this.ended(record);
  }

  async list(limit: number): Promise<readonly JobView[]> {
    const records = await this.store.jobs(limit);
    return Promise.all(records.map(async ({ id }) => (await this.view(id))!));
  }

  /** Tells each change until the job has ended; the last one is the end. Returns undefined when the job is not at work. */
  watch(id: string, watcher: (view: JobView) => void): (() => void) | undefined {
    const live = this.live.get(id);
    if (live === undefined) return undefined;
    live.watchers.add(watcher);
    return () => live.watchers.delete(watcher);
  }

  /** Resolves when the job has ended. */
  async stop(id: string): Promise<void> {
    const live = this.live.get(id);
    if (live === undefined) return;
    const end = new Promise<void>((resolve) => live.watchers.add((view) => {
      if (view.endedAt !== null) resolve();
    }));
    live.stopAsked = true;
    if (live.running !== undefined) live.running.stop();
    else if (this.queue.includes(live)) {
      this.queue.splice(this.queue.indexOf(live), 1);
      await this.finish(live, { state: 'stopped', why: 'Stopped by the user before it began.' }).catch((error: Error) => this.broken(live, error));
    }
    await end;
  }

  async stopPart(partId: string): Promise<void> {
    const ids = [...this.live.values()].filter((live) => live.asked.partId === partId).map((live) => live.record.id);
    await Promise.all(ids.map((id) => this.stop(id)));
  }

  /** Kills what runs. The records stay as they are; the next start marks them as stopped by restart. */
  async close(): Promise<void> {
    this.closed = true;
    this.queue.length = 0;
    await Promise.all([...this.live.values()].flatMap(({ running }) => (running === undefined ? [] : [running.kill()])));
    await this.pool.close();
  }

  private startNext(): void {
    while (!this.closed && this.busy < workers && this.queue.length > 0) {
      this.busy++;
      const live = this.queue.shift()!;
      void this.run(live)
        .catch((error: Error) => this.broken(live, error))
        .finally(() => {
          this.busy--;
          this.startNext();
        });
    }
  }

  private async run(live: Live): Promise<void> {
    const { partId, partRevision, machine, rack, madeWith, deductions, metal, quantity, toleranceClass, seconds = planSeconds } = live.asked;
    const stored = await this.store.part(partId, partRevision);
    if (stored === undefined) return this.finish(live, { state: 'failed', why: 'The part was purged before the job began.' });
    await this.store.jobStarted(live.record.id);
    live.record = { ...live.record, state: 'running' };
    this.show(live, { what: 'starting', share: 0 });
    live.running = this.pool.run(
      { part: stored.part, machine, rack, metal, quantity, limits: { seconds }, ...(deductions === undefined ? {} : { deductions }),
        ...(toleranceClass === undefined ? {} : { toleranceClass }) }, seconds + proofSeconds,
      (progress) => this.show(live, progress),
    );
    // Asked while the part was being fetched.
    if (live.stopAsked) live.running.stop();
    const end = await live.running.end;
    if (this.closed) return;
    if (end.state === 'failed') return this.finish(live, end);
    if (end.trial === undefined) return this.finish(live, { state: end.state, ...why(end.why) });
    const kept = await this.store.addTrial({
      partId, partRevision, metalId: metal.id, trial: end.trial, madeWith, column: { whose: 'ours', option: null },
      asked: { toleranceClass: toleranceClass ?? null, scribedLine: 'allowed', measured: live.asked.measured }, summary: trialSummary(end.trial, end.defect !== undefined), ...(end.defect === undefined ? {} : { defect: end.defect }),
    }, live.by);
    if (kept === undefined) return this.finish(live, { state: 'failed', why: 'The part was purged while it was planned.' });
    await this.finish(live, { state: end.state, trialId: kept.id, ...why(end.why) });
  }

  private async broken(live: Live, error: Error): Promise<void> {
    process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
    const why = 'The trial could not be kept: a defect of the program or a full disk.';
    await this.finish(live, { state: 'failed', why }).catch(() => {
      // Not even that could be written: whoever watches must still see the end.
      this.live.delete(live.record.id);
      live.record = { ...live.record, state: 'failed', why, endedAt: new Date().toISOString() };
      this.show(live, live.progress);
    });
  }

  private async finish(live: Live, end: JobEnd): Promise<void> {
    await this.store.jobEnded(live.record.id, end);
    this.live.delete(live.record.id);
    const view = await this.ended((await this.store.job(live.record.id))!);
    for (const watcher of live.watchers) watcher(view);
  }

  private show(live: Live, progress: Progress): void {
    live.progress = progress;
    const view = viewOf(live.record, progress);
    for (const watcher of live.watchers) watcher(view);
  }

  private async ended(record: JobRecord): Promise<JobView> {
    const trial = record.trialId === null ? undefined : await this.store.trialRecord(record.trialId);
    return {
      ...record, share: record.state === 'done' ? 1 : 0, what: record.state, verdict: trial?.verdict ?? null,
      bestSeconds: trial !== undefined && trial.summary.steps > 0 ? trial.summary.seconds : null, bound: trial?.summary.bound ?? null,
    };
  }
}

const why = (sentence: string | undefined): { readonly why?: string } => (sentence === undefined ? {} : { why: sentence });

const viewOf = (record: JobRecord, progress: Progress): JobView => ({
  ...record, share: progress.share, what: progress.what,
  bestSeconds: progress.bestSeconds ?? null, bound: progress.bound ?? null, verdict: null,
});
