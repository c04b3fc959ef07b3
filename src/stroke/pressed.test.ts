import { beforeAll, describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { type Vec2, flatten } from '../geometry/index.js';
import { metalById } from '../metal/index.js';
import { type Part, profilePart } from '../sheet/index.js';
import { demoFloor, demoRack, profileOf } from '../shop/index.js';
import { type Step, type Trial, planTrial } from '../trial/index.js';
import { angleAtShare } from './angleAtShare.js';
import { cutPlace } from './cutPlace.js';
import { filmOf } from './film.js';
import { angleBefore, bendIndex, dieOf, punchOf, rootOf, stationOf } from './record.js';
import { type CutPiece, sheetSection } from './sheetSection.js';
import { tipAt } from './tipAt.js';

const RADIANS = Math.PI / 180;
/** Moments of the film while the punch bears on the sheet: touch, a third, half, the end. */
const BEARING = [0.3601, 0.46, 0.51, 0.6599, 0.69];
/** mm: chords of arcs in tools and sheet. */
const CHORDS = 0.01;

type Turn = Parameters<typeof profilePart>[0]['turns'][number];
const planOn = (id: string, part: Part): Trial => {
  const machine = demoFloor().find((m) => m.id === id)!;
  const trial = planTrial({ part, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 }, { now: () => 0 });
  expect(trial.verdict).toBe('makes');
  return trial;
};
const plan = (flanges: readonly number[], turns: readonly Turn[], thickness: number, insideRadius: number): Trial => {
  const made = profilePart({ name: 'pressed', thickness, insideRadius, width: 120, flanges, turns });
  if (!made.ok) throw new Error(made.failure.sentence);
  return planOn('general', made.value);
};

const cutAt = (trial: Trial, step: Step, t: number): readonly CutPiece[] => {
  const { angles, pose } = filmOf(trial, step)(t);
  return sheetSection(trial.sheet, angles, rootOf(trial, step), pose, cutPlace(trial, step));
};

const apart = (p: Vec2, q: Vec2): number => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** mm that a point lies inside a ring, 0 outside. */
const depthIn = (ring: readonly Vec2[], [x, y]: Vec2): number => {
  let [inside, nearest] = [false, Infinity];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) inside = !inside;
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
    const s = Math.min(1, Math.max(0, ((x - p[0]) * dx + (y - p[1]) * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, Math.hypot(x - p[0] - s * dx, y - p[1] - s * dy));
  });
  return inside ? nearest : 0;
};

const deepest = (pieces: readonly CutPiece[], ring: readonly Vec2[]): number =>
  Math.max(...pieces.flatMap((piece) => piece.flatMap((p, i) => {
    const q = piece[(i + 1) % 4]!;
    return Array.from({ length: 21 }, (_, k) => depthIn(ring, [p[0] + ((q[0] - p[0]) * k) / 20, p[1] + ((q[1] - p[1]) * k) / 20]));
  })));

