import { describe, expect, it } from 'vitest';
import { type Rigid, type Vec3, apply, compose, cross3 } from '../geometry/index.js';
import { HALF_OPENING, SHOULDER, THICKNESS, allowance, depth, stepOf, stripPart, vDie } from '../../test/proof/handTrial.js';
import { shapeOf, zonePoint } from './bendShape.js';
import { bendTravel } from './bendTravel.js';
import type { Element } from './element.js';
import { platePoses } from './fold.js';
import { movesIn, movesOut, tiltBy } from './moves.js';
import { apexAt, depthAt, gaugePose, veeOf } from './vee.js';

const RADIANS = Math.PI / 180;

const close = (a: Vec3, b: Vec3, digits = 6): void => a.forEach((v, k) => expect(v).toBeCloseTo(b[k]!, digits));

describe('folding', () => {
  it('an angle of 90 degrees by hand: the far leg stands at the arc radius 3 over the first plate', () => {
    const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction: 'A' }]);
    const pose = platePoses(sheet, [shapeOf(sheet, 0)], [90 * RADIANS], 0).get(1)!;
    // line of side 0 at y 40; centre 3 above the middle plane; side 1 starts at (43, 3) and runs up
    close(apply(pose, [0, 0, 0]), [0, 43, 3]);
    close(apply(pose, [10, 60, 0]), [10, 43, 63]);
    // its A face (z +1) looks back over the first plate
    close(apply(pose, [0, 0, 1]), [0, 42, 3]);
  });

  it('direction B folds down, and seen from plate 1 the first plate is where the inverse puts it', () => {
    const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction: 'B' }]);
    const shapes = [shapeOf(sheet, 0)];
    close(apply(platePoses(sheet, shapes, [90 * RADIANS], 0).get(1)!, [0, 60, 0]), [0, 43, -63]);
    const there = platePoses(sheet, shapes, [90 * RADIANS], 0).get(1)!;
    const back = platePoses(sheet, shapes, [90 * RADIANS], 1).get(0)!;
    close(apply(compose(there, back), [7, 8, 9]), [7, 8, 9]);
  });

  it('the zone runs from one line to the other at every angle, and flat it is a strip of its own length', () => {
    const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction: 'B' }]);
    const shape = shapeOf(sheet, 0);
    for (const degrees of [0, 0.001, 30, 90]) {
      const pose = platePoses(sheet, [shape], [degrees * RADIANS], 0).get(1)!;
      const [u, v, w] = zonePoint(shape, degrees * RADIANS, 5, 1, 0.7);
      close(apply(pose, [5, 0, 0.7]), [u, 40 + v, w]);
    }
    close(zonePoint(shape, 0, 5, 1, 0.7), [5, allowance(90), 0.7]);
  });
});

