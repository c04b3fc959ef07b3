import type { Trial, TrialInput, Wishes } from '../trial/index.js';

/** How a part was made, as far as another machine may make it alike: its strokes in turn, by ids. */
export interface FoundWay {
  readonly steps: readonly { readonly bends: readonly string[]; /** Index of the plate towards the gauge, and of the one that lies to the front. */ readonly toGauge: number; readonly toFront: number; readonly punch: string; readonly die: string }[];
}

/** The way of a plan that was proved; null where there is none. */
export const wayOf = ({ verdict, steps, sheet, proof }: Trial): FoundWay | null =>
  verdict !== 'makes' || !proof.passed || steps.length === 0 ? null : {
    steps: steps.map(({ bends, gaugeSide, punch, die }) => {
      const { sides } = sheet.part.bends.find(({ id }) => id === bends[0])!;
      return { bends, toGauge: sides[gaugeSide].plate, toFront: sides[1 - gaugeSide]!.plate, punch, die };
    }),
  };

/**
 * The same question with nothing left open but what this way leaves: its tools, its order, its seats. Null where the rack does not hold its
 * tools or the user has wishes of his own. The answer is a plan as any, to be proved; that there is none rules nothing else out.
 */
export const carriedOver = (input: TrialInput, { steps }: FoundWay): TrialInput | null => {
  const { rack } = input;
  const [punches, dies] = [rack.punches.filter((p) => steps.some((s) => s.punch === p.id)), rack.dies.filter((d) => steps.some((s) => s.die === d.id))];
  if (input.wishes || steps.some((s) => !punches.some((p) => p.id === s.punch) || !dies.some((d) => d.id === s.die))) return null;
  const named = steps.map((s) => s.bends[0]!);
  // a bend of two strokes is no step of its own to be locked, and its strokes may lie differently
  const once = steps.map((s, i) => ({ ...s, bend: named[i]!, step: i + 1 })).filter(({ bend }) => named.indexOf(bend) === named.lastIndexOf(bend));
  const wishes: Wishes = {
    lock: once.length === steps.length ? once.map(({ bend, step }) => ({ bend, step })) : [],
    forbid: once.flatMap(({ bend, toFront, punch }) => [{ bend, plateToGauge: toFront }, ...punches.filter((p) => p.id !== punch).map((p) => ({ bend, punch: p.id }))]),
  };
  return { ...input, rack: { ...rack, punches, dies }, wishes };
};

/** A plan found so: made and proved, but no quicker one was ruled out. `from`: the machine whose way it is. */
export const asCarried = (trial: Trial, from: string): Trial => ({
  ...trial, proven: false, bound: 0, model: `The way found on ${from}. ${trial.model}`,
  warnings: [...trial.warnings, `Found by the order, seats and tools by which ${from} makes it, planned again and checked here; the search among all other ways did not end in its time, so a quicker one may exist.`],
});
