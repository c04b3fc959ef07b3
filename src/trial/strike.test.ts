import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { apart, between, randomConvex } from '../../test/geometry/naive.js';
import { type Planar, type Rigid, type Vec2, IDENTITY, hull, moved, prism, shapeOf } from '../geometry/index.js';
import { bodyOf } from './body.js';
import { outOfReach } from './outOfReach.js';
import { type Pass, type StrikeOptions, NO_STRIKE, strike } from './strike.js';
import { type VBend, tipAt, wingsAt } from './vBend.js';
import type { Piece, View } from './views.js';

const T = 2;
/** The steps a rotation is cut to, and what rounds corners off, as stated in limits.ts and convex.ts. */
const FINE = 0.1;
const ROUGH = 1;
/** mm along the bed by which a turn's answer may be wider than looks that close would find. */
const WIDENED = 0.5;
const BEVEL = 1.05;

/** A plate of sheet: a convex outline in (along, b), turned up about its own edge and set at (b, h). */
interface Plate {
  readonly base: readonly Vec2[];
  readonly degrees: number;
  readonly at: Vec2;
}

const turnOf = (degrees: number): readonly [number, number] => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];

const pieceOf = ({ base, degrees, at }: Plate): Piece => {
  const [c, s] = turnOf(degrees);
  const pose: Rigid = { x: [1, 0, 0], y: [0, c, s], z: [0, -s, c], o: [0, at[0], at[1]] };
  const solid = moved(prism(base, -T / 2, T / 2), pose);
  const outline = hull(solid.corners.map((p): Vec2 => [p[1], p[2]]));
  const along = base.map((p) => p[0]);
  return {
    solid, outline, shape: shapeOf(outline), along: [Math.min(...along), Math.max(...along)],
    lowest: Math.min(...outline.map((p) => p[1])), flat: degrees === 0,
  };
};

const viewOf = (plates: readonly Plate[], onGaugeSide = true): View => {
  const pieces = plates.map(pieceOf);
  const points = pieces.flatMap((p) => p.outline);
  return {
    plate: 0, wing: true, onGaugeSide, pose: IDENTITY, pieces,
    reach: Math.max(...points.map((p) => Math.hypot(p[0], p[1]))),
    box: [Math.min(...points.map((p) => p[0])), Math.min(...points.map((p) => p[1])), Math.max(...points.map((p) => p[0])), Math.max(...points.map((p) => p[1]))],
  };
};

/** A convex polygon's part on one side of the line b = at. */
const partBeyond = (polygon: readonly Vec2[], at: number, side: 1 | -1): Vec2[] => polygon.flatMap((p, i) => {
  const q = polygon[(i + 1) % polygon.length]!;
  const [dp, dq] = [side * (p[0] - at), side * (q[0] - at)];
  const kept: Vec2[] = dp >= 0 ? [p] : [];
  if (dp * dq < 0) kept.push([at, p[1] + ((q[1] - p[1]) * dp) / (dp - dq)]);
  return kept;
});

/** What a cut square to the bed shows of a plate: a strip from chord end to chord end, in (b, h). */
const sectionAt = ({ base, degrees, at }: Plate, along: number): Vec2[] | null => {
  const ends = base.flatMap((p, i) => {
    const q = base[(i + 1) % base.length]!;
    return p[0] > along !== q[0] > along ? [p[1] + ((q[1] - p[1]) * (along - p[0])) / (q[0] - p[0])] : [];
  });
  if (ends.length < 2) return null;
  const [c, s] = turnOf(degrees);
  const [near, far] = [Math.min(...ends), Math.max(...ends)];
  return ([[near, -T / 2], [far, -T / 2], [far, T / 2], [near, T / 2]] as Vec2[]).map(([b, h]): Vec2 => [at[0] + c * b - s * h, at[1] + s * b + c * h]);
};

const place = (polygon: readonly Vec2[], { c, s, x, y }: Planar): Vec2[] => polygon.map((p): Vec2 => [x + c * p[0] - s * p[1], y + s * p[0] + c * p[1]]);

const LOOKS = 160;
const posesOf = (pass: Pass): Planar[] => Array.from({ length: LOOKS + 1 }, (_, k) => {
  const share = k / LOOKS;
  if (pass.kind === 'turn') return pass.at(pass.from + (pass.to - pass.from) * share);
  return { ...pass.pose, x: pass.pose.x + pass.by[0] * share, y: pass.pose.y + pass.by[1] * share };
});

