import { beforeAll, describe, expect, it } from 'vitest';
import { benchParts } from '../bench/parts.js';
import { fitTrial, planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { profilePart } from '../src/sheet/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';

const rack = demoRack();
/** One V and the plain punches: few questions for the same answers. */
const few = { ...rack, dies: rack.dies.filter((d) => d.id === 'die-v12-85' || d.id === 'die-v12-30'), punches: rack.punches.filter((p) => ['straight-r1', 'gooseneck', 'acute-30'].includes(p.id)) };
const metal = metalById('dc01')!;
const machine = demoFloor().find((m) => m.id === 'general')!;
const now = (): number => performance.now();
const p6 = benchParts().find((b) => b.id === 'P6')!.part;

/**
 * Outside lengths 50, 100, 120; b1 turns by 145, b2 by 145 the other way. In b1's stroke the back wing ends over 72.5 degrees up.
 * b2 flat: the wing is 200 and more long, and at the height of the clamp, 120 over the tip of the acute punch, it stands
 * 120 / tan 72.5 = 38 back, where the clamp is 40 wide: met. b2 made: as the sheet lies flat its flange goes from 100 back down
 * under it at 35 degrees, 120 cos 35 = 98 forward and 69 down: into the die, 16 and more wide at that height. b2 at 70: it hangs
 * down and away at first, and at the end of the stroke it goes off level, 100 sin 72.5 = 95 up, under the clamp.
 */
const folded = profilePart({ name: 'folded to and fro', thickness: 1.5, insideRadius: 1.5, width: 200, flanges: [50, 100, 120], turns: [145, -145] });
if (!folded.ok) throw new Error(folded.failure.sentence);
const input = { part: folded.value, machine, rack: few, metal, quantity: 50 };

describe('a bend in two passes', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await planAndProve({ ...input, inTwo: [{ bend: 'b2', first: 70 }] }, { now });
  }, 60_000);

  it('no order of single strokes: the clamp if b2 is not made, the die if it is', () => {
    const single = planTrial(input, { now });
    expect(single.verdict).toBe('does not make');
    const words = single.reasons.map((r) => r.sentence).join('\n');
    expect(words).toMatch(/At bend b1 the flange beyond b2 meets the upper beam or its clamps .* if b2 is not\./);
    expect(words).toMatch(/At bend b1 the flange beyond b2 meets the die .* if b2 is made\./);
  });

  it('begun to 70 degrees, b1 made, then finished: planned and replayed', () => {
    expect(trial.verdict).toBe('makes');
    expect(trial.steps.map((s) => [s.bends[0], s.pass, s.bendAngle])).toEqual([['b2', 1, 70], ['b1', undefined, 145], ['b2', 2, 145]]);
    expect(trial.proof).toMatchObject({ checked: true, passed: true, findings: [] });
  });

  it('states for each pass what is set: the ram ends where a single stroke ends, depth counts from what the first pass left', () => {
    const [first, , second] = trial.steps;
    const dieTop = (id: string): number => trial.stations.find((s) => s.id === id)!.dieTop;
    // both strokes touch the sheet's upper face where the tip stands then: depth and ram position differ by that height
    expect(first!.ramPosition + first!.depth).toBeCloseTo(dieTop(first!.station) + 1.5, 9);
    expect(second!.ramPosition).toBeLessThan(first!.ramPosition);
    expect(second!.ramPosition + second!.depth).toBeLessThan(dieTop(second!.station) + 1.5);
    expect(second!.bendAngleUnderLoad).toBeGreaterThan(145);
    expect(second!.stop.kind).toBe('none');
    expect(second!.words).toMatch(/lay the bend begun in the V .* Finish b2 to 145 degrees of bend angle/);
    expect(trial.warnings.join()).not.toMatch(/scribed/);
  });

  it('without its first pass, or without its second, the check rejects it', async () => {
    const without = async (k: number): Promise<string> =>
      (await proveTrial({ ...trial, steps: trial.steps.filter((_, i) => i !== k).map((s, i) => ({ ...s, number: i + 1 })) })).findings.join('\n');
    expect(await without(0)).toMatch(/Step 1, bend/);
    expect(await without(2)).toMatch(/Bend b2 ends at 70 degrees of bend angle; the part asks 145/);
  }, 60_000);

  it('the fit offers it as a remedy, planned again and proven', async () => {
    const fitted = await fitTrial(input, { remedies: true }, { now });
    expect(fitted.verdict).toBe('makes with remedy');
    expect(fitted.remedies[0]!.sentence).toMatch(/^With bend b2 in two passes, first to 73 degrees of bend angle \(no price\) it is made in \d+\.\d s a part/);
    expect(fitted.remedies[0]!.items).toEqual([expect.objectContaining({ kind: 'two passes', id: 'two-passes-b2' })]);
  }, 60_000);
});

describe('P6, closed but for 5 mm', () => {
  it('is refused with its reasons, and two passes do not help: the last stroke, whichever, ends round the punch', () => {
    // By hand: after the last stroke the section of inside 60 x 60 goes all round the tip but for a gap of 5 mm, 55 mm and more from
    // any corner. The punch joins the tip to the ram outside, so it passes the gap: there it is no thicker than 5 mm. Every
    // punch of the rack is thicker, seen level, from 30 to 60 sqrt 2 = 85 mm over its tip. Passes before the last change nothing in that.
    for (const punch of rack.punches.filter((p) => p.shape !== 'flattening')) {
      for (let up = 30; up <= 85; up += 5) expect(levelThickness(punch.profile, up), `${punch.id} at ${up}`).toBeGreaterThan(5 * Math.SQRT2);
    }
    expect(planTrial({ part: p6, machine, rack: few, metal, quantity: 50 }, { now }).reasons.map((r) => r.code)).toContain('clearance');
    for (const bend of ['b1', 'b2', 'b3']) {
      const trial = planTrial({ part: p6, machine, rack: few, metal, quantity: 50, inTwo: [{ bend }] }, { now });
      expect(trial.verdict).toBe('does not make');
      expect(trial.model).toContain(`${bend} in two passes, first to 45 degrees of bend angle`);
    }
  });

  it('the fit does not offer it: only the part made in two and joined', async () => {
    const fitted = await fitTrial({ part: p6, machine, rack: few, metal, quantity: 50 }, { remedies: true }, { now });
    expect(fitted.remedies.length).toBeGreaterThan(0);
    expect(fitted.remedies.flatMap((r) => r.items!.map((i) => i.kind))).toEqual(fitted.remedies.map(() => 'split'));
  }, 60_000);
});

/** mm of tool between its outer faces at a height over the tip. */
const levelThickness = (profile: readonly { readonly x: number; readonly y: number }[], up: number): number => {
  const xs = profile.flatMap((a, i) => {
    const b = profile[(i + 1) % profile.length]!;
    return a.y > up !== b.y > up ? [a.x + ((b.x - a.x) * (up - a.y)) / (b.y - a.y)] : [];
  });
  return Math.max(...xs) - Math.min(...xs);
};
