import { type AirBendSetup, airBendAtDepth } from '../src/forming/index.js';
import { metalById } from '../src/metal/index.js';

/** A finite-element run of CHECKS 12 that reached its end. mm, degrees included, N/mm. */
export interface FeRun {
  readonly name: string;
  readonly v: number;
  readonly tip: number;
  readonly friction: number;
  readonly depth: number;
  readonly loaded: number;
  readonly released: number;
  /** 'floor': output came only every 20 increments (CHECKS 12, note 3), so the peak may lie higher. */
  readonly force: number;
  readonly kind: 'peak' | 'floor';
  readonly radius: number;
}

/** CHECKS 12 and its table of runs. f70, past the die's own angle, is asked for beside them. */
export const feRuns: readonly FeRun[] = ([
  ['d30', 16, 1, 0.1, 3, 134.6, 136.37, 128.9, 'peak', 4.56],
  ['d45', 16, 1, 0.1, 4.5, 113.04, 114.94, 130, 'peak', 2.94],
  ['e55', 16, 1, 0.1, 5.5, 100.1, 102.09, 129.2, 'floor', 2.39],
  ['h63', 16, 1, 0.1, 6.3, 90.63, 92.72, 130.1, 'peak', 2.13],
  ['d63mu0', 16, 1, 0, 6.3, 90.53, 92.61, 122.8, 'floor', 2.15],
  ['e63rp2', 16, 2, 0.1, 6.3, 88.38, 90.53, 129.3, 'floor', 2.55],
  ['e48V12', 12, 1, 0.1, 4.8, 86.57, 88.19, 185.6, 'floor', 1.49],
] as const).map(([name, v, tip, friction, depth, loaded, released, force, kind, radius]) => ({ name, v, tip, friction, depth, loaded, released, force, kind, radius }));

/** Sheet and tools of a run: t 2, die 84 degrees, shoulder 2, Swift K 620 n 0.18 e0 0.0108. */
export const feSetup = ({ v, tip, friction }: Pick<FeRun, 'v' | 'tip' | 'friction'>): AirBendSetup => ({
  metal: {
    ...metalById('dc01')!, id: 'fe', name: 'fe', curve: { kind: 'swift', k: 620, n: 0.18, e0: 0.0108 }, modulus: 210e3, poisson: 0.3, curveSource: { mark: 'measured', source: 'given' },
  },
  thickness: 2, v, vConvention: 'sharp', dieAngle: 84, shoulderRadius: 2, tipRadius: tip, friction,
});

/** The aim: degrees, share, share. What it must never be worse than stands beside it in the table's head. */
export const FE_AIM = { angle: 0.7, springback: 0.04, force: 0.015 } as const;

const percent = (ratio: number): string => `${ratio >= 1 ? '+' : ''}${((ratio - 1) * 100).toFixed(1)} %`;

/** The table of finite elements beside the strip, a line a run, with whether the aim is kept. */
export const feTable = (print: (line: string) => void): void => {
  print('finite elements (CHECKS 12) beside the strip: aim 0.7 degree, springback 4 %, peak 1.5 %; never worse than 1.5 degrees, 8 %, 4 %');
  for (const run of feRuns) {
    const result = airBendAtDepth({ ...feSetup(run), depth: run.depth });
    if (!result.ok) {
      print(`  ${run.name}: ${result.reason.sentence}`);
      continue;
    }
    const bend = result.value;
    const [peak, springback] = [bend.peakForcePerLength / run.force, bend.springback / (run.released - run.loaded)];
    const kept = Math.abs(bend.includedAngleUnderLoad - run.loaded) < FE_AIM.angle && Math.abs(bend.includedAngleReleased - run.released) < FE_AIM.angle
      && Math.abs(springback - 1) < FE_AIM.springback && peak > 1 - FE_AIM.force && (run.kind === 'floor' || peak < 1 + FE_AIM.force);
    print(
      `  ${run.name.padEnd(7)} included under load ${bend.includedAngleUnderLoad.toFixed(2)} (${run.loaded.toFixed(2)}), released ${bend.includedAngleReleased.toFixed(2)} (${run.released.toFixed(2)}), ` +
        `springback ${bend.springback.toFixed(2)} (${(run.released - run.loaded).toFixed(2)}, ${percent(springback)}), peak ${bend.peakForcePerLength.toFixed(1)} N/mm (${run.kind === 'floor' ? 'at least ' : ''}${run.force.toFixed(1)}, ${percent(peak)}), ` +
        `radius ${bend.insideRadius.toFixed(2)} (${run.radius.toFixed(2)}, ${percent(bend.insideRadius / run.radius)}): aim ${kept ? 'kept' : 'missed'}`,
    );
  }
  const past = airBendAtDepth({ ...feSetup({ v: 16, tip: 1, friction: 0.1 }), depth: 7 });
  print(`  f70     ${past.ok ? 'computed, though it is past the die: missed' : `${past.reason.code}: ${past.reason.sentence}`}`);
};