/** mm: half the furthest way of any corner between two looks. */
const slackOf = (outlines: readonly Vec2[], poses: readonly Planar[]): number => {
  let most = 0;
  for (let i = 1; i < poses.length; i++) {
    const [p, q] = [place(outlines, poses[i - 1]!), place(outlines, poses[i]!)];
    p.forEach((at, k) => { most = Math.max(most, Math.hypot(at[0] - q[k]![0], at[1] - q[k]![1])); });
  }
  return most / 2;
};

/** Nearer than this is asked exactly; further off a circle about the section is enough. mm */
const FAR = 6;

/** The least distance in one section over all looks and bodies. */
const nearest = (section: readonly Vec2[], poses: readonly Planar[], bodies: readonly (readonly Vec2[])[]): number => {
  let least = Infinity;
  const round = (polygon: readonly Vec2[]): readonly [number, number, number] => {
    const [x, y] = [0, 1].map((k) => polygon.reduce((sum, p) => sum + p[k]!, 0) / polygon.length) as [number, number];
    return [x, y, Math.max(...polygon.map((p) => Math.hypot(p[0] - x, p[1] - y)))];
  };
  const rounds = bodies.map(round);
  for (const pose of poses) {
    const there = place(section, pose);
    const [x, y, r] = round(there);
    bodies.forEach((body, i) => {
      const [bx, by, br] = rounds[i]!;
      const bound = Math.hypot(x - bx, y - by) - r - br;
      least = Math.min(least, bound > FAR ? bound : apart(there, body));
    });
    if (least === 0) return 0;
  }
  return least;
};

const outlineIn = (random: () => number): Vec2[] => randomConvex(random, between(random, 20, 40), [between(random, -10, 10), between(random, 30, 45)]);

const bend = (random: () => number): VBend => {
  const [bendAngle, ri] = [between(random, 40, 120), 2.56];
  return { kind: 'V', beside: 0, allowance: ((bendAngle * Math.PI) / 180) * (ri + 0.9), neutral: 0.9, thickness: T, halfOpening: 8, shoulderRadius: 2, bendAngle, bendAngleUnderLoad: bendAngle + 2 };
};

/** Turns in the die's frame or as the punch sees them; carries from any bent place. */
const passOf = (random: () => number, kind: Pass['kind'], gauge: boolean): Pass => {
  const made = bend(random);
  const wing = (x: number): Planar => (gauge ? wingsAt(made, x).gauge : wingsAt(made, x).front);
  if (kind === 'carry') return { kind, pose: wing(between(random, 0, made.bendAngle)), by: [between(random, -40, 40), between(random, -40, 40)] };
  const byPunch = random() < 0.5;
  return { kind, from: 0, to: made.bendAngleUnderLoad, at: (x) => (byPunch ? { ...wing(x), y: wing(x).y - tipAt(made, x) } : wing(x)) };
};

/** Does the answer hold every hit of the twin, and nothing further than it may? */
const compare = (plates: readonly Plate[], gauge: boolean, pass: Pass, bodies: readonly (readonly Vec2[])[], options: StrikeOptions, label: string): 'none' | 'part' | 'whole' => {
  const view = viewOf(plates, gauge);
  const found = strike(view, bodies.map(bodyOf), [pass], options);
  const poses = posesOf(pass);
  const slack = slackOf(view.pieces.flatMap((p) => p.outline), poses);
  const motion = pass.kind === 'carry' ? 0 : Math.max(FINE, Math.min(options.close ? 0 : ROUGH, found.depth / 4));
  const farthest = BEVEL * (options.allowance + motion) + slack;
  expect(farthest, label).toBeLessThan(FAR);
  const [low, high] = [Math.min(...view.pieces.map((p) => p.along[0])), Math.max(...view.pieces.map((p) => p.along[1]))];
  let [held, columns] = [0, 0];
  for (let along = low + 0.37; along < high; along += 2) {
    columns++;
    const leastAt = (place: number): number => Math.min(Infinity, ...plates.flatMap((p): Vec2[][] => {
      const section = sectionAt(p, place);
      if (!section) return [];
      const part = options.across ? partBeyond(section, gauge ? -0.05 : 0.05, gauge ? -1 : 1)
        : options.beyond === undefined ? section : partBeyond(section, gauge ? options.beyond : -options.beyond, gauge ? 1 : -1);
      return part.length > 2 ? [part] : [];
    }).map((s) => nearest(s, poses, bodies)));
    const least = leastAt(along);
    const ruledOut = found.where.some(([a, b]) => a <= along && along <= b);
    if (ruledOut) held++;
    // without `slack` here: the twin's own looks are true places
    if (least < options.allowance - 1e-9) expect(ruledOut, `${label}: missed at ${along}, ${least} mm`).toBe(true);
    const beside = ruledOut && least > farthest && pass.kind === 'turn' && !options.close ? Math.min(leastAt(along - WIDENED), leastAt(along + WIDENED)) : least;
    if (ruledOut) expect(beside, `${label}: too wide at ${along}`).toBeLessThanOrEqual(farthest + 1e-6);
  }
  return held === 0 ? 'none' : held === columns ? 'whole' : 'part';
};