/** What holds at every moment of any stroke between tools that press. */
const holdsThroughout = (trial: () => Trial, step: () => Step): void => {
  it.each([0.1, 0.23, 0.3, ...BEARING, 0.78, 0.95])('at %f of the film the sheet is as thick as it is, and none of it is lost', (t) => {
    const { thickness } = trial().sheet.part;
    const pieces = cutAt(trial(), step(), t);
    for (const [a, b, c, d] of pieces) {
      expect(apart(a, d)).toBeCloseTo(thickness, 9);
      expect(apart(b, c)).toBeCloseTo(thickness, 9);
    }
    const lengths = pieces.reduce((sum, [a, b, c, d]) => sum + (apart(a, b) + apart(d, c)) / 2, 0);
    const first = cutAt(trial(), step(), 0.1).reduce((sum, [a, b, c, d]) => sum + (apart(a, b) + apart(d, c)) / 2, 0);
    // the neutral line keeps its length and lies off the middle: by less than half the sheet, over at most half a turn a bend
    expect(Math.abs(lengths - first)).toBeLessThan(trial().sheet.part.bends.length * Math.PI * (thickness / 2));
  });

  it.each([...BEARING])('at %f of the film no metal is inside punch or die, and the punch touches it', (t) => {
    const station = stationOf(trial(), step());
    const { tip } = filmOf(trial(), step())(t);
    const punch = flatten(profileOf(punchOf(trial(), step().punch), station.punchFacing), 1e-3);
    const die = flatten(profileOf(dieOf(trial(), step().die), station.dieFacing), 1e-3);
    const at = (ring: readonly Vec2[], up: number): Vec2[] => ring.map(([x, y]) => [x, y + up]);
    const pieces = cutAt(trial(), step(), t);
    expect(deepest(pieces, at(punch, tip))).toBeLessThan(CHORDS);
    expect(deepest(pieces, at(die, station.dieTop))).toBeLessThan(CHORDS);
    // a little lower it would be in the metal
    expect(deepest(pieces, at(punch, tip - 0.1))).toBeGreaterThan(CHORDS);
  });

  it('runs from touch to the ram\'s place and depth of the plan', () => {
    const low = tipAt(trial(), step(), step().bendAngle);
    expect(low).toBeCloseTo(step().ramPosition, 4);
    expect(tipAt(trial(), step(), angleBefore(trial(), step())) - low).toBeCloseTo(step().depth, 2);
    expect(filmOf(trial(), step())(0.69).travel).toBeCloseTo(step().depth, 2);
    const half = tipAt(trial(), step(), angleAtShare(trial(), step(), 0.5));
    expect(half).toBeCloseTo(step().ramPosition + step().depth / 2, 2);
  });

  it('the punch comes down, and goes up again', () => {
    const tips = [0.25, 0.3, 0.35, ...BEARING.slice(0, 4)].map((t) => filmOf(trial(), step())(t).tip);
    expect(tips).toEqual([...tips].sort((a, b) => b - a));
    expect(filmOf(trial(), step())(0.9).tip).toBeCloseTo(stationOf(trial(), step()).dieTop + step().ramOpeningOut, 9);
    expect([0.1, 0.3, 0.8, 0.95].map((t) => filmOf(trial(), step())(t).travel)).toEqual([null, null, null, null]);
  });
};

/**
 * Up of the outer face of a hem's flange at its far end over the anvil, by hand: the pieces of the arc of docs/kinematics.md, 'A hem', laid one after the
 * other from the lying plate, then the flange's flat.
 */
const flangeEnd = (trial: Trial, step: Step, degrees: number): { readonly up: number; readonly back: number } => {
  const index = bendIndex(trial, step.bends[0]!);
  const { hem, bendAngle, insideRadius, sides } = trial.sheet.part.bends[index]!;
  const { preLength: lp, closedLength: lc, preInsideRadius, preBendAngle, preBendAngleUnderLoad } = hem!;
  const t = trial.sheet.part.thickness;
  const [x, xp, xu, xc] = [degrees, preBendAngle, preBendAngleUnderLoad, bendAngle].map((v) => v * RADIANS) as [number, number, number, number];
  const [a, m] = [Math.max(lp, lc), Math.min(lp, lc)];
  const e = (a - m) / 2;
  const s = x <= xu ? 0 : (x - xu) / (xc - xu);
  const o = (1 - s) * (lp > m ? (Math.min(x, xu) * e) / lp : 0) + s * (lc > m ? (xc * e) / lc : 0);
  const n = (1 - s) * (lp / xp - preInsideRadius) + s * (lc / xc - insideRadius);
  let [back, up, turned] = [0, 0, 0];
  for (const [length, turn] of [[e, o], [m, x - 2 * o], [e, o]] as const) {
    const chord = Math.abs(turn) < 1e-12 ? length : 2 * (length / turn + t / 2 - n) * Math.sin(turn / 2);
    back += chord * Math.cos(turned + turn / 2);
    up += chord * Math.sin(turned + turn / 2);
    turned += turn;
  }
  const ys = trial.sheet.part.plates[sides[step.gaugeSide].plate]!.outline.map((v) => v.y);
  const flat = Math.max(...ys) - Math.min(...ys);
  return { up: t / 2 + up + flat * Math.sin(turned) - (t / 2) * Math.cos(turned), back: step.lineBack! + back + flat * Math.cos(turned) + (t / 2) * Math.sin(turned) };
};

