import { type Envelope, envelope } from '../fit/index.js';
import type { Metal } from '../metal/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { HttpError } from './httpError.js';
import { proofSeconds } from './limits.js';
import { TrialPool } from './trialPool.js';

/** How far an envelope is. */
export type EnvelopeView =
  | { readonly state: 'computing'; readonly plans: number }
  | { readonly state: 'done'; readonly envelope: Envelope }
  | { readonly state: 'failed'; readonly why: string };

/** Envelopes that may wait, and that are kept until the program ends. */
const WAITING = 20;
const KEPT = 200;

/** What machines reach, worked out in a worker one after the other when it is first asked, and kept. */
export class EnvelopeDesk {
  private readonly kept = new Map<string, EnvelopeView>();
  private last: Promise<unknown> = Promise.resolve();
  private closed = false;

  constructor(private readonly pool: Pick<TrialPool, 'run' | 'close'> = new TrialPool()) {}

  /** `key` names machine, rack and metal with their revisions. Throws an HttpError where too many are waiting. A failure is told once, then it is tried anew. */
  look(key: string, machine: Machine, rack: Rack, metal: Metal): EnvelopeView {
    const before = this.kept.get(key);
    if (before?.state === 'failed') this.kept.delete(key);
    if (before !== undefined) return before;
    if ([...this.kept.values()].filter(({ state }) => state === 'computing').length > WAITING) throw new HttpError(503, `${WAITING} envelopes are waiting already; try again in some minutes.`);
    for (const [old, { state }] of [...this.kept].slice(0, Math.max(0, this.kept.size - KEPT))) if (state !== 'computing') this.kept.delete(old);
    const begun: EnvelopeView = { state: 'computing', plans: 0 };
    this.kept.set(key, begun);
    let plans = 0;
    const verdict = async (input: TrialInput): Promise<Trial['verdict'] | null> => {
      this.kept.set(key, { state: 'computing', plans: ++plans });
      const end = await this.pool.run(input, proofSeconds, () => undefined, { remedies: false, toleranceClass: null }).end;
      return end.state === 'done' ? end.trial?.verdict ?? null : null;
    };
    this.last = this.last.then(() => envelope(machine, rack, metal, { cancelled: () => this.closed, verdict })).then((done) => this.kept.set(key, { state: 'done', envelope: done }), (error: Error) => {
      if (!this.closed) process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
      this.kept.set(key, { state: 'failed', why: 'The envelope broke off: a defect of the program. Asked again, it is worked out anew.' });
    });
    return begun;
  }

  async close(): Promise<void> {
    this.closed = true;
    await this.pool.close();
  }
}
