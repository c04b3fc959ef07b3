import { describe, expect, it } from 'vitest';
import { randomTree } from '../../bench/random.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type Rigid, type Vec3, apply, compose, invert, length3, sub3 } from '../geometry/index.js';
import { type Developed, type Part, acrossBend, alongArc, develop, fold, foldedZone, insideRadiusAt, middleFrame, profilePart, zoneQuads } from './index.js';

const K44 = { name: 'K-factor', k: 0.44 } as const;

const part = (flanges: readonly number[], turns: readonly number[]): Part => {
  const built = profilePart({ name: 'hand', thickness: 2, insideRadius: 3, width: 100, flanges, turns });
  if (!built.ok) throw new Error(built.failure.sentence);
  return built.value;
};

const near = (a: Vec3, b: Vec3, digits = 9): void => a.forEach((x, i) => expect(x).toBeCloseTo(b[i]!, digits));

const sameRigid = (a: Rigid, b: Rigid): void => {
  near(a.x, b.x);
  near(a.y, b.y);
  near(a.z, b.z);
  near(a.o, b.o, 7);
};

const made = (sheet: Developed) => fold(sheet, sheet.part.bends.map((bend) => bend.bendAngle));

describe('fold: by hand', () => {
  // thickness 2, inside radius 3: outside radius 5, so a 90 degree bend takes 5 of each outside length; middle radius 4
  it('an L of 40 + 60 stands with its outer faces 40 out and 60 up', () => {
    const { poses } = made(develop(part([40, 60], [90]), K44));
    // plate 0 is flat 35 long; plate 1 flat 55, its own y is up, its A side faces back over plate 0
    near(poses[1]!.o, [0, 35 + 4, 4]);
    near(poses[1]!.y, [0, 0, 1]);
    near(poses[1]!.z, [0, -1, 0]);
    // outer (B) face, far end: 40 from the free end of plate 0, and 60 over its B face at z = -1
    near(apply(poses[1]!, [0, 55, -1]), [0, 40, 59]);
  });

  it('a Z of 30, 50, 20 ends 50 - 2 higher and runs on the same way', () => {
    const { poses } = made(develop(part([30, 50, 20], [90, -90]), K44));
    // flats 25, 40, 15; the riser stands at 29; the step is 4 + 40 + 4 = 48 = 50 outside less one thickness
    near(poses[1]!.o, [0, 29, 4]);
    near(poses[2]!.o, [0, 33, 48]);
    near(poses[2]!.y, [0, 1, 0]);
    near(poses[2]!.z, [0, 0, 1]);
    // overall: from the B face of the first plate (-1) to the A face of the last (49) is 50
    near(apply(poses[2]!, [0, 15, 1]), [0, 48, 49]);
  });

  it('towards B the L is its mirror image', () => {
    const { poses } = made(develop(part([40, 60], [-90]), K44));
    near(poses[1]!.o, [0, 39, -4]);
    near(poses[1]!.y, [0, 0, -1]);
    near(poses[1]!.z, [0, 1, 0]);
  });

  it('at 45 of 90 degrees the radius is wider, by the length that is kept', () => {
    const sheet = develop(part([40, 60], [90]), K44);
    // a = pi/2 (3 + 0.88) = 6.0947; at pi/4 the neutral radius is a/(pi/4) = 7.76, the inside radius 7.76 - 0.88 = 6.88
    expect(sheet.allowances[0]!).toBeCloseTo((Math.PI / 2) * 3.88, 12);
    expect(insideRadiusAt(sheet, 0, 45)).toBeCloseTo(6.88, 12);
    const middle = 6.88 + 1;
    near(acrossBend(sheet, 0, 45).o, [0, 35 + middle * Math.SQRT1_2, middle * (1 - Math.SQRT1_2)]);
  });

  it('flat, the zone lies between the plates', () => {
    const sheet = develop(part([40, 60], [90]), K44);
    near(acrossBend(sheet, 0, 0).o, [0, 35 + sheet.allowances[0]!, 0]);
    near(acrossBend(sheet, 0, 1e-7).o, [0, 35 + sheet.allowances[0]!, 0], 6);
  });

  it('the middle of a square bend points half way up', () => {
    const sheet = develop(part([40, 60], [90]), K44);
    // u runs along +x from line.from (0, 35)
    const frame = middleFrame(sheet, 0, 90, 0);
    near(frame.o, [0, 35 + 4 * Math.SQRT1_2, 4 - 4 * Math.SQRT1_2]);
    near(frame.x, [1, 0, 0]);
    near(frame.y, [0, Math.SQRT1_2, Math.SQRT1_2]);
    near(frame.z, [0, -Math.SQRT1_2, Math.SQRT1_2]);
  });
});

