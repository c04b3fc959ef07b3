import { beforeAll, describe, expect, it } from 'vitest';
import { flatten } from '../src/geometry/index.js';
import { metalById } from '../src/metal/index.js';
import { setupSheetPdf, sectionPicture, stepPicture } from '../src/papers/index.js';
import { proveTrial } from '../src/proof/index.js';
import { type Part, profilePart } from '../src/sheet/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { type Step, type Trial, planTrial } from '../src/trial/index.js';
import { offsetBendOf, offsetTipAt } from '../src/trial/offsetBend.js';

const rack = demoRack();
const metal = metalById('dc01')!;
const machine = demoFloor().find((m) => m.id === 'general')!;
const profile = (flanges: readonly number[], turns: readonly number[], thickness = 1, insideRadius = 0.5): Part => {
  const made = profilePart({ name: 'offset', thickness, insideRadius, width: 120, flanges, turns });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const plan = (part: Part, tools = rack): Trial => planTrial({ part, machine, rack: tools, metal, quantity: 50 });

// Hand geometry of a Z of 60, 3.5 and 60 mm outside, 1 mm thick, inside radius 0.5, square: the step from face to face is 3.5 - 1 = 2.5;
// the web's flat is 3.5 - 2 x 1.5 = 0.5; both tangent lines lie 2 x (0.5 + 0.5) = 2 apart, level.
const STEP = 2.5;
const EDGE = 60 - 1.5;

describe('an offset of 2.5 mm: a web that no V of the rack takes', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = plan(profile([60, 3.5, 60], [90, -90]));
  });
  const findings = async (change: (step: Step) => Partial<Step>, of = trial): Promise<string> =>
    (await proveTrial({ ...of, steps: of.steps.map((s, i) => (i === 0 ? { ...s, ...change(s) } : s)) })).findings.join('\n');

  it('is pressed in one stroke, at the figures of hand geometry', () => {
    expect(trial.verdict).toBe('makes');
    expect(trial.steps).toHaveLength(1);
    const [step] = trial.steps;
    expect(step).toMatchObject({ kind: 'offset bend', bends: ['b1', 'b2'], punch: 'offset-punch-2.5', die: 'offset-die-2.5' });
    // the flange that lies still keeps its line 1 mm off the middle of the step; its edge stands at the fingers
    expect(step!.lineBack).toBeCloseTo(1, 9);
    expect(step!.stop.x).toBeCloseTo(EDGE + 1, 9);
    expect(step!.depth).toBeCloseTo(STEP, 9);
    // die of 90, sheet of 1
    expect(step!.ramPosition).toBeCloseTo(90 + 1 - STEP, 9);
    expect(step!.measure.length).toBeCloseTo(3.5, 9);
    // six times the air bend over 8 t (common practice, no source), once over the 120 mm: both bends lie over one length of tool
    expect(step!.force).toBeCloseTo((6 * 1.33 * metal.tensile.typical * 120) / 8, 3);
    // DIN 6935, k = 0.65 + 0.5 lg(0.5): pi/2 (0.5 + k/2)
    expect(step!.allowance).toBeCloseTo((Math.PI / 2) * (0.5 + (0.65 + 0.5 * Math.log10(0.5)) / 2), 9);
  });

  it('passes the check; turned about, the other way round, with a further flange and as a double offset too', async () => {
    expect((await proveTrial(trial)).findings).toEqual([]);
    for (const [part, strokes] of [
      [profile([60, 3.5, 60], [-90, 90]), 1], [profile([30, 60, 3.5, 60], [90, 90, -90]), 2], [profile([60, 3.5, 60, 30], [90, -90, 90]), 2],
      [profile([60, 3.5, 40, 3.5, 60], [90, -90, 90, -90]), 2], [profile([60, 6, 60], [90, -90], 1, 1), 1],
    ] as const) {
      const made = plan(part);
      expect(made.verdict, part.name).toBe('makes');
      expect(made.steps).toHaveLength(strokes);
      expect((await proveTrial(made)).findings).toEqual([]);
    }
    const turned = planTrial({ part: profile([60, 3.5, 60], [90, -90]), machine, rack, metal, quantity: 50, wishes: { forbid: [{ bend: 'b1', plateToGauge: 2 }] } });
    expect(turned.stations[0]).toMatchObject({ punchFacing: 'reversed', dieFacing: 'reversed' });
    expect((await proveTrial(turned)).findings).toEqual([]);
  }, 120_000);

  it('damaged plans are rejected', async () => {
    expect(await findings((s) => ({ lineBack: s.lineBack! + 2 }))).toMatch(/runs into the (punch|die)/);
    expect(await findings((s) => ({ ramPosition: s.ramPosition + 0.5 }))).toContain('the ram is written at');
    expect(await findings((s) => ({ stop: { ...s.stop, x: s.stop.x + 0.5, axisX: s.stop.axisX + 0.5 } }))).toContain('the stop is written at X');
    expect(await findings((s) => ({ gaugeSide: s.gaugeSide === 0 ? 1 : 0 }))).toContain('lies over the low land');
    expect(await findings(() => ({ bends: ['b1'] }))).toContain('are no offset');
    expect(await findings(() => ({ kind: 'V bend' }))).toContain('bends nothing in a V');
    // the die turned without its punch
    const turned = { ...trial, stations: trial.stations.map((s) => ({ ...s, dieFacing: 'reversed' as const })) };
    expect((await proveTrial(turned)).findings.join()).toContain('its die reversed');
    // a higher step than the part's
    const other = rack.punches.find((p) => p.id === 'offset-punch-5')!;
    const [die] = rack.dies.filter((d) => d.id === 'offset-die-5');
    const higher = { ...trial, punches: [{ ...other, id: 'offset-punch-2.5' }], dies: [{ ...die!, id: 'offset-die-2.5' }] };
    expect((await proveTrial(higher)).findings.join()).toMatch(/step is 2\.50? mm/);
  }, 60_000);

  it('stands on the papers', async () => {
    expect(sectionPicture(trial, 1).title).toContain('Step 1');
    expect(stepPicture(trial, 1, 'after').title).toContain('offset b1 and b2');
    expect((await setupSheetPdf(trial)).length).toBeGreaterThan(5000);
  }, 60_000);
});

