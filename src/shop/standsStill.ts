import type { Machine } from './machine.js';

export const CRACKED = 'A crack was found at the throat of this machine: it stands still until a competent person has judged it.';

export const unguarded = (how: 'missing' | 'not known'): string =>
  `The guarding of this machine is ${how}: it does not run before guarding by the local rules is fitted and tested.`;

const STILL: ReadonlySet<string> = new Set([CRACKED, unguarded('missing'), unguarded('not known')]);

/** Of the sentences that a machine is to be told with those for which nothing at all is bent on it, whatever it could make. */
export const standsStill = ({ beware = [] }: Pick<Machine, 'beware'>): readonly string[] => beware.filter((words) => STILL.has(words));