describe('in the V', () => {
  const vee = veeOf(vDie(16, 60), 60);

  it('half opening and depth follow docs/kinematics.md, written out a second time in the test data', () => {
    const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction: 'A' }]);
    expect(vee.c).toBeCloseTo(HALF_OPENING, 9);
    for (const degrees of [10, 45, 90, 92]) expect(depthAt(vee, shapeOf(sheet, 0), degrees * RADIANS)).toBeCloseTo(depth(degrees), 9);
    expect(depthAt(vee, shapeOf(sheet, 0), 1e-7)).toBeCloseTo(0, 6);
  });

  for (const direction of ['A', 'B'] as const) {
    for (const g of [0, 1] as const) {
      const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction }]);
      const bend = sheet.part.bends[0]!;
      const shape = shapeOf(sheet, 0);
      const step = stepOf(1, 'b1', direction, g, { plate: 0, x: 0, r: 0, retract: 0 });
      const poses = (x: number): readonly [Rigid, Rigid] => {
        const gauge = gaugePose(vee, bend, shape, step, x);
        return [gauge, compose(gauge, platePoses(sheet, [shape], [x], bend.sides[g].plate).get(bend.sides[1 - g]!.plate)!)];
      };

      it(`direction ${direction}, side ${g} to the gauge: right-handed, the wings mirror each other, outer faces on the shoulders`, () => {
        for (const degrees of [0, 1, 40, 90]) {
          const x = degrees * RADIANS;
          const [gauge, front] = poses(x);
          close(cross3(gauge.x, gauge.y), gauge.z);
          const far = (plate: 0 | 1, z: number): Vec3 => [20, plate === 0 ? 0 : 60, z];
          const flat = (pose: Rigid, plate: 0 | 1, v: number): Vec3 => apply(pose, [20, plate === 0 ? 40 - v : v, 0]);
          const [gp, fp] = g === 0 ? ([0, 1] as const) : ([1, 0] as const);
          for (const v of [0, 10, 40]) {
            const [p, q] = [flat(gauge, gp, v), flat(front, fp, v)];
            close([p[0], -p[1], p[2]], q);
            expect(p[1]).toBeGreaterThan(0);
          }
          // the face that touches the die is the one opposite to the bend's direction; it is tangent to the shoulder arc
          const outer = (direction === 'A' ? -1 : 1) * (THICKNESS / 2);
          const [a, b] = [apply(gauge, [20, gp === 0 ? 40 : 0, outer]), apply(gauge, far(gp, outer))];
          const arc: readonly [number, number] = [HALF_OPENING, 60 - SHOULDER];
          const [dy, dz] = [b[1] - a[1], b[2] - a[2]];
          const off = Math.abs(dy * (arc[1] - a[2]) - dz * (arc[0] - a[1])) / Math.hypot(dy, dz);
          expect(off).toBeCloseTo(SHOULDER, 6);
        }
      });

      it(`direction ${direction}, side ${g}: no point moves further than the bound says (200 intervals, seed 7)`, () => {
        const [before, load] = [0, 100 * RADIANS];
        const travel = bendTravel(vee, shape, bend, g, before, load);
        let seed = 7;
        const random = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
        for (let n = 0; n < 200; n++) {
          const x0 = random() * load;
          const x1 = Math.min(load, x0 + random() * 0.3);
          const plate = bend.sides[g].plate;
          const half = plate === 0 ? 20 : 30;
          const corner: Vec3 = [random() * 100, random() < 0.5 ? 0 : 2 * half, random() < 0.5 ? -1 : 1];
          const element = {
            wing: 'gauge', running: false, rel: { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [0, 0, 0] },
            box: () => ({ middle: [50, half, 0], half: [50, half, 1] }),
          } as unknown as Element;
          const [p, q] = [apply(poses(x0)[0], corner), apply(poses(x1)[0], corner)];
          expect(Math.hypot(q[1] - p[1], q[2] - p[2])).toBeLessThanOrEqual(travel.fromBed(element, x0, x1) + 1e-9);
          const sink = apexAt(vee, shape, x1) - apexAt(vee, shape, x0);
          expect(Math.hypot(q[1] - p[1], q[2] - p[2] - sink)).toBeLessThanOrEqual(travel.fromPunch(element, x0, x1) + 1e-9);
          // a point of the running zone, seen from the punch and from the bed
          const [f, z] = [random(), random() < 0.5 ? -1 : 1];
          const zone = { ...element, running: true } as Element;
          const at = (x: number): Vec3 => {
            const gaugeSideZero = g === 0 ? poses(x)[0] : poses(x)[1];
            const [u, v, w] = zonePoint(shape, x, 10, f, z);
            return apply(gaugeSideZero, [u, 40 + v, w]);
          };
          const [r, s] = [at(x0), at(x1)];
          expect(Math.hypot(s[1] - r[1], s[2] - r[2] - sink)).toBeLessThanOrEqual(travel.fromPunch(zone, x0, x1) + 1e-9);
          expect(Math.hypot(s[1] - r[1], s[2] - r[2])).toBeLessThanOrEqual(travel.fromBed(zone, x0, x1) + 1e-9);
        }
      });
    }
  }
});

describe('moves', () => {
  it('a tilt lifts what lies to the gauge and leaves its line where it is', () => {
    close(apply(tiltBy(90, 50), [3, 10, 50]), [3, 0, 60]);
    close(apply(tiltBy(37, 50), [3, 0, 50]), [3, 0, 50]);
  });

  it('the way in ends at the seat, moves undone in reverse; the way out starts there', () => {
    const moves = [
      { kind: 'tilt', degrees: 30 },
      { kind: 'shift', by: [0, 400, 0] },
      { kind: 'shift', by: [5, 0, -45] },
    ] as const;
    const { list, start } = movesIn(moves, 62);
    let here = start;
    list.forEach((m, i) => {
      close(apply(m.before, [1, 2, 3]), apply(here, [1, 2, 3]));
      here = m.kind === 'shift' ? compose({ x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: m.by }, here) : compose(tiltBy(m.degrees, m.pivotUp), here);
      expect(m.kind).toBe(moves[i]!.kind);
    });
    close(apply(here, [1, 2, 3]), [1, 2, 3]);
    const out = movesOut([{ kind: 'shift', by: [0, 0, 20] }, { kind: 'tilt', degrees: -45 }], 56);
    expect(out.list[1]).toMatchObject({ pivotUp: 76 });
    close(apply(out.end, [0, 0, 56]), [0, 0, 76]);
  });
});
