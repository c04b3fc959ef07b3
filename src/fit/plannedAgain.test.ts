import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { fitCell } from './fitCell.js';
import { fitTrial } from './fitTrial.js';
import { plannedAgain } from './plannedAgain.js';

it('a plan whose search does not end again is found by its own way', async () => {
  const part = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
  if (!part.ok) throw new Error(part.failure.sentence);
  const rack = demoRack();
  const input = {
    part: part.value, machine: demoFloor().find(({ id }) => id === 'general')!, metal: metalById('dc01')!, quantity: 1,
    rack: { ...rack, punches: rack.punches.filter(({ shape }) => shape === 'straight').slice(0, 1), dies: rack.dies.filter(({ v }) => v === 12) },
  };
  const now = (): number => performance.now();
  const cell = fitCell(await fitTrial(input, { remedies: false }, { now }));
  expect(cell.verdict).toBe('makes');
  // no time at all for the search: only the way that is known makes it
  const hurried = { ...input, limits: { seconds: 1e-9 } };
  expect(await plannedAgain(hurried, { ...cell, way: null }, { remedies: false }, { now })).toBeNull();
  expect(await plannedAgain(hurried, cell, { remedies: false }, { now })).toMatchObject({ verdict: 'makes', proven: false, steps: cell.way!.steps.map(({ bends }) => ({ bends })) });
});