describe('a bend part-way', () => {
  it('keeps its flat length on the neutral line at any angle', () => {
    const random = mulberry32(11);
    for (let run = 0; run < 40; run++) {
      const bendAngle = 5 + 175 * random();
      const thickness = 0.5 + 4 * random();
      const insideRadius = thickness * (0.2 + 5 * random());
      const k = 0.3 + 0.2 * random();
      const turn = random() < 0.5 ? bendAngle : -bendAngle;
      const built = profilePart({ name: 'x', thickness, insideRadius, width: 10, flanges: [100, 100], turns: [turn] });
      if (!built.ok) throw new Error(built.failure.sentence);
      const sheet = develop(built.value, { name: 'K-factor', k });
      const inner = Math.sign(turn) * (thickness / 2 - k * thickness); // K counts the neutral line from the inside face
      for (const angle of [0.01, 0.2 * bendAngle, 0.7 * bendAngle, bendAngle, bendAngle + 2]) {
        const at = (f: number): Vec3 => apply(alongArc(sheet, 0, angle, f), [0, 0, inner]);
        let length = 0;
        const pieces = 2000;
        for (let i = 0; i < pieces; i++) length += length3(sub3(at((i + 1) / pieces), at(i / pieces)));
        // chords are short of the arc by (angle/pieces)^2/24 of it: at 182 degrees 1e-7
        expect(length / sheet.allowances[0]!, `seed 11, run ${run}, ${angle} degrees`).toBeCloseTo(1, 6);
      }
    }
  });

  it('turns plate 1 by the angle about u', () => {
    const sheet = develop(part([40, 60], [120]), K44);
    for (const angle of [0, 13, 90, 120, 123]) {
      const { y } = acrossBend(sheet, 0, angle);
      expect((Math.atan2(y[2], y[1]) * 180) / Math.PI).toBeCloseTo(angle, 9);
    }
  });

  it('has zone corners on the inside and outside radius', () => {
    for (const turn of [90, -90]) {
      const sheet = develop(part([40, 60], [turn]), K44);
      const s = Math.sign(turn);
      const strips = foldedZone(sheet, 0, 90, 6);
      expect(strips).toHaveLength(6);
      for (const strip of strips) {
        // axis: over the tangent line (y = 35) at middle radius 4
        const radius = (p: Vec3): number => Math.hypot(p[1] - 35, p[2] - s * 4);
        for (const p of strip.A) expect(radius(p)).toBeCloseTo(s > 0 ? 3 : 5, 9);
        for (const p of strip.B) expect(radius(p)).toBeCloseTo(s > 0 ? 5 : 3, 9);
      }
      const last = strips[5]!;
      near(last.A[3], apply(acrossBend(sheet, 0, 90), [0, 0, 1]));
    }
  });
});

describe('zoneQuads', () => {
  it('cuts a zone with a hole and a slanted end into its exact area', () => {
    // trapezoid 0..100 at f = 0, 10..100 at f = 1 (area 95), less a square hole 20 x 0.5 in f (area 10)
    const zone = [
      [{ x: 0, y: 0, bulge: 0 }, { x: 100, y: 0, bulge: 0 }, { x: 100, y: 1, bulge: 0 }, { x: 10, y: 1, bulge: 0 }],
      [{ x: 40, y: 0.25, bulge: 0 }, { x: 40, y: 0.75, bulge: 0 }, { x: 60, y: 0.75, bulge: 0 }, { x: 60, y: 0.25, bulge: 0 }],
    ];
    const bend = { ...part([40, 60], [90]).bends[0]!, zone };
    for (const strips of [1, 3, 4]) {
      const quads = zoneQuads(bend, strips);
      const area = quads.reduce((sum, q) => sum + ((q.to[0] - q.from[0] + q.to[1] - q.from[1]) / 2) * (q.f[1] - q.f[0]), 0);
      expect(area).toBeCloseTo(85, 9);
    }
  });
});

describe('fold: from any root', () => {
  for (let seed = 1; seed <= 12; seed++) {
    it(`gives the same piece (seed ${seed})`, () => {
      const random = mulberry32(seed);
      const sheet = develop(randomTree(seed), K44);
      const angles = sheet.part.bends.map((bend) => bend.bendAngle * random());
      const from0 = fold(sheet, angles);
      sheet.part.plates.forEach((_, root) => {
        const other = fold(sheet, angles, root);
        expect(other.root).toBe(root);
        other.poses.forEach((pose, plate) => sameRigid(pose, compose(invert(from0.poses[root]!), from0.poses[plate]!)));
      });
      sheet.part.bends.forEach((bend, index) => {
        const [a, b] = bend.sides;
        const seen = ([0, 1] as const).map((side) => compose(from0.poses[bend.sides[side].plate]!, middleFrame(sheet, index, angles[index]!, side)));
        sameRigid(seen[0]!, seen[1]!);
        sameRigid(compose(invert(from0.poses[a.plate]!), from0.poses[b.plate]!), acrossBend(sheet, index, angles[index]!));
      });
    });
  }
});
