import type { Vec3 } from '../geometry/index.js';
import { type Body, sweptSolid } from './body.js';
import { type Kernel, type Manifold, distance, sharedBox } from './engine.js';
import { shift } from '../geometry/index.js';
import type { Phase, PhaseName } from './phase.js';
import { type StepLog, find, gapSentence, noteGap, sizes, tooNear } from './stepLog.js';
import { NEAR, ROUNDING } from './tolerances.js';

const range = (points: readonly Vec3[], k: 0 | 1 | 2): readonly [number, number] => {
  const values = points.map((p) => p[k]);
  return [Math.min(...values), Math.max(...values)];
};

/** Upright boxes are sure of this distance while `b` is shifted by `by`. mm */
const apart = (a: Body, atA: Vec3, b: Body, atB: Vec3, by: Vec3): number => {
  let sum = 0;
  for (const k of [0, 1, 2] as const) {
    const [a0, a1] = range(a.points, k);
    const [b0, b1] = range(b.points, k);
    const low = b0 + atB[k] + Math.min(0, by[k]) - (a1 + atA[k]);
    const high = a0 + atA[k] - (b1 + atB[k] + Math.max(0, by[k]));
    sum += Math.max(low, high, 0) ** 2;
  }
  return Math.sqrt(sum);
};

const look = (kernel: Kernel, a: Body, atA: Vec3, b: Body, atB: Vec3, by: Vec3): { gap: number; shared: ReturnType<typeof sharedBox> } => {
  const swept: Manifold = sweptSolid(kernel, b, by);
  const from: Vec3 = [atA[0] - atB[0], atA[1] - atB[1], atA[2] - atB[2]];
  const gap = distance(a.solid, shift(from), swept);
  const placed = gap === 0 ? a.solid.translate(from) : null;
  const shared = placed === null ? null : sharedBox(placed, swept);
  placed?.delete();
  swept.delete();
  return { gap, shared };
};

/**
 * The gauge against ram and bed. What comes down keeps the allowance from the fingers and their beam while they stand
 * (close) and after they have moved back (bend); on the bed's side fingers may rest on a die, but not in it.
 */
export const checkGauge = (kernel: Kernel, phases: readonly Phase[], bodies: readonly Body[], log: StepLog): void => {
  const phase = (name: PhaseName): Phase | undefined => phases.find((p) => p.name === name);
  const gauge = bodies.filter((b) => b.carrier === 'gauge');
  const [ram, bed] = [bodies.filter((b) => b.carrier === 'ram'), bodies.filter((b) => b.carrier === 'bed' && !/frame$|floor$/.test(b.name))];
  const [close, retract, bend] = [phase('close')!, phase('retract'), phase('bend')!];
  const ramPasses: readonly (readonly [PhaseName, Phase, Vec3])[] = [
    ['close', close, [0, 0, bend.offset('ram', 0)[2] - close.offset('ram', 0)[2]]],
    ['bend', bend, [0, 0, bend.offset('ram', 1)[2] - bend.offset('ram', 0)[2]]],
  ];
  for (const g of gauge) {
    for (const r of ram) {
      for (const [name, p, by] of ramPasses) {
        const [atG, atR] = [p.offset('gauge', 0), p.offset('ram', 0)];
        const boxes = apart(g, atG, r, atR, by);
        if (boxes >= NEAR && boxes >= log.smallest) continue;
        const { gap, shared } = look(kernel, g, atG, r, atR, by);
        noteGap(log, name, '', r.name, g.name, gap);
        if (tooNear(gap)) find(log, name, '', gapSentence(r.name, g.name, gap, shared));
      }
      if (retract === undefined) continue;
      const by: Vec3 = [0, bend.offset('gauge', 0)[1] - retract.offset('gauge', 0)[1], 0];
      const [atG, atR] = [retract.offset('gauge', 0), retract.offset('ram', 0)];
      const boxes = apart(r, atR, g, atG, by);
      if (boxes >= NEAR && boxes >= log.smallest) continue;
      const { gap, shared } = look(kernel, r, atR, g, atG, by);
      noteGap(log, 'retract', '', g.name, r.name, gap);
      if (tooNear(gap)) find(log, 'retract', '', gapSentence(g.name, r.name, gap, shared));
    }
    for (const b of bed) {
      const atG = close.offset('gauge', 0);
      const by: Vec3 = [0, bend.offset('gauge', 0)[1] - atG[1], 0];
      if (apart(b, [0, 0, 0], g, atG, by) > 0) continue;
      const { shared } = look(kernel, b, [0, 0, 0], g, atG, by);
      if (shared !== null && shared[0] > ROUNDING) {
        find(log, 'close', '', `${g.name} stands in ${b.name}; they share a space of ${sizes(shared)}.`);
      }
    }
  }
};
