import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { TrialInput } from './input.js';
import { planTrial } from './planTrial.js';

const machine = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;
const trial = (id: string, wishes?: TrialInput['wishes']) => {
  const { part } = benchParts().find((b) => b.id === id)!;
  return planTrial({ part, machine, rack: demoRack(), metal, quantity: 50, ...(wishes ? { wishes } : {}) }, { now: () => performance.now() });
};
const orderOf = (t: ReturnType<typeof trial>): string => t.steps.map((s) => s.bends.join('+')).join(' ');

describe('what the user asks of an order', () => {
  const free = trial('P3');

  it('keeps bends in the order asked for, and costs no less than the free order', () => {
    const kept = trial('P3', { keepOrder: ['b4', 'b1'] });
    expect(kept.verdict).toBe('makes');
    expect(orderOf(kept).indexOf('b4')).toBeLessThan(orderOf(kept).indexOf('b1'));
    expect(kept.seconds).toBeGreaterThanOrEqual(free.seconds - 1e-6);
    expect(kept.proven).toBe(true);
  });

  it('locks a step to a bend', () => {
    const last = free.steps[free.steps.length - 1]!.bends[0]!;
    const other = ['b2', 'b3'].find((b) => b !== last)!;
    const locked = trial('P3', { lock: [{ step: 4, bend: other }] });
    expect(locked.verdict).toBe('makes');
    expect(locked.steps[3]!.bends).toEqual([other]);
  });

  it('never uses a punch or a seat that is forbidden', () => {
    const punch = free.steps[0]!.punch;
    const other = trial('P3', { forbid: [{ bend: 'b1', punch }] });
    expect(other.verdict).toBe('makes');
    expect(other.steps.find((s) => s.bends.includes('b1'))!.punch).not.toBe(punch);
    const seat = free.steps.find((s) => s.bends.includes('b1'))!;
    const plate = benchParts().find((b) => b.id === 'P3')!.part.bends[0]!.sides[seat.gaugeSide].plate;
    const turned = trial('P3', { forbid: [{ bend: 'b1', plateToGauge: plate }] });
    expect(turned.verdict).toBe('makes');
    expect(turned.steps.find((s) => s.bends.includes('b1'))!.gaugeSide).toBe(1 - seat.gaugeSide);
  });

  it('says at once that legs cannot come before their lips, and why', () => {
    const refused = trial('P5', { keepOrder: ['b2', 'b3', 'b1', 'b4'] });
    expect(refused.verdict).toBe('does not make');
    expect(refused.reasons[0]!.sentence).toBe('No order is left that keeps to the wish: b2 before b3 before b1 before b4.');
    expect(refused.reasons.length).toBeGreaterThan(1);
  });

  it('names a bend that the part has not', () => {
    expect(trial('P1', { lock: [{ step: 1, bend: 'b9' }] }).reasons[0]!.sentence).toBe('The part has no bend b9; its bends are b1.');
  });
});
