import { beforeAll, describe, expect, it } from 'vitest';
import { planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { type Part, profilePart } from '../src/sheet/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';

const all = demoRack();
const rack = { ...all, dies: all.dies.filter((d) => ['die-v12-85', 'die-v8-85'].includes(d.id)), punches: all.punches.filter((p) => p.id === 'straight-r1') };
const machine = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;

/** Flat lengths between tangent lines. */
const wrap = (insideRadius: number, turn: number): Part => {
  const made = profilePart({ name: 'wrap', thickness: 2, insideRadius, width: 120, flanges: [70, 90], turns: [turn], measure: 'flat' });
  if (!made.ok) throw new Error(made.failure.sentence);
  return { ...made.value, bends: made.value.bends.map((b) => ({ ...b, kind: 'rolled' as const })) };
};

describe('a large radius in several hits', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await planAndProve({ part: wrap(40, 90), machine, rack, metal, quantity: 10 });
  }, 60_000);

  it('as many as keep the corners within 0.2 mm of the arc, one after the other, and the check passes', () => {
    // by hand: 40 (1/cos(90/2n) - 1) is 0.254 for n = 7 and 0.194 for n = 8
    expect(40 * (1 / Math.cos((45 / 7) * (Math.PI / 180)) - 1)).toBeGreaterThan(0.2);
    expect(40 * (1 / Math.cos((45 / 8) * (Math.PI / 180)) - 1)).toBeLessThan(0.2);
    expect(trial.verdict).toBe('makes');
    expect(trial.proof).toMatchObject({ checked: true, passed: true, findings: [] });
    expect(trial.steps.map((s) => s.bendAngle)).toEqual(Array.from({ length: 8 }, () => 11.25));
    const order = trial.steps.map((s) => s.hit!.number);
    expect([order, [...order].reverse()]).toContainEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(trial.assumptions.join('\n')).toContain('is made in 8 hits of 11.3 degrees bend angle each; its facets touch the drawn arc in their middles, the corners between them stand out by 0.19 mm at most.');
  });

  it('the gauge goes on by the pitch from hit to hit while the same edge stops', () => {
    const told = Number(/hits of bend b1 lie (\d+\.\d+) mm apart/.exec(trial.warnings.join('\n'))![1]);
    // each hit takes 11.25 degrees at about the arc's neutral line: (40 + 0.4 to 0.5 t) x 0.19635 = 8.0 to 8.06
    expect(told).toBeGreaterThan(7.95);
    expect(told).toBeLessThan(8.1);
    const pairs = trial.steps.slice(1).map((s, i) => [trial.steps[i]!, s] as const).filter(([a, b]) => a.stop.edge === b.stop.edge && a.gaugeSide === b.gaugeSide && a.stop.kind === 'edge' && b.stop.plate < 2);
    expect(pairs.length).toBeGreaterThan(0);
    for (const [a, b] of pairs) expect(Math.abs(a.stop.x - b.stop.x)).toBeCloseTo(told, 2);
  });

  it('one hit left out is rejected by the check', async () => {
    const steps = trial.steps.filter((_, i) => i !== 3).map((s, i) => ({ ...s, number: i + 1 }));
    const { findings } = await proveTrial({ ...trial, steps }, { steps: [] });
    expect(findings.join()).toContain(`Bend ${trial.steps[3]!.bends[0]!} is never made`);
  });

  it('as many as the narrowest V has room for that keeps the ratings: a narrower one is refused for its force', () => {
    const sheet = profilePart({ name: 'wrap', thickness: 3, insideRadius: 60, width: 300, flanges: [150, 150], turns: [90] });
    if (!sheet.ok) throw new Error(sheet.failure.sentence);
    const s355 = planTrial({ part: sheet.value, machine, rack: { ...all, dies: all.dies.filter((d) => d.v >= 12 && d.v <= 24 && d.includedAngle >= 80) }, metal: metalById('s355jr')!, quantity: 10 });
    expect(s355.verdict).toBe('makes');
    expect(s355.dies.every((d) => d.v > 12)).toBe(true);
    expect(s355.steps.length).toBeLessThan(9);
    expect(s355.assumptions.join()).toMatch(/more than the 0.2 mm wished, since V 16 die, .* has no room for more hits/);
  });

  it('beyond 20 hits it stays refused, and where the V has no room for hits', () => {
    // 300 (1/cos(45/n) - 1) <= 0.2 asks n = 22
    const far = planTrial({ part: wrap(300, 90), machine, rack, metal, quantity: 10 });
    expect(far).toMatchObject({ verdict: 'does not make', reasons: [{ code: 'rolled', bends: ['b1'], by: 2 }] });
    // two corners of 45 degrees stand 25 (1/cos 22.5 - 1) = 2.06 out, three 0.88 (under 1 mm): three hits in V 40 lie closer than it bears
    const narrow = planTrial({ part: wrap(25, 90), machine, rack: { ...all, dies: all.dies.filter((d) => d.v === 40) }, metal, quantity: 10 });
    expect(narrow).toMatchObject({ verdict: 'does not make', reasons: [{ code: 'rolled' }] });
    expect(narrow.reasons[0]!.sentence).toMatch(/3 hits, the fewest .* lie closer together than V 40 die/);
  });
});
