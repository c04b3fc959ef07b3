import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { plateNames, trayPart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { Reason, TrialInput } from '../trial/index.js';
import { remedyCandidates } from './remedyCandidates.js';

const wall = [{ length: 30, turn: 90 }];
const made = trayPart({ name: 'corner', thickness: 1.5, insideRadius: 1, base: [160, 120], arms: [wall, wall, [], []] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;

it('changes to the part add up, in whichever order they are made', () => {
  const input: TrialInput = { part, machine: demoFloor().find((m) => m.id === 'general')!, rack: demoRack(), metal: metalById('dc01')!, quantity: 20 };
  const reasons: Reason[] = [
    { code: 'radius', sentence: '', bends: ['b1'] },
    { code: 'plate on plate', sentence: '', bends: ['b1'], by: 1, bodies: [plateNames(part)[1]!, plateNames(part)[2]!] },
  ];
  const candidates = remedyCandidates(input, reasons);
  const [radius, relief] = [candidates.find((c) => c.item.kind === 'radius')!, candidates.find((c) => c.item.kind === 'relief')!];
  for (const changes of [[radius, relief], [relief, radius]]) {
    const [changed] = changes.reduce<readonly TrialInput[]>((asked, { apply }) => asked.flatMap(apply), [input]);
    expect(changed!.part.bends.map((b) => b.insideRadius)).toEqual([1.9, 1.9]);
    // 1.5 mm off both ends of the first wall: the overlap, half a mm of room
    const width = (p: typeof part): number => Math.max(...p.plates[1]!.outline.map((v) => v.x)) - Math.min(...p.plates[1]!.outline.map((v) => v.x));
    expect(width(part) - width(changed!.part)).toBeCloseTo(3, 6);
  }
});
