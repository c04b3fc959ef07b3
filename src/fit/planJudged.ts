import type { Rack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { type PlanAndProveHooks, planAndProve } from './planAndProve.js';
import { type Overload, overloadsByWorstStock } from './worstStock.js';

/** Plans that are made anew with wider Vs because the worst sheet asked too much of the ones before. */
const WIDER_TRIES = 4;

/**
 * For the bends of an overloaded step, the dies that would ask as much or more: its own and the narrower ones; where a rating along the
 * length is broken, one that bears more is left, for the punch's or the die's own rating may have been the limit.
 */
const tooNarrow = (rack: Rack, { step, margin }: Overload): NonNullable<TrialInput['leaveOut']> => {
  const own = rack.dies.find((d) => d.id === step.die)!;
  const out = rack.dies.filter((d) => d.shape === 'V' && d.v <= own.v && (!margin.name.startsWith('force per length') || d.id === own.id || d.rating <= own.rating));
  return step.bends.flatMap((bend) => out.map(({ id }) => ({ bend, die: id })));
};

/**
 * A plan as a buyer may be promised it: proved, and within the ratings for the worst sheet of the metal's standards too. Where a plan
 * keeps them for the typical sheet alone, it is made again with the bends that ask too much in wider Vs. 'Does not make' only where that
 * was searched to its end: else 'not decided'.
 */
export const planJudged = async (input: TrialInput, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  const first = await planAndProve(input, hooks);
  let asked = input;
  let trial = first;
  let ruledOut = false;
  for (let tries = 0; trial.verdict === 'makes'; tries++) {
    const over = overloadsByWorstStock(trial);
    if (over.length === 0) return trial;
    if (tries === WIDER_TRIES || hooks.cancelled?.() === true) break;
    const narrow = over.flatMap((o) => tooNarrow(input.rack, o));
    // no V, so none wider
    ruledOut = narrow.length === 0;
    if (ruledOut) break;
    asked = { ...asked, leaveOut: [...(asked.leaveOut ?? []), ...narrow] };
    trial = await planAndProve(asked, hooks);
  }
  const over = first.verdict === 'makes' ? overloadsByWorstStock(first)[0] : undefined;
  if (!over) return first;
  // the first plan stands for what is said
  ruledOut ||= trial.verdict === 'does not make';
  const open: Trial['reasons'] = ruledOut ? [] : [{ code: 'limit', bends: over.step.bends, sentence: `Whether wider Vs for ${over.step.bends.join(' and ')} keep within it was not decided.` }];
  return { ...first, verdict: ruledOut ? 'does not make' : 'not decided', proven: false, reasons: [over.reason, ...open, ...first.reasons] };
};
