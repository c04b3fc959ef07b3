import type { Body } from './body.js';
import { type Strike, type StrikeOptions, strike } from './strike.js';
import { type Passes, passesFor } from './ways.js';
import type { View } from './views.js';

/** Asks clearance questions and keeps every answer with the view that it is about. */
export interface Asker {
  /** `key` names bodies, passes and options; the view itself stands for seat and path states. */
  readonly ask: (view: View, key: string, bodies: readonly Body[], passes: () => Passes, options: StrikeOptions) => Strike;
  readonly counts: { asked: number; answered: number };
}

export const createAsker = (): Asker => {
  const kept = new WeakMap<View, Map<string, Strike>>();
  const counts = { asked: 0, answered: 0 };
  return {
    counts,
    ask: (view, key, bodies, passes, options) => {
      counts.asked++;
      let answers = kept.get(view);
      if (!answers) kept.set(view, (answers = new Map()));
      const known = answers.get(key);
      if (known) return known;
      counts.answered++;
      const answer = strike(view, bodies, passesFor(view, passes()), options);
      answers.set(key, answer);
      return answer;
    },
  };
};
