import { expect, it } from 'vitest';
import { sentencesIn } from '../bench/oracle/sentencesIn.js';
import { benchParts } from '../bench/parts.js';
import { afterProof } from '../src/fit/afterProof.js';
import { planJudged } from '../src/fit/planJudged.js';
import { metalById } from '../src/metal/index.js';
import { type Part, profilePart, trayPart } from '../src/sheet/index.js';
import { type Machine, type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Reason, type Trial, type TrialInput, planTrial } from '../src/trial/index.js';

// A reason is told in two sentences at the most. One sample for each place that makes one.

const rack = demoRack();
const general = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;
const bench = (id: string): Part => benchParts().find((b) => b.id === id)!.part;
const some: Rack = { ...rack, punches: rack.punches.filter((p) => p.id === 'straight-r1'), dies: rack.dies.filter((d) => d.v === 12) };

type Profile = Parameters<typeof profilePart>[0];
const profile = (flanges: readonly number[], turns: Profile['turns'], more: Partial<Profile> = {}): Part => {
  const made = profilePart({ name: 'sample', thickness: 1.5, insideRadius: 1.5, width: 120, flanges, turns, ...more });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const angle = profile([40, 60], [90]);
const ask = (part: Part, change: Partial<TrialInput> = {}): Trial => planTrial({ part, machine: general, rack: some, metal, quantity: 10, ...change });
const on = (change: Partial<Machine>): Partial<TrialInput> => ({ machine: { ...general, ...change } });
const rated = (rating: number, which: 'punches' | 'dies'): Rack => ({ ...some, [which]: some[which].map((tool) => ({ ...tool, rating })) });
const hem = { turn: 180, insideRadius: 0.1 };
const judged = async (): Promise<Trial> => {
  const tray = trayPart({ name: 'long', thickness: 3, insideRadius: 3, base: [1000, 300], arms: [[{ length: 60, turn: 90 }], [], [], []] });
  if (!tray.ok) throw new Error(tray.failure.sentence);
  const dies = rack.dies.filter((d) => d.shape === 'V' && d.v >= 16 && d.v <= 32);
  return planJudged({ part: tray.value, machine: { ...general, rating: 150_000 }, rack: { ...some, dies }, metal, quantity: 10 });
};
const rejected = (): Trial => {
  const trial = ask(angle);
  return afterProof(trial, { checked: true, passed: false, smallestClearance: 0, largestMotion: 1, findings: ['Step 1, bend at 91.0 degrees of bend angle: the base runs into the punch of station S1; they share a space of 1.00 x 2.00 x 100.0 mm.', 'Step 2: more.'] });
};

type Sample = readonly [what: string, code: Reason['code'], make: () => Trial | Promise<Trial>];
const SAMPLES: readonly Sample[] = [
  ['a machine too weak', 'force', () => ask(angle, on({ rating: 1000 }))],
  ['a die too weak', 'tool rating', () => ask(angle, { rack: rated(1, 'dies') })],
  ['a punch too weak', 'tool rating', () => ask(angle, { rack: rated(1, 'punches') })],
  ['a stronger punch that is too wide', 'tool rating', () => ask(profile([30, 30, 30], [90, 90], { thickness: 3, insideRadius: 3, width: 150 }), {
    machine: demoFloor().find((m) => m.id === 'small-fast')!, metal: metalById('1.4301')!,
    rack: { ...rack, punches: rack.punches.filter((p) => p.id === 'channel' || p.id === 'straight-r1'), dies: rack.dies.filter((d) => d.v === 24) },
  })],
  ['the worst sheet', 'force', judged],
  ['no flattening tools', 'hem', () => ask(profile([10, 40], [hem]))],
  ['a tear-drop', 'hem', () => ask({ ...profile([10, 40], [hem]), bends: profile([10, 40], [hem]).bends.map((b) => ({ ...b, bendAngle: 200 })) }, { rack })],
  ['flattening tools too weak', 'tool rating', () => ask(profile([10, 40], [hem]), { rack: { ...rack, dies: rack.dies.map((d) => (d.shape === 'anvil' ? { ...d, rating: 10 } : d)) } })],
  ['a hem on a machine too weak', 'force', () => ask(profile([10, 40], [hem], { width: 400 }), { rack, ...on({ rating: 90_000 }) })],
  ['too heavy', 'weight', () => ask(angle, { limits: { onePerson: 0.01, help: 'none' } })],
  ['a wish that cannot be', 'no order', () => ask(bench('P5'), { rack: { ...some, punches: rack.punches.filter((p) => p.id === 'gooseneck') }, wishes: { keepOrder: ['b2', 'b3', 'b1', 'b4'] } })],
  ['a wish for a bend that is not there', 'no order', () => ask(angle, { wishes: { lock: [{ step: 1, bend: 'b9' }] } })],
  ['a wish for a step that is not there', 'no order', () => ask(angle, { wishes: { lock: [{ step: 9, bend: 'b1' }] } })],
  ['two passes of a bend that is not there', 'no order', () => ask(angle, { inTwo: [{ bend: 'b9', first: 30 }] })],
  ['two passes of a hem', 'no order', () => ask(profile([10, 40], [hem]), { rack, inTwo: [{ bend: 'b1', first: 30 }] })],
  ['two passes begun too far', 'no order', () => ask(angle, { inTwo: [{ bend: 'b1', first: 89 }] })],
  ['a plan that the check rejects', 'limit', rejected],
  ['more bends than are searched', 'limit', () => ask(profile([40, ...Array.from({ length: 32 }, () => 60)], Array.from({ length: 32 }, (_, i) => (i % 2 === 0 ? 10 : -10))))],
  ['a plan broken off', 'limit', () => planTrial({ part: bench('P13'), machine: general, rack, metal, quantity: 10, limits: { seconds: 1 } }, { now: (() => { let ms = 0; return () => (ms += 400); })() })],
  ['no die for the sheet', 'no tool', () => ask(angle, { rack: { ...some, dies: rack.dies.filter((d) => d.v > 50) } })],
  ['a die not acute enough', 'die angle', () => ask(profile([40, 60], [150]))],
  ['a tip too round for the V', 'radius', () => ask(profile([40, 60], [120]), { rack: { ...some, punches: some.punches.map((p) => ({ ...p, tipRadius: 10 })), dies: rack.dies.filter((d) => d.v === 12 && d.includedAngle < 40) } })],
  ['a roll', 'rolled', () => ask({ ...angle, bends: angle.bends.map((b) => ({ ...b, kind: 'rolled' as const, insideRadius: 4000 })) })],
  ['an offset without tools', 'offset bend', () => ask(profile([60, 3.5, 60], [90, -90], { thickness: 1, insideRadius: 0.5 }))],
  ['an offset that is not square', 'offset bend', () => ask(profile([60, 2.5, 60], [45, -45], { thickness: 1, insideRadius: 0.5 }), { rack })],
  ['a flange too short', 'short flange', () => ask(profile([5, 60], [90]))],
  ['a flange that meets the punch', 'clearance', () => ask(bench('P2'))],
  ['a bed too short', 'bed length', () => ask(angle, on({ length: 90 }))],
  ['frames too close', 'between frames', () => ask(profile([300, 300], [10]), on({ betweenFrames: 100, throat: 100 }))],
  ['no room to open', 'daylight', () => ask(angle, on({ openHeight: general.shutHeight + 20 }))],
  ['a ram that stays too high', 'shut height', () => ask(angle, on({ shutHeight: general.openHeight - 120 }))],
  ['no finger that reaches, no line scribed', 'no stop', () => ask(angle, { ...on({ gauge: { ...general.gauge, x: { drive: 'powered', min: 400, max: 500, speed: 100 } } }), limits: { scribedLine: 'refused' } })],
  ['a blank of another part', 'blank', () => ask(angle, { blank: { outline: [{ x: 0, y: 0, bulge: 0 }, { x: 300, y: 0, bulge: 0 }, { x: 300, y: 20, bulge: 0 }, { x: 0, y: 20, bulge: 0 }], holes: [] } })],
  ['a class too fine', 'tolerance', () => ask(bench('P3'), { toleranceClass: 'f', toleranceRule: 'worst case' })],
];

it.each(SAMPLES)('%s (%s)', async (_, code, make) => {
  const { reasons } = await make();
  expect(reasons.map((r) => r.code)).toContain(code);
  for (const { sentence } of reasons) {
    expect(sentence).toMatch(/^[A-Z0-9][^]*\.$/);
    expect(sentencesIn(sentence), sentence).toBeLessThanOrEqual(2);
  }
});
