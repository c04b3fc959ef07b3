import { describe, expect, it } from 'vitest';
import { type GeneralClass, metalById } from '../metal/index.js';
import { defaultDimensions, develop, profilePart, valueOf } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';

const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 200, flanges: [40, 60], turns: [90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;
const sheet = develop(part, { name: 'K-factor', k: 0.44 });
const all = demoRack();
const rack = { ...all, dies: all.dies.filter((d) => d.id === 'die-v12-85'), punches: all.punches.filter((p) => p.id === 'straight-r1') };
const machine = demoFloor().find((m) => m.id === 'general')!;

/** Length measured after the only stroke and its tolerance; `tolerance` stands on the drawing's flange of 40 mm. */
const asked = (toleranceClass?: GeneralClass, tolerance?: number): readonly [number, number | null] => {
  const dimensions = defaultDimensions(sheet).map((d) => (Math.abs(valueOf(sheet, d) - 40) < 0.01 ? { ...d, tolerance } : d)) as ReturnType<typeof defaultDimensions>;
  const trial = planTrial({ part: tolerance === undefined ? part : { ...part, dimensions }, machine, rack, metal: metalById('dc01')!, quantity: 10, ...(toleranceClass && { toleranceClass }) });
  const { measure } = trial.steps[0]!;
  return [measure.length, measure.tolerance];
};

describe('the tolerance that the length measured after a stroke is to hold', () => {
  it('is none where none is asked', () => expect(asked()).toEqual([expect.closeTo(40, 1), null]));
  // ISO 2768-1 table 1, over 30 up to 120 mm
  it('is that of the general class asked', () => expect([asked('c')[1], asked('v')[1]]).toEqual([0.8, 1.5]));
  it('is the dimension\'s own where the drawing gives one', () => expect(asked('c', 0.4)).toEqual([expect.closeTo(40, 1), 0.4]));
});