describe.each([
  ['a closed hem of 10 mm in 1.5 mm sheet', 1.5, 10, 0.1],
  ['an open hem of 14 mm with 2 mm between in 1 mm sheet', 1, 14, 1],
] as const)('%s', (_, thickness, flange, insideRadius) => {
  let trial: Trial;
  const step = (): Step => trial.steps[1]!;
  beforeAll(() => {
    trial = plan([60, flange], [{ turn: 180, insideRadius }], thickness, thickness);
    expect(trial.steps.map(({ kind }) => kind)).toEqual(['V bend', 'hem close']);
  });

  holdsThroughout(() => trial, step);

  it('ends two sheets and the gap high, the plate on the anvil all the while', () => {
    const { dieTop } = stationOf(trial, step());
    expect(filmOf(trial, step())(0.69).tip - dieTop).toBeCloseTo(2 * thickness + 2 * insideRadius, 6);
    for (const t of BEARING) expect(Math.min(...cutAt(trial, step(), t).flat().map((p) => p[1]))).toBeCloseTo(dieTop, 9);
  });

  it('the flange\'s end, which bears the punch, is where hand geometry has it at every angle', () => {
    const { dieTop } = stationOf(trial, step());
    const start = angleBefore(trial, step());
    for (const angle of [start, (start + 180) / 2, 172, 178]) {
      const end = flangeEnd(trial, step(), angle);
      // in front of the punch's back: its face bears on the flange's end
      expect(Math.abs(end.back)).toBeLessThan(18);
      expect(tipAt(trial, step(), angle) - dieTop).toBeCloseTo(end.up, 2);
    }
  });

  it('the fold touches the fingers when the sheet is at its stop', () => {
    const { x } = step().stop;
    expect(Math.max(...cutAt(trial, step(), 0.235).flat().map((p) => p[0]))).toBeCloseTo(x, 2);
  });
});

describe('P14: each of its two hems while it is closed', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = planOn('small-fast', benchParts().find(({ id }) => id === 'P14')!.part);
  }, 60_000);
  const close = (n: number): Step => trial.steps.filter(({ kind }) => kind === 'hem close')[n]!;

  describe('the first', () => holdsThroughout(() => trial, () => close(0)));
  describe('the second, the other one closed before it', () => holdsThroughout(() => trial, () => close(1)));
});

describe.each([
  ['an offset of 2.5 mm, the higher flange at the gauge', [60, 3.5, 60], [90, -90], 1, 0.5, 2.5],
  ['an offset of 2.5 mm with a flange behind it, the higher flange in front', [30, 60, 3.5, 60], [90, 90, -90], 1, 0.5, 2.5],
  ['an offset of 5 mm', [60, 6, 60], [90, -90], 1, 1, 5],
] as const)('%s', (_, flanges, turns, thickness, insideRadius, height) => {
  let trial: Trial;
  const step = (): Step => trial.steps[0]!;
  beforeAll(() => {
    trial = plan(flanges, turns, thickness, insideRadius);
    expect(step().kind).toBe('offset bend');
  });

  holdsThroughout(() => trial, step);

  it('the higher flange lies still on the high land, the lower one goes down level to the land by the step', () => {
    const { dieTop } = stationOf(trial, step());
    const index = bendIndex(trial, step().bends[0]!);
    const [a, final] = [trial.sheet.allowances[index]!, 90 * RADIANS];
    // web between mould lines less both setbacks of R + t
    const web = height + thickness - 2 * (insideRadius + thickness);
    const rests = Math.sign(step().lineBack!);
    for (const t of BEARING) {
      const x = filmOf(trial, step())(t).angle * RADIANS;
      // middle radius at x, and how far the flanges are apart upright: docs/kinematics.md
      const middle = a / x - (a / final - insideRadius) + thickness / 2;
      const drop = x < 1e-9 ? 0 : 2 * middle * (1 - Math.cos(x)) + web * Math.sin(x);
      const pieces = cutAt(trial, step(), t).flat();
      const under = (side: number): number => Math.min(...pieces.filter((p) => p[0] * side > 8).map((p) => p[1]));
      expect(under(rests)).toBeCloseTo(dieTop, 6);
      expect(under(-rests)).toBeCloseTo(dieTop - drop, 6);
    }
    expect(filmOf(trial, step())(0.69).tip).toBeCloseTo(dieTop + thickness - height, 3);
  });
});
