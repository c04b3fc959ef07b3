import type { Part } from '../../src/sheet/index.js';
import { randomSerial, randomTray, randomTree } from '../random.js';

export type Family = 'tray' | 'serial' | 'tree';
export const FAMILIES: readonly Family[] = ['tray', 'serial', 'tree'];

/** A seeded part of a family with few bends: trays of 3 to 6 arms (every tenth of 4 arms two deep), profiles of 2 to 6 bends, trees of 2 to 5. */
export const familyPart = (family: Family, seed: number): Part => {
  if (family === 'serial') return randomSerial(seed, 2 + (seed % 5));
  if (family === 'tree') return randomTree(seed, 2 + (seed % 4));
  return seed % 10 === 0 ? randomTray(seed, 4, 2) : randomTray(seed, 3 + (seed % 4), 1);
};
