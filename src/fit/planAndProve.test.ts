import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { planAndProve } from './planAndProve.js';

const angle = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
if (!angle.ok) throw new Error(angle.failure.sentence);
const input: TrialInput = {
  part: angle.value, machine: demoFloor()[0]!, rack: demoRack(), metal: metalById('dc01')!, quantity: 10,
};

describe('plan and prove', () => {
  it('an angle of one bend is made, in one step, and the independent check says so', async () => {
    const heard: string[] = [];
    const trial = await planAndProve(input, {
      now: () => performance.now(),
      onPlanned: (planned) => heard.push(`planned, checked: ${planned.proof.checked}`),
    });
    expect(trial.reasons).toEqual([]);
    expect(trial.verdict).toBe('makes');
    expect(trial.steps).toHaveLength(1);
    expect(trial.proof.checked).toBe(true);
    expect(trial.proof.passed).toBe(true);
    expect(heard).toEqual(['planned, checked: false']);
  });

  it('a plan stopped before its proof is not shown as good', async () => {
    let stop = false;
    const trial = await planAndProve(input, {
      cancelled: () => stop,
      onPlanned: () => {
        stop = true;
      },
    });
    expect(trial.steps).toHaveLength(1);
    expect(trial.verdict).toBe('not decided');
    expect(trial.proof.checked).toBe(false);
  });

  it('a plan that the check does not confirm is handed on with the question that it answers', async () => {
    const told: { readonly asked: TrialInput; readonly planned: Trial; readonly passed: boolean }[] = [];
    const trial = await planAndProve(input, {
      // a part moved off its station along the bed
      onPlanned: ({ steps: [step] }) => void Object.assign(step!, { place: step!.place + 500 }),
      onRejected: (asked, planned, { passed }) => void told.push({ asked, planned, passed }),
    });
    expect([trial.verdict, told.length, told[0]!.planned.verdict, told[0]!.passed]).toEqual(['not decided', 1, 'makes', false]);
    expect(told[0]!.asked).toBe(input);
  });
});
