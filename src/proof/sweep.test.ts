import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Vec3, IDENTITY, shift, signedArea } from '../geometry/index.js';
import { MACHINE, STATION, angleTrial, straightPunch, vDie } from '../../test/proof/handTrial.js';
import { type Body, sweptSolid } from './body.js';
import { type Kernel, Pool, boxSolid, distance, loadKernel } from './engine.js';
import { fingerBodies, pressBodies } from './pressBodies.js';

let kernel: Kernel;
const pool = new Pool();
beforeAll(async () => {
  kernel = await loadKernel();
});
afterAll(() => pool.freeAll());

const named = (bodies: readonly Body[], name: string): Body => bodies.find((b) => b.name === name)!;

describe('bodies of the press', () => {
  it('stand where the record says: punch under its seat, die on its top, frames behind the throat, floor below', () => {
    const bodies = pressBodies(kernel, pool, angleTrial());
    const box = (name: string): readonly [Vec3, Vec3] => {
      const { min, max } = named(bodies, name).solid.boundingBox();
      return [min, max];
    };
    expect(box('the punch of station S1')).toEqual([[-50, -10, -100], [50, 10, 0]]);
    expect(box('the die of station S1')).toEqual([[-50, -15, 0], [50, 15, 60]]);
    expect(box('the right side frame')[0].slice(0, 2)).toEqual([450, 200]);
    expect(box('the floor')[1][2]).toBe(-900);
    expect(box('the upper beam')).toEqual([[-500, -30, 50], [500, 40, 500]]);
    const area = signedArea(straightPunch(10).profile);
    expect(named(bodies, 'the punch of station S1').solid.volume()).toBeCloseTo(area * 100, 3);
    const die = signedArea(vDie(16, 60).profile) * 100;
    // two shoulder arcs, the chords inside
    expect(named(bodies, 'the die of station S1').solid.volume()).toBeGreaterThan(die - 2 * 2 * 0.02 * 100);
    expect(named(bodies, 'the die of station S1').solid.volume()).toBeLessThanOrEqual(die + 1e-6);
  });

  it('ear segments: the foot lies at the outer end below its height, the body leaves its reach out', () => {
    const station = { ...STATION, punchSegments: [{ length: 60, from: -60, ear: 'left' as const }, { length: 60, from: 0, ear: 'right' as const }] };
    const punch = named(pressBodies(kernel, pool, angleTrial({ stations: [station] })), 'the punch of station S1');
    const flank = 10 / Math.tan((42.5 * Math.PI) / 180);
    // wedge of width 20 over the flank's height, then 20 wide: area below 25, and of all 100
    const [foot, all] = [10 * flank + 20 * (25 - flank), 10 * flank + 20 * (100 - flank)];
    expect(punch.solid.volume()).toBeCloseTo(2 * (30 * foot + 30 * all), 2);
    const above = boxSolid(kernel, [-60, -20, -70], [-30.01, 20, 0]);
    expect(distance(above, IDENTITY, punch.solid)).toBeGreaterThan(0);
    above.delete();
  });

  it('reversed, front and back are exchanged', () => {
    const lopsided = { ...straightPunch(10), profile: straightPunch(10).profile.map((v) => (v.x > 0 && v.y > 50 ? { ...v, x: 25 } : v)) };
    const box = (facing: 'as drawn' | 'reversed') =>
      named(pressBodies(kernel, pool, angleTrial({ punches: [lopsided], stations: [{ ...STATION, punchFacing: facing }] })), 'the punch of station S1').solid.boundingBox();
    expect([box('as drawn').min[1], box('as drawn').max[1]]).toEqual([-10, 25]);
    expect([box('reversed').min[1], box('reversed').max[1]]).toEqual([-25, 10]);
  });
});

describe('swept bodies', () => {
  // a naive twin: many places along the way; the swept body is as near as the nearest of them, and no nearer
  for (const by of [[0, 60, 0], [0, 0, -35], [0, -20, 30], [80, 0, 0]] as const) {
    it(`a V die swept by ${by.join(', ')} is as near to a box as the nearest of 400 places`, () => {
      const die = named(pressBodies(kernel, pool, angleTrial()), 'the die of station S1');
      const probe = boxSolid(kernel, [55, 20, 62], [58, 24, 66]);
      const swept = sweptSolid(kernel, die, by);
      let nearest = Infinity;
      for (let k = 0; k <= 400; k++) {
        const s = k / 400;
        nearest = Math.min(nearest, distance(probe, shift([-by[0] * s, -by[1] * s, -by[2] * s]), die.solid));
      }
      const found = distance(probe, IDENTITY, swept);
      expect(found).toBeLessThanOrEqual(nearest + 1e-9);
      // 400 places: none further than half a spacing from the best
      expect(found).toBeGreaterThan(nearest - Math.hypot(...by) / 800 - 1e-9);
      probe.delete();
      swept.delete();
    });
  }

  it('sweeping leaves no hollow: a ring of the path is filled by what passes through it', () => {
    const [finger] = fingerBodies(kernel, pool, MACHINE, [0]);
    const swept = sweptSolid(kernel, finger!, [0, 100, 40]);
    // a 60 x 10 rectangle swept by (100, 40): its own area and |w x by_up| + |h x by_back|
    expect(swept.volume() / 20).toBeCloseTo(600 + 60 * 40 + 10 * 100, 3);
    swept.delete();
  });
});
