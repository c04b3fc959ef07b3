import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Part, profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';

const rack = demoRack();
const [punch, die] = [rack.punches.find((p) => p.id === 'straight-r1')!, rack.dies.find((d) => d.id === 'die-v24-85')!];
const general = demoFloor().find((m) => m.id === 'general')!;
const angle = (width: number): Part => {
  const made = profilePart({ name: `angle ${width}`, thickness: 3, insideRadius: 3, width, flanges: [60, 80], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const tools = (metres: number) => ({ ...rack, punches: [{ ...punch, segments: [{ length: 500, count: 2 * metres }] }], dies: [{ ...die, segments: [{ length: 500, count: 2 * metres }] }] });
const plan = (width: number, metres: number) => planTrial({ part: angle(width), machine: general, rack: tools(metres), metal: metalById('dc01')!, quantity: 1 });

describe('a bend longer than the bed or than all tools', () => {
  it('is a plain no, not something undecided', () => {
    // 3,500 with 5 bare at both ends on a bed of 3,050
    expect(general.length).toBe(3050);
    const bed = plan(3500, 4);
    expect([bed.verdict, bed.reasons[0]!.code]).toEqual(['does not make', 'bed length']);
    // 1,500 of tools for 2,500
    const few = plan(2500, 1.5);
    expect([few.verdict, few.reasons[0]!.code]).toEqual(['does not make', 'no segments']);
  });

  it('with enough of both it is made', () => {
    expect(plan(2500, 2.5).verdict).toBe('makes');
  });
});