describe('strike, by hand', () => {
  // a triangle 100 wide at the bend line and 60 deep: at depth b it is 100 (1 - b / 60) wide
  const plate: Plate = { base: [[-50, 0], [50, 0], [0, 60]], degrees: 0, at: [0, 0] };
  const block: Vec2[] = [[30, -20], [40, -20], [40, -2], [30, -2]];
  const flat: Planar = { c: 1, s: 0, x: 0, y: 1 };

  it('carried 5 down on a block that ends 2 below: 3 deep, as wide as the plate is 1 mm before the block', () => {
    const { where, depth } = strike(viewOf([plate]), [bodyOf(block)], [{ kind: 'carry', pose: flat, by: [0, -5] }], { allowance: 1 });
    expect(depth).toBeCloseTo(3, 9);
    expect(where).toHaveLength(1);
    const half = 50 * (1 - 29 / 60);
    expect(where[0]![0]).toBeCloseTo(-half, 9);
    expect(where[0]![1]).toBeCloseTo(half, 9);
  });

  it('carried 0.5 down it stays 1.5 clear; 1.5 down it is nearer than 1, not touching', () => {
    const ask = (down: number) => strike(viewOf([plate]), [bodyOf(block)], [{ kind: 'carry', pose: flat, by: [0, -down] }], { allowance: 1 });
    expect(ask(0.5)).toBe(NO_STRIKE);
    expect(ask(1.5).depth).toBeCloseTo(-0.5, 9);
    expect(ask(1.5).where).toHaveLength(1);
  });

  it('leaves out what it is told to: metal near the bend, pieces resting on the die, flat or risen ones', () => {
    const pass: Pass = { kind: 'carry', pose: flat, by: [0, -5] };
    const ask = (options: Partial<StrikeOptions>) => strike(viewOf([plate]), [bodyOf(block)], [pass], { allowance: 1, ...options }).where;
    expect(ask({ beyond: 42 })).toEqual([]);
    const [[a, b]] = ask({ beyond: 35 }) as [[number, number]];
    expect(b - a).toBeCloseTo(100 * (1 - 35 / 60), 9);
    expect(ask({ below: -1 })).toEqual([]);
    expect(ask({ below: -0.9 })).toHaveLength(1);
    expect(ask({ only: 'risen' })).toEqual([]);
    expect(ask({ only: 'flat' })).toHaveLength(1);
    expect(ask({ across: true })).toEqual([]);
  });

  it('an arc that leaves the die top is told by so much less as its end face may come nearer, a short one by its middle', () => {
    const pass: Pass = { kind: 'carry', pose: flat, by: [0, -5] };
    const told = (half: number): readonly (readonly [number, number])[] => {
      const view = viewOf([{ base: [[-half, 0], [half, 0], [half, 60], [-half, 60]], degrees: 0, at: [0, 0] }]);
      const arc = { ...view, pieces: view.pieces.map((piece) => ({ ...piece, leavesTop: true as const })) };
      return strike(arc, [bodyOf(block)], [pass], { allowance: 1, below: -0.5 }).where;
    };
    // 1 mm is asked of others and 0.02 of it: 0.98 less at either end
    expect(told(5).flat().map((x) => Number(x.toFixed(6)))).toEqual([-4.02, 4.02]);
    expect(told(0.5)).toEqual([[0, 0]]);
  });

  it('a wing that rises meets a bar over it', () => {
    // a plate turned up by 45 degrees about the origin lies along (s, s): a bar about (35, 35) is met
    const at = (x: number): Planar => ({ c: Math.cos((x * Math.PI) / 180), s: Math.sin((x * Math.PI) / 180), x: 0, y: 0 });
    const bar: Vec2[] = [[34, 34], [36, 34], [36, 36], [34, 36]];
    const wing: Plate = { base: [[-50, 0], [50, 0], [50, 60], [-50, 60]], degrees: 0, at: [0, 0] };
    expect(strike(viewOf([wing]), [bodyOf(bar)], [{ kind: 'turn', at, from: 0, to: 45 }], { allowance: 1 }).where).toEqual([[-50, 50]]);
    // at 40 degrees the bar's nearest corner (36, 34) is 34 cos 40 - 36 sin 40 = 2.905 over the middle, 1.905 over the face
    expect(strike(viewOf([wing]), [bodyOf(bar)], [{ kind: 'turn', at, from: 0, to: 40 }], { allowance: 1 }).where).toEqual([]);
    expect(strike(viewOf([wing]), [bodyOf(bar)], [{ kind: 'turn', at, from: 0, to: 40 }], { allowance: 2 }).where).toEqual([[-50, 50]]);
  });

  it('the end of a turn counts though no look falls on it: a corner 0.5 deep there', () => {
    const at = (x: number): Planar => ({ c: Math.cos((x * Math.PI) / 180), s: Math.sin((x * Math.PI) / 180), x: 0, y: 0 });
    // seen from the wing at 45 degrees, a square on its corner, which stands 0.5 under the upper face at b = 40
    const corner = place([[40, 0.5], [43, 3.5], [40, 6.5], [37, 3.5]], at(45));
    const { where } = strike(viewOf([plate]), [bodyOf(corner)], [{ kind: 'turn', at, from: 0, to: 45 }], { allowance: 0.02 });
    expect(where).toHaveLength(1);
    const [low, high] = where[0]!;
    // in the upper face it cuts from b = 39.5 on; flanks at 45 degrees let a margin through sqrt 2 times along b
    const half = (b: number): number => 50 * (1 - b / 60);
    expect(high).toBeGreaterThanOrEqual(half(39.5));
    expect(high).toBeLessThanOrEqual(half(39.5 - Math.SQRT2 * (0.02 + 0.5 / 4)) + WIDENED);
    expect(low).toBeCloseTo(-high, 9);
  });
});

