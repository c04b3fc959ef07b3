import type { Rack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { tightBends } from './tightBends.js';
import type { Unpromised } from './unpromised.js';
import { type Overload, overloadsByWorstStock } from './worstStock.js';

/** Plans that are made anew with other tools because a stroke of the ones before was no promise. */
const OTHER_TRIES = 4;

/**
 * For the bends of an overloaded step, the dies that would ask as much or more: its own and the narrower ones; where a rating along the
 * length is broken, one that bears more is left, for the punch's or the die's own rating may have been the limit.
 */
const tooNarrow = (rack: Rack, { step, margin }: Overload): Unpromised['leaveOut'] => {
  const own = rack.dies.find((d) => d.id === step.die)!;
  const out = rack.dies.filter((d) => d.shape === 'V' && d.v <= own.v && (!margin.name.startsWith('force per length') || d.id === own.id || d.rating <= own.rating));
  return step.bends.flatMap((bend) => out.map(({ id }) => ({ bend, die: id })));
};

/** Elsewhere on the bed a cylinder bears less, and bends that one stroke makes in line ask less one by one: the planner tries neither for the worst sheet. */
const mayBeElsewise = ({ step, margin: { name, value, limit } }: Overload): boolean =>
  name.startsWith('force on one cylinder') || (!name.startsWith('force per length') && step.kind !== 'offset bend' && step.bends.length > 1 && value / step.bends.length <= limit);

/** The strokes for which a plan is no promise, in their order: the worst sheet overloads them, or they bend the metal to less than its least radius. */
export const unpromised = (trial: Trial, input: TrialInput): readonly Unpromised[] =>
  [...overloadsByWorstStock(trial).map((over): Unpromised => {
    const leaveOut = tooNarrow(input.rack, over);
    const likewise = mayBeElsewise(over);
    return { step: over.step, reason: over.reason, leaveOut, likewise, hopeless: leaveOut.length === 0 && !likewise };
  }), ...tightBends(trial, input)].sort((a, b) => a.step.number - b.step.number);

export interface JudgedPlan {
  /** Not proved yet. */
  readonly trial: Trial;
  /** The question that it answers. */
  readonly asked: TrialInput;
}

/**
 * A plan as a buyer may be promised it, but for its proof: within the ratings for the worst sheet of the metal's standards and above the
 * metal's least radius where that is founded. Where a plan is not, it is made again by `plan` with the bends at fault in other tools. 'Does
 * not make' only where that was searched to its end: else 'not decided'.
 */
export const judgedPlan = (input: TrialInput, plan: (asked: TrialInput) => Trial, cancelled: () => boolean = () => false): JudgedPlan => {
  const first = plan(input);
  const faults = first.verdict === 'makes' ? unpromised(first, input) : [];
  // what no other tools lift says most
  const fault = faults.find(({ hopeless }) => hopeless) ?? faults[0];
  if (!fault) return { trial: first, asked: input };
  let [asked, trial] = [input, first];
  let ruledOut = false;
  for (let tries = 0; trial.verdict === 'makes'; tries++) {
    const found = unpromised(trial, asked);
    if (found.length === 0) return { trial, asked };
    const others = found.flatMap(({ leaveOut }) => leaveOut);
    ruledOut = found.some(({ hopeless }) => hopeless);
    if (ruledOut || others.length === 0 || tries === OTHER_TRIES || cancelled()) break;
    asked = { ...asked, leaveOut: [...(asked.leaveOut ?? []), ...others] };
    trial = plan(asked);
  }
  // the first plan stands for what is said
  ruledOut ||= trial.verdict === 'does not make' && !fault.likewise;
  const { step, reason } = fault;
  const bends = step.bends.join(' and ');
  const [elsewise] = trial.verdict === 'makes' ? [] : trial.reasons;
  const why: Trial['reasons'] = !ruledOut ? [{ code: 'limit', bends: step.bends, sentence: `Whether another way to make ${bends} keeps within it was not decided.` }]
    : elsewise ? [{ ...reason, sentence: `With other tools for ${bends}: ${elsewise.sentence}` }] : [];
  return { asked: input, trial: { ...first, verdict: ruledOut ? 'does not make' : 'not decided', proven: false, reasons: [reason, ...why, ...first.reasons] } };
};
