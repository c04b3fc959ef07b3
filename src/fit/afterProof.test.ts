import { describe, expect, it } from 'vitest';
import type { ProofSummary, Trial } from '../trial/index.js';
import { afterProof, needsProof, unproved } from './afterProof.js';

const trial = (verdict: Trial['verdict']): Trial => {
  const bare: Pick<Trial, 'verdict' | 'reasons' | 'proven' | 'remedies' | 'steps'> = { verdict, reasons: [], remedies: [], proven: true, steps: [{ number: 1, clearance: 7 } as Trial['steps'][number]] };
  return bare as Trial;
};
const proof = (passed: boolean, ...findings: string[]): ProofSummary => ({
  checked: true, passed, smallestClearance: 2, largestMotion: 1, findings,
});

describe('after the proof', () => {
  it('a confirmed plan keeps its verdict and carries the proof', () => {
    const after = afterProof(trial('makes'), proof(true));
    expect(after.verdict).toBe('makes');
    expect(after.proven).toBe(true);
    expect(after.proof.smallestClearance).toBe(2);
    expect(after.reasons).toEqual([]);
  });

  it('a step says the smaller of what planner and proof saw', () => {
    const seen = (smallestClearance: number): number =>
      afterProof(trial('makes'), { ...proof(true), perStep: [{ number: 1, smallestClearance, where: 'somewhere', phase: 'bend', largestMotion: 1 }] }).steps[0]!.clearance;
    expect([seen(3), seen(12)]).toEqual([3, 7]);
  });

  it('a rejected plan is not decided, with the finding first', () => {
    const after = afterProof(trial('makes with remedy'), proof(false, 'Flange 3 cuts the punch by 2 mm.'));
    expect(after.verdict).toBe('not decided');
    expect(after.proven).toBe(false);
    expect(after.proof.passed).toBe(false);
    expect(after.reasons[0]?.sentence).toContain('Flange 3 cuts the punch by 2 mm.');
  });

  it('a proof that did not check confirms nothing, even if it says passed', () => {
    const after = afterProof(trial('makes'), { ...proof(true), checked: false });
    expect(after.verdict).toBe('not decided');
  });
});

describe('without a proof', () => {
  it('only a plan needs one', () => {
    expect(needsProof(trial('makes'))).toBe(true);
    expect(needsProof(trial('makes with remedy'))).toBe(true);
    expect(needsProof(trial('does not make'))).toBe(false);
    expect(needsProof(trial('not decided'))).toBe(false);
  });

  it('a plan is withheld and a no stays a no', () => {
    expect(unproved(trial('makes'), 'Stopped.').verdict).toBe('not decided');
    expect(unproved(trial('makes'), 'Stopped.').reasons[0]?.sentence).toBe('Stopped.');
    expect(unproved(trial('does not make'), 'Stopped.')).toEqual(trial('does not make'));
  });
});
