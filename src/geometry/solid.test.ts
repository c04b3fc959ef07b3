import { describe, expect, it } from 'vitest';
import { between, inside, randomConvex } from '../../test/geometry/naive.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { offsetPlanes } from './convex.js';
import { type Rigid, apply } from './rigid.js';
import { extentWithin, moved, prism } from './solid.js';
import { type Vec2, type Vec3, cross3, dot3, unit3 } from './vec.js';

const randomRigid = (random: () => number): Rigid => {
  const any = (): Vec3 => [between(random, -1, 1), between(random, -1, 1), between(random, -1, 1)];
  const x = unit3(any());
  const z = unit3(cross3(x, any()));
  return { x, y: cross3(z, x), z, o: [between(random, -10, 10), between(random, -10, 10), between(random, -10, 10)] };
};

interface HalfSpace {
  readonly n: Vec3;
  readonly d: number;
}

/** Where three planes meet, by Cramer's rule; null when they do not in one point. */
const meet = ([p, q, r]: readonly [HalfSpace, HalfSpace, HalfSpace]): Vec3 | null => {
  const det = dot3(p.n, cross3(q.n, r.n));
  if (Math.abs(det) < 1e-6) return null;
  const [a, b, c] = [cross3(q.n, r.n), cross3(r.n, p.n), cross3(p.n, q.n)];
  return [0, 1, 2].map((k) => (p.d * a[k]! + q.d * b[k]! + r.d * c[k]!) / det) as unknown as Vec3;
};

/** The extent by trying every corner that any three of all the planes can make. */
const byCorners = (all: readonly HalfSpace[]): readonly [number, number] | null => {
  const xs: number[] = [];
  for (let i = 0; i < all.length; i++) {
    for (let j = i + 1; j < all.length; j++) {
      for (let k = j + 1; k < all.length; k++) {
        const at = meet([all[i]!, all[j]!, all[k]!]);
        if (at && all.every(({ n, d }) => dot3(n, at) <= d + 1e-7)) xs.push(at[0]);
      }
    }
  }
  return xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : null;
};

const flat = (planes: readonly { readonly n: readonly [number, number]; readonly d: number }[]): number[] => planes.flatMap(({ n, d }) => [n[0], n[1], d]);

describe('extentWithin', () => {
  const bar = prism([[0, 0], [30, 0], [30, 10], [0, 10]], -1, 1);

  it('by hand: a triangle cut by a strip', () => {
    // the sloping side runs from (40, 0) to (0, 20): at y 5 it stands at 30, at y 10 at 20
    const wedge = prism([[0, 0], [40, 0], [0, 20]], -1, 1);
    const strip = [{ n: [1, 0] as const, d: 10 }, { n: [-1, 0] as const, d: -5 }];
    expect(extentWithin(wedge, flat(strip))).toEqual([0, 30]);
    expect(extentWithin(wedge, flat([...strip, { n: [0, 1], d: -2 }]))).toBeNull();
    expect(extentWithin(wedge, flat([{ n: [-1, 0], d: -20 }]))).toEqual([0, 0]);
  });

  it('by hand: no plane leaves all of it, and a region in the middle of the bar too', () => {
    expect(extentWithin(bar, flat([]))).toEqual([0, 30]);
    const inMiddle = [{ n: [1, 0] as const, d: 6 }, { n: [-1, 0] as const, d: -4 }, { n: [0, 1] as const, d: 0.5 }, { n: [0, -1] as const, d: 0.5 }];
    expect(extentWithin(bar, flat(inMiddle))).toEqual([0, 30]);
  });

  it('random prisms and regions: every sampled point inside, ends at corners of the cut body (seed 61)', () => {
    const random = mulberry32(61);
    let [held, none] = [0, 0];
    for (let round = 0; round < 80; round++) {
      const base = randomConvex(random, 15);
      const height = between(random, 0.5, 12);
      const pose = randomRigid(random);
      const region = randomConvex(random, 8, [between(random, -20, 20), between(random, -20, 20)]);
      const planes = offsetPlanes(region, 0.5);
      const found = extentWithin(moved(prism(base, -height / 2, height / 2), pose), flat(planes));

      const faces: HalfSpace[] = base.map((p, i) => {
        const q = base[(i + 1) % base.length]!;
        const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
        const own: Vec3 = [(q[1] - p[1]) / size, (p[0] - q[0]) / size, 0];
        return { n: own, d: own[0] * p[0] + own[1] * p[1] };
      });
      faces.push({ n: [0, 0, 1], d: height / 2 }, { n: [0, 0, -1], d: height / 2 });
      const placed = faces.map(({ n, d }): HalfSpace => {
        const there: Vec3 = [0, 1, 2].map((k) => pose.x[k]! * n[0] + pose.y[k]! * n[1] + pose.z[k]! * n[2]) as unknown as Vec3;
        return { n: there, d: d + dot3(there, pose.o) };
      });
      const twin = byCorners([...placed, ...planes.map(({ n, d }): HalfSpace => ({ n: [0, n[0], n[1]], d }))]);
      expect(found === null, `round ${round}`).toBe(twin === null);

      let [low, high] = [Infinity, -Infinity];
      for (let k = 0; k < 2000; k++) {
        const p: Vec2 = [between(random, -15, 15), between(random, -15, 15)];
        if (!inside(p, base)) continue;
        const at = apply(pose, [p[0], p[1], between(random, -height / 2, height / 2)]);
        if (!planes.every(({ n, d }) => n[0] * at[1] + n[1] * at[2] <= d)) continue;
        [low, high] = [Math.min(low, at[0]), Math.max(high, at[0])];
      }
      if (!found || !twin) {
        none++;
        expect(low, `round ${round}`).toBe(Infinity);
        continue;
      }
      held++;
      expect(found[0]).toBeCloseTo(twin[0], 5);
      expect(found[1]).toBeCloseTo(twin[1], 5);
      expect(low).toBeGreaterThanOrEqual(found[0] - 1e-9);
      expect(high).toBeLessThanOrEqual(found[1] + 1e-9);
    }
    expect(Math.min(held, none)).toBeGreaterThan(15);
  });
});
