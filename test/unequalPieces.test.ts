import { describe, expect, it } from 'vitest';
import { type Contour, vertex } from '../src/geometry/index.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import type { Part } from '../src/sheet/index.js';
import { type Sketch, grow, partOf } from '../src/sheet/sketch.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';

// One stroke over pieces that are unlike: tabs of unequal length and width on one edge of a base, flanges that are short over a part of their line.

const shape = (...points: readonly (readonly [number, number])[]): Contour => points.map(([x, y]) => vertex(x, y));

/** A base with flanges on its front edge, each from x0 to x1 of it. */
const based = (thickness: number, [length, width]: readonly [number, number], flanges: readonly { readonly x0: number; readonly x1: number; readonly outline: Contour }[]): Part => {
  const edge = flanges.flatMap(({ x0, x1 }): (readonly [number, number])[] => [[x0, 0], [x1, 0]]).filter(([x]) => x > 0 && x < length);
  const sketch: Sketch = { plates: [{ outline: shape([0, 0], ...edge, [length, 0], [length, width], [0, width]), holes: [] }], bends: [] };
  for (const { x0, x1, outline } of flanges) grow(sketch, 0, { from: [x0, 0], to: [x1, 0] }, 90, thickness, outline);
  return partOf('unequal', thickness, sketch, 'unequal');
};
const plain = (x0: number, x1: number, height: number) => ({ x0, x1, outline: shape([0, 0], [x1 - x0, 0], [x1 - x0, height], [0, height]) });
const all = demoRack();
/** Few tools, so that little is worked out. */
const rack: Rack = { ...all, punches: all.punches.filter((p) => p.shape === 'straight'), dies: all.dies.filter((d) => [8, 10, 16, 40, 50].includes(d.v)) };
const plan = (part: Part, metal = 'dc01', machine = 'general'): Trial =>
  planTrial({ part, machine: demoFloor().find((m) => m.id === machine)!, rack, metal: metalById(metal)!, quantity: 1, limits: { seconds: 20 } });
const widths = ({ steps }: Trial): readonly number[] => steps.map((s) => rack.dies.find((d) => d.id === s.die)!.v);

// dc01, 2 mm: V 16 asks about 12 mm of flange, outside; V 10 about 8
describe('a flange that is short over a part of the stroke', () => {
  it('is the shorter of two tabs on one line: both are bent in the V that it takes alone', async () => {
    const trial = plan(based(2, [300, 100], [plain(10, 110, 50), plain(150, 250, 4)]));
    expect([trial.verdict, trial.steps.map((s) => s.bends)]).toEqual(['makes', [['b1', 'b2']]]);
    expect(widths(trial)).toEqual(widths(plan(based(2, [300, 100], [plain(150, 250, 4)]))));
    expect((await proveTrial(trial)).findings).toEqual([]);
    // and it is that flange that is measured: 4 mm of flat and the outside radius of what these tools form, within rounding of the strip
    expect(trial.steps[0]!.measure.what).toContain('flange beyond b2');
    expect(trial.steps[0]!.measure.length).toBeLessThan(9);
  });

  it('is one half of it', () => {
    const half = { x0: 0, x1: 300, outline: shape([0, 0], [300, 0], [300, 40], [150, 40], [150, 3], [0, 3]) };
    expect(widths(plan(based(2, [300, 100], [half])))[0]).toBeLessThan(10);
  });

  it('is not one with a notch and mitred ends: that stays in the V of the plain one', () => {
    const notched = { x0: 0, x1: 300, outline: shape([0, 0], [300, 0], [260, 40], [158, 40], [158, 2], [142, 2], [142, 40], [40, 40]) };
    const trial = plan(based(2, [300, 100], [notched]));
    expect([trial.verdict, widths(trial)]).toEqual(['makes', [16]]);
  });

  it('the check rejects it in a wider V than planned', async () => {
    const trial = plan(based(2, [300, 100], [plain(10, 110, 50), plain(150, 250, 4)]));
    const wide = rack.dies.find((d) => d.v === 16)!;
    const stations = trial.stations.map((st) => ({ ...st, dieTop: wide.height, stackHeight: st.stackHeight - st.dieTop + wide.height }));
    const spoilt: Trial = { ...trial, stations, dies: [{ ...wide, id: trial.dies[0]!.id, segments: trial.dies[0]!.segments }] };
    expect((await proveTrial(spoilt)).findings.join('\n')).toContain('the flange beyond b2 reaches less than');
  });
});

describe('the force of unequal pieces', () => {
  it('lies where they are heavy: step, limits, check and moments about the cylinders say the same', async () => {
    const trial = plan(based(5, [2400, 100], [plain(0, 1500, 60), plain(2380, 2400, 60)]), 's355jr', 'worn');
    expect(trial.verdict).toBe('makes');
    const step = trial.steps.find((s) => s.bends.length === 2)!;
    for (const s of trial.steps) {
      const fuller = s.forming!.limits.find((l) => l.name === 'force on the fuller cylinder')!;
      expect(Math.max(...s.cylinderForces)).toBeCloseTo(fuller.value, 3);
      expect(fuller.holds).toBe(true);
    }
    // 1500 and 20 mm, their middles 1640 apart: the resultant lies 1640 x 20 / 1520 = 21.6 from the long one's middle, which is 450 from the line's
    const { spacing } = trial.machine.cylinders;
    const [left, right] = step.cylinderForces;
    const at = ((right - left) / (left + right)) * (spacing / 2);
    const fromMiddle = [750, -750].map((half) => Math.abs(Math.abs(at - (step.place + half)) - 21.6));
    expect(Math.min(...fromMiddle)).toBeLessThan(0.5);
    expect((await proveTrial(trial)).findings).toEqual([]);
  });
});
