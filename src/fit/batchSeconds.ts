import type { Trial } from '../trial/index.js';

/** s of the batch that are the set-up: what the trial's time model shares over the quantity. */
export const batchSeconds = ({ timeModel, quantity }: Pick<Trial, 'timeModel' | 'quantity'>): number =>
  timeModel.filter(({ what }) => what.startsWith('set-up')).reduce((sum, piece) => sum + piece.seconds * quantity, 0);
