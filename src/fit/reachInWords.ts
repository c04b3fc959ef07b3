import type { Reach } from './envelope.js';

/**
 * A figure of an envelope, with what is not known of it.
 *
 * @example reachInWords({ mm: 12, decided: false }) // '12 mm, not decided beyond'
 */
export const reachInWords = ({ mm, decided }: Reach): string =>
  mm === null ? (decided ? 'none of those tried' : 'not decided') : `${mm.toLocaleString('en-GB')} mm${decided ? '' : ', not decided beyond'}`;
