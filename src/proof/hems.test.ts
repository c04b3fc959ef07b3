import { beforeAll, describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { type Step, type Trial, planTrial } from '../trial/index.js';
import { proveTrial } from './index.js';

/** P14 of BENCH.md, shorter: hem 10, flange 40, web 80, flange 40, hem 10, outside lengths. */
const p14 = (): Trial => {
  const hem = { turn: 180, insideRadius: 0.1 };
  const part = profilePart({ name: 'P14', thickness: 1.5, insideRadius: 1.5, width: 120, flanges: [10, 40, 80, 40, 10], turns: [hem, 90, 90, hem] });
  if (!part.ok) throw new Error(part.failure.sentence);
  const machine = demoFloor().find((m) => m.id === 'small-fast')!;
  return planTrial({ part: part.value, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 50 });
};

describe('two closed hems and two flanges (P14)', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = p14();
  }, 60_000);
  const findings = async (steps: readonly Step[], only: readonly number[]): Promise<string> =>
    (await proveTrial({ ...trial, steps: steps.map((s, i) => ({ ...s, number: i + 1 })) }, { steps: only })).findings.join('\n');
  const first = (kind: Step['kind']): number => trial.steps.findIndex((s) => s.kind === kind);
  const with1 = (change: (close: Step) => Partial<Step>): readonly Step[] => {
    const at = first('hem close');
    return trial.steps.map((s, i) => (i === at ? { ...s, ...change(s) } : s));
  };

  it('is made in six steps, each hem pre-bent before it is closed, and proven', async () => {
    expect(trial.verdict).toBe('makes');
    expect(trial.steps).toHaveLength(6);
    for (const id of ['b1', 'b4']) {
      const kinds = trial.steps.filter((s) => s.bends.includes(id)).map((s) => s.kind);
      expect(kinds).toEqual(['V bend', 'hem close']);
    }
    const proof = await proveTrial(trial);
    expect(proof.findings).toEqual([]);
    expect(proof.passed).toBe(true);
  }, 60_000);

  it('ends two thicknesses and the gap over the anvil, the flat length by the hem rule, as long as drawn', () => {
    const close = trial.steps[first('hem close')]!;
    // 2 x 1.5 + 2 x 0.1 = 3.2 over the anvil of 90; outside lengths less 0.43 t: 2 (0.1 + 1.5) - 0.645 = 2.555
    expect(close.ramPosition).toBeCloseTo(93.2, 9);
    expect(close.allowance).toBeCloseTo(2.555, 9);
    expect(close.measure.length).toBeCloseTo(10, 9);
    // DC01 typical tensile strength, times 4 x 1.33 t^2 / 8 t
    expect(close.forcePerLength).toBeCloseTo((4 * 1.33 * metalById('dc01')!.tensile.typical * 1.5) / 8, 6);
  });

  it('a later stop meets the fold', () => {
    const flanges = trial.steps.filter((s) => s.bends.some((b) => b === 'b2' || b === 'b3'));
    expect(flanges.map((s) => s.stop.edge)).toEqual(expect.arrayContaining([expect.stringMatching(/^fold of hem b[14]$/)]));
  });

  it('closed before its pre-bend: rejected', async () => {
    const [a, b] = [first('V bend'), first('hem close')];
    const order = [...trial.steps];
    [order[a], order[b]] = [order[b]!, order[a]!];
    const found = await findings(order, []);
    expect(found).toContain('is closed from 0 degrees of bend angle; its pre-bend is');
  });

  it('X written half a millimetre behind the fold: rejected', async () => {
    const moved = with1((s) => ({ stop: { ...s.stop, x: s.stop.x + 0.5, axisX: s.stop.axisX + 0.5 } }));
    expect(await findings(moved, [first('hem close') + 1])).toMatch(/the stop is written at X [\d.]+ mm; at the finger at -?[\d.]+ mm the metal ends at/);
  });

  it('a hem flange left in the die of its pre-bend: the way out through tool metal is rejected', async () => {
    const at = first('V bend');
    const dragged = trial.steps.map((s, i) => (i === at ? { ...s, wayOut: [{ kind: 'shift' as const, by: [0, -3000, 0] as const }] } : s));
    expect(await findings(dragged, [at + 1])).toMatch(/way out.*(runs into|comes within).*(die|punch)/);
  });

  it('the part 30 mm too far back: the fold stands in the fingers', async () => {
    const at = first('hem close');
    expect(await findings(with1((s) => ({ lineBack: s.lineBack! + 30 })), [at + 1])).toMatch(/finger/);
  });

  it('a bend that is no hem is not closed flat', async () => {
    const at = first('hem close');
    const steps = trial.steps.map((s, i) => (i === at ? { ...s, bends: ['b2'] } : s));
    expect(await findings(steps, [])).toContain('b2 is no hem');
  });
});
