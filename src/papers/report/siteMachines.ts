import type { FitBoard } from '../../fit/index.js';
import type { Machine } from '../../shop/index.js';

/** Every machine of the report once, in the board's order; one of the buyer's that bears the id of one of ours is another, and is named as theirs. */
export const siteMachines = ({ board, machines }: { readonly board: Pick<FitBoard, 'machines'>; readonly machines: readonly Machine[] }): readonly Machine[] => {
  const once = new Map<string, Machine>();
  machines.forEach((machine, c) => {
    const theirs = board.machines[c]!.whose === 'the buyer\'s';
    const key = JSON.stringify([theirs, machine.id]);
    if (!once.has(key)) once.set(key, theirs ? { ...machine, name: `${machine.name} (the buyer's)` } : machine);
  });
  return [...once.values()];
};
