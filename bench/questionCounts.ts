import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import type { Part } from '../src/sheet/index.js';
import { planTrial } from '../src/trial/index.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { benchParts } from './parts.js';

/** s of processor time for one plan. */
const LIMIT = 10;

/** Bends between each two plates, by walking the tree from each plate. */
export const distances = (part: Part): readonly (readonly number[])[] =>
  part.plates.map((_, from) => {
    const far = part.plates.map(() => Infinity);
    far[from] = 0;
    const queue = [from];
    for (let here = queue.shift(); here !== undefined; here = queue.shift()) {
      for (const { sides: [one, two] } of part.bends) {
        const other = one.plate === here ? two.plate : two.plate === here ? one.plate : null;
        if (other === null || far[other]! < Infinity) continue;
        far[other] = far[here]! + 1;
        queue.push(other);
      }
    }
    return far;
  });

const wiener = (part: Part): number => distances(part).flat().reduce((sum, d) => sum + d, 0) / 2;

/** The floor of any checked plan: as many questions of plate on plate as the Wiener index, and n (n + 1) of plates on tools. */
export const questionFloor = (part: Part): number => wiener(part) + part.bends.length * (part.bends.length + 1);

/** Asking every fold by itself: n 2^(n - 1) folds before a stroke, each with n + 1 plates. */
export const stateByState = ({ bends: { length: n } }: Part): number => n * 2 ** (n - 1) * (n + 1);

/**
 * Clearance questions of a plan beside the floor of any checked plan, beside what the path states alone tell apart, and
 * beside asking every fold by itself (n 2^(n-1) folds before a stroke, each with n + 1 plates).
 */
export const questionCounts = (print: (line: string) => void): void => {
  const machine = demoFloor().find((m) => m.id === 'general');
  const metal = metalById('dc01');
  if (!machine || !metal) throw new Error('the demo data lack the general machine or dc01');
  for (const id of ['P3', 'P5', 'P7', 'P9', 'P11']) {
    const { part } = benchParts().find((b) => b.id === id)!;
    const n = part.bends.length;
    const far = distances(part).flatMap((row, i) => row.filter((_, k) => k !== i));
    const paths = far.reduce((sum, d) => sum + 2 ** (d - 1), 0);
    const { counts, verdict } = planTrial({ part, machine, rack: demoRack(), metal, quantity: 50, limits: { seconds: LIMIT } }, { now: cpuMilliseconds });
    print(`questions, ${id} (${n} bends): floor ${wiener(part)} plate on plate (Wiener index) + ${n * (n + 1)} on tools; told apart by path states ${paths} for each kind of tool question; ` +
      `state by state ${stateByState(part)}; this plan (${verdict}, all pairs, seats, ways and stops) asked ${counts['clearance questions asked']}, answered anew ${counts['clearance questions answered anew']}`);
  }
};
