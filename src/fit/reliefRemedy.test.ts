import { expect, it, vi } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Part, relieve, trayPart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { fitTrial } from './fitTrial.js';
import { planAndProve } from './planAndProve.js';

vi.setConfig({ testTimeout: 240_000 });

const [LENGTH, WIDTH, HEIGHT, THICKNESS] = [160, 120, 30, 1.5];
/** mm by which both walls stand in each other at the corner. */
const OVERLAP = 1;
/**
 * A wall ends 0.5 / sqrt 2 mm before the other's tangent line, which lies a radius and a thickness from the outside (1.5 + 1.5), and the
 * other's inner face one thickness: to stand in it by the overlap a wall is longer by this.
 */
const LONGER = 0.5 / Math.SQRT2 + 1.5 + OVERLAP;

const corner = ((): Part => {
  const wall = [{ length: HEIGHT, turn: 90 }];
  const made = trayPart({ name: 'corner', thickness: THICKNESS, insideRadius: THICKNESS, base: [LENGTH, WIDTH], arms: [wall, wall, [], []] });
  if (!made.ok) throw new Error(made.failure.sentence);
  // the first wall lies against its own edge the other way round: its end at the corner is where it begins
  const [base, first, second] = made.value.plates;
  const longer = [{ ...first!, outline: first!.outline.map((v) => (v.x < LENGTH / 2 ? { ...v, x: v.x - LONGER } : v)) }, { ...second!, outline: second!.outline.map((v) => (v.x > WIDTH / 2 ? { ...v, x: v.x + LONGER } : v)) }];
  return { ...made.value, plates: [base!, ...longer] };
})();

it('a relief where two walls were drawn into each other, refused without it, made and proved with it', async () => {
  const input = { part: corner, machine: demoFloor().find((m) => m.id === 'general')!, rack: demoRack(), metal: metalById('dc01')!, quantity: 20 };
  const trial = await fitTrial(input, { remedies: true });
  expect(trial.verdict).toBe('makes with remedy');
  const meets = trial.reasons.find((r) => r.code === 'plate on plate')!;
  expect(meets.by).toBeCloseTo(OVERLAP, 1);
  const [remedy] = trial.remedies;
  expect(remedy!.items!.map(({ kind }) => kind)).toEqual(['relief']);
  expect([remedy!.confirmed, remedy!.price]).toEqual([true, 0]);
  // the overlap and half a mm of room, to the next half
  expect(remedy!.sentence).toContain('a relief of 1.5 mm at both ends of');
  // planned by the test itself with 1.5 mm off the wall: the end is 0.5 mm clear
  for (const wall of [1, 2]) {
    const again = await planAndProve({ ...input, part: relieve(corner, wall, 1.5)! });
    expect([again.verdict, again.proof.passed]).toEqual(['makes', true]);
  }
  // with less than the overlap off it stays refused
  const less = await planAndProve({ ...input, part: relieve(corner, 1, OVERLAP - 0.2)! });
  expect(less.verdict).toBe('does not make');
});
