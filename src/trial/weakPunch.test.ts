import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';
import type { Trial } from './trial.js';

// stainless of 3 mm in V 24 asks some 270 N/mm; a web of 30 between legs of 30 wants the channel punch, which bears 250
const made = profilePart({ name: 'narrow channel', thickness: 3, insideRadius: 3, width: 150, flanges: [30, 30, 30], turns: [90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const channel = made.value;
const plan = (rating: number): Trial => {
  const rack = demoRack();
  const punches = rack.punches.filter((p) => p.id === 'channel' || p.id === 'straight-r1').map((p) => (p.id === 'channel' ? { ...p, rating } : p));
  return planTrial({ part: channel, machine: demoFloor().find((m) => m.id === 'small-fast')!, rack: { ...rack, punches, dies: rack.dies.filter((d) => d.v === 24) }, metal: metalById('1.4301')!, quantity: 20 });
};

it('a punch is not put under more force than it bears, although its shape would make the bend', () => {
  const strong = plan(400);
  expect(strong.verdict).toBe('makes');
  expect(strong.steps.map((s) => s.punch)).toContain('channel');
  const asked = Math.max(...strong.steps.map((s) => s.forcePerLength));
  expect(asked).toBeGreaterThan(250);
  expect(asked).toBeLessThan(400);

  const weak = plan(250);
  expect(weak.verdict).toBe('does not make');
  expect(weak.reasons.map((r) => r.sentence)).toContainEqual(expect.stringMatching(new RegExp(`is left out of bend b1 in .*: it is rated 250 N/mm and ${asked.toFixed(0)} is asked`)));
  expect(weak.steps).toEqual([]);
});
