import { readDxfPart } from '../src/intake/index.js';
import { blankDxf } from '../src/papers/index.js';
import { type Part, blank, develop, ruleInWords } from '../src/sheet/index.js';
import { randomSerial, randomTray, randomTree } from './random.js';
import { differences } from './samePart.js';

const RULE = { name: 'K-factor', k: 0.44 } as const;

/** A random part by its number: trees, trays and profiles in turn. */
export const tripPart = (seed: number): Part => {
  switch (seed % 4) {
    case 0:
      return randomTray(seed, 4 + (seed % 3), 1 + (seed % 3));
    case 1:
      return randomSerial(seed, 1 + (seed % 9));
    default:
      return randomTree(seed, 2 + (seed % 9));
  }
};

export interface Trip {
  readonly seed: number;
  /** 'no blank' where the part cannot be cut from one sheet: nothing to send. */
  readonly end: 'same' | 'differs' | 'refused' | 'no blank';
  readonly words: readonly string[];
}

/** Part -> blank as DXF -> part, by the file alone: thickness, rule, angles, radii and directions are read from its writing. */
export const dxfTrip = (part: Part, seed: number): Trip => {
  const flat = blank(develop(part, RULE));
  if (!flat.ok) return { seed, end: 'no blank', words: [flat.failure.sentence] };
  const read = readDxfPart(blankDxf(flat.value, { rule: ruleInWords(RULE) }), part.name);
  if (!read.ok) return { seed, end: 'refused', words: [read.failure.sentence] };
  const words = differences(part, read.value.part, RULE);
  return { seed, end: words.length === 0 ? 'same' : 'differs', words };
};
