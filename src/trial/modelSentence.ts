import type { TrialInput } from './input.js';
import { BASE_ALLOWANCE } from './limits.js';
import type { Twice } from './states.js';
import { inTwoWords } from './twoPasses.js';
import { wishesInWords } from './wishes.js';

/** What the search ranged over, in one paragraph: strokes, the Vs in the order in which they were tried, and what is asked of the order. */
export const modelSentence = (strokes: number, vs: readonly number[], { wishes, part, limits }: TrialInput, twice: Twice): string =>
  `${wishes || twice.size > 0 ? `As asked: ${[...(wishes ? [wishesInWords(wishes)] : []), ...(twice.size > 0 ? [inTwoWords(part, twice)] : [])].join(', ')}. ` : ''}Each of ${strokes} strokes once${limits?.scribedLine === 'refused' ? ', each at a stop of the gauge,' : ''} in a V (${vs.length > 0 ? vs.map((v) => v.toString()).join(', ') : 'none'} mm tried in this order), the rack's own punches both ways round in plain segments (ear segments only where those find no order), one bed and one ram, clearance ${BASE_ALLOWANCE} mm, times by the stated model; the first V that gives a plan is kept.`;
