import type { Trial } from '../../trial/index.js';
import { changeInShort } from '../changeInShort.js';
import { reasonsTold } from '../reasonsTold.js';

/** A part that was asked for and is not in the day. */
export interface NotPlanned {
  /** Index into the trials as given. */
  readonly trial: number;
  readonly part: string;
  readonly verdict: Exclude<Trial['verdict'], 'makes'>;
  /** Why it is not made as it stands; a sentence. */
  readonly reason: string;
  /** Confirmed changes in a few words each, what asks least first. */
  readonly madeWith: readonly string[];
  /** All of it in words, without the part's name. */
  readonly words: string;
}

const ended = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

/** Why a part is left out of the day and what would bring it in; null where it is made and stands in it. */
export const notPlanned = ({ verdict, reasons, remedies, inVain, sheet }: Trial, trial: number): NotPlanned | null => {
  if (verdict === 'makes') return null;
  const { sentence: reason } = reasonsTold(reasons)[0] ?? { sentence: 'no reason is told' };
  const madeWith = remedies.flatMap((remedy) => {
    const said = verdict === 'makes with remedy' && remedy.confirmed ? changeInShort({ verdict, remedies: [remedy] }) : null;
    return said === null ? [] : [said];
  });
  const change =
    madeWith.length > 0 ? `M${madeWith.join('; or ').slice(1)}; not planned into the day until that is chosen.`
      : verdict === 'not decided' ? 'Not decided, so not planned into the day: more computing time may decide it.'
        : `${inVain ?? 'No change that would make it was looked for: a fit looks for them.'} Not planned into the day.`;
  return { trial, part: sheet.part.name, verdict, reason, madeWith, words: `${ended(reason)} ${change}` };
};
