import { describe, expect, it } from 'vitest';
import { angleTrial, channelTrial, depth, loadOf, stepOf, stripPart, trialOf, allowance, zedTrial } from '../../test/proof/handTrial.js';
import { proveTrial } from './index.js';

const RADIANS = Math.PI / 180;

describe('trials that hold', () => {
  it('an angle: nothing that shall not touch comes near', async () => {
    const proof = await proveTrial(angleTrial());
    expect(proof.findings).toEqual([]);
    expect(proof).toMatchObject({ checked: true, passed: true });
    expect(proof.perStep.map((s) => s.number)).toEqual([1]);
  });

  it('a channel: the first leg clears the upright punch by what trigonometry says', async () => {
    // Gauge moved back so that only punch and leg come near. From the running arc's centre the wing's inner face lies the
    // radius under load below (a / x - 0.8 = 1.969 at 91 degrees), the leg's inner top corner web + 2 along the wing and
    // 2 + 30 up from that face; with b = 45.5 degrees: back = 52 cos b - (32 - 1.969) sin b, the punch 10 to a side.
    const proof = await proveTrial(channelTrial({}, { stop: { ...channelTrial().steps[1]!.stop, retract: 40 } }));
    expect(proof.findings).toEqual([]);
    const b = 45.5 * RADIANS;
    const byHand = 52 * Math.cos(b) - (32 - (allowance(90) / (91 * RADIANS) - 0.8)) * Math.sin(b) - 10;
    expect(Math.abs(proof.smallestClearance! - byHand)).toBeLessThan(0.001);
    expect(proof.where).toBe('step 2, bend at 91.0 degrees of bend angle: the flange beyond b1 and the punch of station S1');
    expect(proof.perStep[1]).toMatchObject({ number: 2, phase: 'bend', smallestClearance: proof.smallestClearance });
    expect(proof.perStep[0]!.smallestClearance).toBeGreaterThan(proof.smallestClearance!);
  });

  it('a Z: the hanging leg is lifted over the die by 3 mm', async () => {
    // leg: arc radius 3 below the web's middle plane at up 61, then 40 long: its end at up 18, lifted by 45 to 63; die top 60
    const proof = await proveTrial(zedTrial());
    expect(proof.findings).toEqual([]);
    expect(proof.smallestClearance).toBeCloseTo(3, 3);
    expect(proof.where).toContain('way in, move 1: the flange beyond b1 and the die of station S1');
  });

  it('a leg bent in two strokes: 60, then 90 degrees of bend angle', async () => {
    const twice = angleTrial();
    const first = { ...twice.steps[0]!, bendAngle: 60, includedAngle: 120, bendAngleUnderLoad: 61 };
    // the second stroke is set by eye: the part stands in the V on its two wings, lowered into it from above
    const second = {
      ...twice.steps[0]!,
      number: 2,
      stop: { ...twice.steps[0]!.stop, kind: 'none' as const, z: [] },
      wayIn: [{ kind: 'shift' as const, by: [0, 400, 0] as const }, { kind: 'shift' as const, by: [0, 0, -15] as const }],
    };
    const proof = await proveTrial({ ...twice, steps: [first, second] });
    expect(proof.findings).toEqual([]);
    const alone = await proveTrial({ ...twice, steps: [first] });
    expect(alone.findings).toEqual(['Bend b1 ends at 60 degrees of bend angle; the part asks 90.']);
  });

  it('ends of a bend line may stand 4 mm out of the tool, not 6', async () => {
    const wide = (length: number) =>
      trialOf(stripPart(length, [40, 60], [{ degrees: 90, direction: 'A' }]), [
        stepOf(1, 'b1', 'A', 1, { plate: 1, x: allowance(90) / 2 + 60, r: 60, retract: 0 }, { place: -length / 2, ...loadOf(length) }),
      ]);
    expect((await proveTrial(wide(108))).findings).toEqual([]);
    expect((await proveTrial(wide(112))).findings.join('\n')).toContain('the punch of station S1 leaves 6.00 mm at an end of bend b1 uncovered');
  });
});

describe('how it is asked', () => {
  it('only some steps; the others are taken as done', async () => {
    const proof = await proveTrial(zedTrial(), { steps: [2] });
    expect(proof.perStep.map((s) => s.number)).toEqual([2]);
    expect(proof.passed).toBe(true);
  });

  it('progress rises to 1 and an aborted signal stops it', async () => {
    const shares: number[] = [];
    await proveTrial(angleTrial(), { onProgress: (share) => void shares.push(share) });
    expect(shares[shares.length - 1]).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    const control = new AbortController();
    const stopped = proveTrial(channelTrial(), { signal: control.signal, onProgress: () => control.abort(new Error('enough')) });
    await expect(stopped).rejects.toThrow('enough');
  });

  it('the same trial twice gives the same answer', async () => {
    expect(await proveTrial(zedTrial())).toEqual(await proveTrial(zedTrial()));
  });

  it('between two looks at a pair no point moved further than 5 mm', async () => {
    const { largestMotion, perStep } = await proveTrial(channelTrial());
    expect(largestMotion).toBe(Math.max(...perStep.map((s) => s.largestMotion)));
    expect(largestMotion).toBeLessThanOrEqual(5);
    expect(largestMotion).toBeGreaterThan(0);
  });
});

describe('numbers used above', () => {
  it('depth at 90 degrees in the V 16 of the tests, by the sharp V formula for a thick arc', () => {
    // c = 8 + tan 23.75 deg = 8.44; (Ri + t + rd)(sec 45 - 1) = 5 x 0.41421 = 2.0711
    expect(depth(90)).toBeCloseTo(8.44001 - 2.07107, 3);
  });
});
