import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { TrialInput } from '../trial/index.js';
import { envelope } from './envelope.js';
import { reachInWords } from './reachInWords.js';

const [machine] = demoFloor();
const lengthOf = ({ part }: TrialInput): number => Math.max(...part.bends.map(({ sides: [{ line }] }) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])));

it('an envelope tells what is not decided from what is not made', async () => {
  const { thickest, shortest, deepest } = await envelope(machine!, demoRack(), metalById('dc01')!, {
    verdict: async (input) => {
      const { thickness, bends } = input.part;
      if (bends.length > 1) return 'not decided';
      // bends of 100 are those of the shortest flange
      if (lengthOf(input) < 101) return thickness < 3 ? 'makes' : 'does not make';
      // a worker that died gave no plan
      if (lengthOf(input) > 900) return thickness <= 2 ? 'makes' : null;
      return thickness <= 3 ? 'makes' : 'makes with remedy';
    },
  });
  expect(thickest.map(({ length, thickness }) => [length > 900, reachInWords(thickness)])).toEqual(thickest.map(({ length }) => (length > 900 ? [true, '2 mm, not decided beyond'] : [false, '3 mm'])));
  expect(shortest.map(({ thickness, flange }) => [thickness, flange.mm !== null, flange.decided])).toEqual([[1, true, true], [2, true, true], [3, false, true], [6, false, true]]);
  expect([reachInWords(deepest.depth), reachInWords(shortest[2]!.flange)]).toEqual(['not decided', 'none of those tried']);
});
