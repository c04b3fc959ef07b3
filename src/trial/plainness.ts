import type { Pair } from './bodies.js';

/** Plain tools first where time does not tell them apart: straight before relieved before acute, as drawn before reversed. */
export const plainness = ({ punch, punchFacing, ears }: Pair): number =>
  ['straight', 'gooseneck', 'acute', 'flattening', 'offset'].indexOf(punch.shape) * 10 + punch.height / 100 + (punchFacing === 'reversed' ? 5 : 0) + (ears ? 3 : 0);
