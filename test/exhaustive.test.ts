import { describe, expect, it } from 'vitest';
import { SAME_COST, exhaust, smallRack } from '../bench/exhaustive.js';
import { benchParts } from '../bench/parts.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor } from '../src/shop/index.js';
import type { Part } from '../src/sheet/index.js';

// Every order, seat and pair on the answers of the proof engine. The long form with P3 to P7, P16 and seeded parts: npm run bench -- exhaustive.

const partOf = (id: string): Part => benchParts().find((b) => b.id === id)!.part;
const machine = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;
/** One punch each: the upright one cannot make P2's second bend, the relieved one can. */
const cases: readonly (readonly [string, Part, string])[] = [['P1', partOf('P1'), 'straight-r1'], ['P2', partOf('P2'), 'straight-r1'], ['P2', partOf('P2'), 'gooseneck']];

describe('planner and proof engine agree stroke by stroke, and on the best cost', () => {
  it.each(cases)('%s', async (_, part, punch) => {
    const rack = smallRack();
    const { planner, oracle, verdicts } = await exhaust({ part, machine, rack: { ...rack, punches: rack.punches.filter((p) => p.id === punch) }, metal, quantity: 50 });
    expect(verdicts.flatMap((v) => v.wrongYes)).toEqual([]);
    expect(verdicts.reduce((sum, v) => sum + v.accepted + v.refused, 0)).toBeGreaterThan(0);
    if (planner === null) expect(oracle).toBeNull();
    else expect(Math.abs(oracle! - planner)).toBeLessThan(SAME_COST);
  }, 240_000);
});
