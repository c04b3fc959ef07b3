import { type Envelope, envelope } from '../fit/index.js';
import type { Metal } from '../metal/index.js';
import type { Machine, Rack } from '../shop/index.js';
import { proofSeconds } from './limits.js';
import { oneAtATime } from './oneAtATime.js';
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
  private readonly pool = new TrialPool();
  private readonly next = oneAtATime(WAITING, `${WAITING} envelopes are waiting already.`);
  private closed = false;

  /** `key` names machine, rack and metal with their revisions. */
  look(key: string, machine: Machine, rack: Rack, metal: Metal): EnvelopeView {
    const before = this.kept.get(key);
    if (before !== undefined) return before;
    for (const old of [...this.kept.keys()].slice(0, Math.max(0, this.kept.size - KEPT))) this.kept.delete(old);
    const begun: EnvelopeView = { state: 'computing', plans: 0 };
    this.kept.set(key, begun);
    let plans = 0;
    this.next(() => envelope(machine, rack, metal, {
      cancelled: () => this.closed,
      makes: async (input) => {
        this.kept.set(key, { state: 'computing', plans: ++plans });
        const end = await this.pool.run(input, proofSeconds, () => undefined, { remedies: false, toleranceClass: null }).end;
        return end.state === 'done' && end.trial?.verdict === 'makes';
      },
    })).then((done) => this.kept.set(key, { state: 'done', envelope: done }), (error: Error) => {
      if (!this.closed) process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
      this.kept.set(key, { state: 'failed', why: 'The envelope broke off: a defect of the program.' });
    });
    return begun;
  }

  async close(): Promise<void> {
    this.closed = true;
    await this.pool.close();
  }
}
