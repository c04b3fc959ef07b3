import type { Trial, TrialInput } from '../trial/index.js';
import { type PlanAndProveHooks, planAndProve } from './planAndProve.js';
import { overloadByWorstStock } from './worstStock.js';

/** Plans that are made anew with a wider V because the worst sheet asked too much of the first. */
const WIDER_TRIES = 2;

/**
 * A plan as a buyer may be promised it: proved, and within the ratings for the worst sheet of the metal's standards too. Where a plan
 * keeps them for the typical sheet alone, it is made again without that die and the narrower ones.
 */
export const planJudged = async (input: TrialInput, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  const first = await planAndProve(input, hooks);
  let asked = input;
  let trial = first;
  for (let tries = 0; tries <= WIDER_TRIES; tries++) {
    if (trial.verdict !== 'makes') break;
    const over = overloadByWorstStock(trial);
    if (over === null) return trial;
    const { v } = trial.dies.find((d) => d.id === over.step.die)!;
    asked = { ...asked, rack: { ...asked.rack, dies: asked.rack.dies.filter((d) => d.shape !== 'V' || d.v > v) } };
    if (tries < WIDER_TRIES && hooks.cancelled?.() !== true) trial = await planAndProve(asked, hooks);
  }
  // no wider V makes it: the first plan stands for what is said
  const over = first.verdict === 'makes' ? overloadByWorstStock(first) : null;
  return over === null ? first : { ...first, verdict: 'does not make', proven: false, reasons: [over.reason, ...first.reasons] };
};