describe('the refusals', () => {
  it('no tool of that step: the web, the least that the smallest V takes, the tool that it asks', () => {
    const trial = plan(profile([60, 4.5, 60], [90, -90]));
    expect(trial.verdict).toBe('does not make');
    const [reason] = trial.reasons;
    expect(reason).toMatchObject({ code: 'offset bend', bends: ['b1', 'b2'] });
    expect(reason!.sentence).toMatch(/^The web between b1 and b2 is 4\.5 mm outside and V 6 die.*takes \d\.\d mm at least\. It asks an offset tool with a step of 3\.5 mm for 1 mm of sheet, and the rack's have 2\.5 mm/);
    expect(reason!.sentence.split('. ')).toHaveLength(2);
  });

  it('no offset tool at all, and no square step', () => {
    const bare = { ...rack, punches: rack.punches.filter((p) => !p.offset), dies: rack.dies.filter((d) => !d.offset) };
    expect(plan(profile([60, 3.5, 60], [90, -90]), bare).reasons[0]!.sentence).toContain('this machine holds none');
    // 2.5 sin 45 - (1 - cos 45) = 1.47
    expect(plan(profile([60, 2.5, 60], [45, -45])).reasons[0]!.sentence).toContain('a step of 1.5 mm for 1 mm of sheet and 45.0 degrees of bend angle');
  });

  it('a web that a V takes is bent twice, whatever offset tools there are', () => {
    const trial = plan(profile([60, 20, 60], [90, -90]));
    expect(trial.steps.map((s) => s.kind)).toEqual(['V bend', 'V bend']);
  });
});

describe('how deep the punch stands', () => {
  // the twin: the sheet's upper face walked in small pieces, the punch's own outline let down on it
  it.each(rack.punches.flatMap((p) => (p.offset ? [[p.name, p] as const] : [])))('%s rides on the sheet with its edge', (_, punch) => {
    const form = punch.offset!;
    const part = profile([60, form.height + 1, 60], [90, -90], 1, form.insideRadius);
    const k = 0.65 + 0.5 * Math.log10(form.insideRadius);
    const allowance = (Math.PI / 2) * (form.insideRadius + k / 2);
    const bend = offsetBendOf({ part, allowances: [allowance, allowance] }, { bends: [0, 1], web: 1, form, tools: [], forcePerLength: 0 }, 36, true);
    const outline = flatten(punch.profile, 1e-4);
    const under = (x: number): number => Math.min(...outline.flatMap((p, i) => {
      const q = outline[(i + 1) % outline.length]!;
      const [a, b] = p[0] < q[0] ? [p, q] : [q, p];
      return x >= a[0] && x <= b[0] && b[0] - a[0] > 1e-9 ? [a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])] : [];
    }));
    for (const degrees of [5, 20, 40, 60, 75, 85, 89]) {
      const x = (degrees * Math.PI) / 180;
      // upper face from the higher flange's line back and down, from (lineBack, 1) over the die: first a convex arc seen from above
      const radius = allowance / x - (allowance / (Math.PI / 2) - form.insideRadius);
      const face: [number, number][] = [];
      let [back, up, heading] = [bend.lineBack, 0.5, 0];
      const walk = (length: number, turn: number, middle: number): void => {
        for (let i = 0; i < 4000; i++) {
          heading += turn / 8000;
          const step = length === 0 ? (Math.abs(turn) * middle) / 4000 : length / 4000;
          back -= step * Math.cos(heading);
          up -= step * Math.sin(heading);
          heading += turn / 8000;
          face.push([back - 0.5 * Math.sin(heading), up + 0.5 * Math.cos(heading)]);
        }
      };
      walk(0, x, radius + 0.5);
      walk(bend.web, 0, 0);
      walk(0, -x, radius + 0.5);
      face.push([back - 5, up + 0.5]);
      const tip = Math.max(...face.map(([b, u]) => u - under(b)));
      expect(offsetTipAt(bend, degrees)).toBeCloseTo(tip, 2);
    }
    expect(offsetTipAt(bend, 0)).toBeCloseTo(1, 9);
    expect(offsetTipAt(bend, 90)).toBeCloseTo(1 - form.height, 9);
  });
});