describe('strike against many looks', () => {
  const around = (random: () => number, pass: Pass, gauge: boolean): Vec2[][] => {
    // near a place where the wing comes by, so that it is met, grazed or just missed
    const poses = posesOf(pass);
    return Array.from({ length: 1 + Math.floor(random() * 2) }, () => {
      const pose = poses[Math.floor(random() * poses.length)]!;
      const b = between(random, 10, 80) * (gauge ? 1 : -1);
      const [at] = place([[b, between(random, -25, 25)]], pose);
      return randomConvex(random, between(random, 3, 15), at!);
    });
  };
  const across = (plate: Plate, gauge: boolean): Plate => (gauge ? plate : {
    base: plate.base.map(([u, v]): Vec2 => [u, -v]).reverse(), degrees: -plate.degrees, at: [-plate.at[0], plate.at[1]],
  });

  it.each([['turn', 81, 22], ['carry', 82, 22]] as const)('%s (seed %d): no hit missed, no interval wider than allowance, motion and bevel', (kind, seed, rounds) => {
    const random = mulberry32(seed);
    const seen = { none: 0, part: 0, whole: 0 };
    for (let round = 0; round < rounds; round++) {
      const gauge = random() < 0.5;
      const pass = passOf(random, kind, gauge);
      const plates = [{ base: outlineIn(random), degrees: 0, at: [0, 0] as const }, { base: outlineIn(random), degrees: between(random, 20, 90), at: [between(random, 0, 30), 0] as const }]
        .slice(round % 3 === 0 ? 1 : 0, round % 3 === 1 ? 1 : 2).map((p) => across(p, gauge));
      const allowance = [0.02, 1, 2][Math.floor(random() * 3)]!;
      seen[compare(plates, gauge, pass, around(random, pass, gauge), { allowance }, `round ${round}`)]++;
    }
    expect(Math.min(seen.none, seen.part), JSON.stringify(seen)).toBeGreaterThanOrEqual(5);
  });

  it('cut at a distance from the bend, or past the bend line (seed 83)', () => {
    const random = mulberry32(83);
    const seen = { none: 0, part: 0, whole: 0 };
    for (let round = 0; round < 24; round++) {
      const gauge = random() < 0.5;
      const past = round % 3 === 0;
      const pass = passOf(random, round % 2 === 0 ? 'turn' : 'carry', gauge);
      const plate = across({ base: outlineIn(random).map(([u, v]): Vec2 => [u, past ? v - 35 : v]), degrees: 0, at: [0, 0] }, gauge);
      const bodies = around(random, pass, gauge !== past);
      seen[compare([plate], gauge, pass, bodies, { allowance: 1, ...(past ? { across: true } : { beyond: between(random, 10, 40) }) }, `round ${round}`)]++;
    }
    expect(Math.min(seen.none, seen.part), JSON.stringify(seen)).toBeGreaterThanOrEqual(4);
  });

  it('looked at closely (seed 85): no hit missed, no interval wider than allowance, a look\'s motion and bevel, thin pieces as others', () => {
    const random = mulberry32(85);
    const seen = { none: 0, part: 0, whole: 0 };
    for (let round = 0; round < 40; round++) {
      const gauge = random() < 0.5;
      const pass = passOf(random, 'turn', gauge);
      const thin: readonly Vec2[] = [[0, 10], [between(random, 1, 4), 10], [0.8, between(random, 20, 60)]];
      const plate = across({ base: round % 4 === 0 ? thin : outlineIn(random), degrees: round % 2 === 0 ? 0 : between(random, 20, 90), at: [between(random, 0, 30), 0] }, gauge);
      seen[compare([plate], gauge, pass, around(random, pass, gauge), { allowance: 1, close: true }, `round ${round}`)]++;
    }
    expect(Math.min(seen.none, seen.part), JSON.stringify(seen)).toBeGreaterThanOrEqual(4);
  });

  it('a piece up to 4 mm along the bed is ruled out whole or not at all, and never missed (seed 84)', () => {
    const random = mulberry32(84);
    let [hit, free] = [0, 0];
    for (let round = 0; round < 24; round++) {
      const pass = passOf(random, round % 2 === 0 ? 'turn' : 'carry', true);
      const plate: Plate = { base: [[0, 0], [between(random, 1, 4), 0], [0.8, between(random, 20, 60)]], degrees: 0, at: [0, 0] };
      const bodies = around(random, pass, true);
      const view = viewOf([plate]);
      const { where } = strike(view, bodies.map(bodyOf), [pass], { allowance: 1 });
      const section = view.pieces[0]!.outline; // a thin piece stands for all of its outline
      const least = nearest(section, posesOf(pass), bodies);
      if (where.length > 0) expect(where).toEqual([view.pieces[0]!.along]);
      if (least < 1) expect(where, `round ${round}`).toHaveLength(1);
      if (least > 4) expect(where, `round ${round}`).toHaveLength(0);
      if (least < 1) hit++;
      else free++;
    }
    expect(Math.min(hit, free)).toBeGreaterThanOrEqual(5);
  });

  it('what boxes alone say is out of reach is never met (seed 84)', () => {
    const random = mulberry32(84);
    const seen = { out: 0, perhaps: 0 };
    for (let round = 0; round < 300; round++) {
      const gauge = random() < 0.5;
      const pass = passOf(random, round % 2 === 0 ? 'turn' : 'carry', gauge);
      const plates = [{ base: outlineIn(random), degrees: between(random, -90, 90), at: [between(random, 0, 30), 0] as const }].map((p) => across(p, gauge));
      const view = viewOf(plates, gauge);
      const body = randomConvex(random, between(random, 3, 40), [between(random, -120, 120), between(random, -120, 120)]);
      if (!outOfReach(view, [pass], [bodyOf(body)], 1)) {
        seen.perhaps++;
        continue;
      }
      seen.out++;
      const corners = plates.flatMap((p) => p.base.flatMap((q) => [-T / 2, T / 2].map((h): Vec2 => [p.at[0] + turnOf(p.degrees)[0] * q[1] - turnOf(p.degrees)[1] * h, p.at[1] + turnOf(p.degrees)[1] * q[1] + turnOf(p.degrees)[0] * h])));
      for (const pose of posesOf(pass)) expect(apart(hull(place(corners, pose)), body), `round ${round}`).toBeGreaterThan(1);
    }
    expect(Math.min(seen.out, seen.perhaps), JSON.stringify(seen)).toBeGreaterThanOrEqual(50);
  });
});
