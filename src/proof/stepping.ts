import { type Rigid, type Vec3, apply, compose, invert } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import type { Punch } from '../shop/index.js';
import type { Step } from '../trial/index.js';
import { sideFrame, zonePoint } from './bendShape.js';
import type { BendTravel } from './bendTravel.js';
import type { Element, Wing } from './element.js';
import { platePoses } from './fold.js';
import type { Metal } from './metal.js';
import { outlineOf } from './profileSlabs.js';
import { sense } from './vee.js';

/** The three plates of an offset bend: that beyond the first bend goes down, that beyond the second lies still, the web is between. */
export interface OffsetPlates {
  readonly low: number;
  readonly web: number;
  readonly high: number;
}

/** The plates of two bends that share one, or null where they are no offset: not two, of one direction, or without a plate between. */
export const offsetPlates = (sheet: Developed, bends: readonly number[]): OffsetPlates | null => {
  const [first, second, ...more] = bends.map((i) => sheet.part.bends[i]!);
  if (!first || !second || more.length > 0 || first.direction === second.direction) return null;
  const web = first.sides.find((s) => second.sides.some((o) => o.plate === s.plate))?.plate;
  if (web === undefined) return null;
  const beyond = (b: typeof first): number => b.sides.find((s) => s.plate !== web)!.plate;
  return { low: beyond(first), web, high: beyond(second) };
};

export interface Stepping {
  root(wing: Wing, x: number): Rigid;
  /** The web in the frame of the plate that goes down. */
  web(x: number): Rigid;
  readonly travel: BendTravel;
  tip(x: number): number;
  /** Which wing goes down. */
  readonly lowWing: Wing;
}

/** Points followed across each arc, and degrees between two entries of the tables. */
const PLACES = 24;
const GRID = 0.25;
/** Between entries a smooth path is no longer than its chord by more than this share. */
const BETWEEN = 1.02;
/** mm: this near to an upright wall metal leans on it. */
const WALL = 0.02;

/**
 * The stroke of an offset tool: the higher flange lies still on the die's high land, the lower one stays level with it and goes down and
 * in as both bends turn by the same x (docs/kinematics.md, 'An offset bend'). The punch stands as low as the upper face of the metal
 * between lets its own profile.
 */
export const steppingOf = (
  sheet: Developed, metal: Metal, bends: readonly number[], plates: OffsetPlates, angles: readonly number[], step: Step, punch: Punch, facing: 'as drawn' | 'reversed', dieTop: number, final: number,
): Stepping => {
  const [first, second] = bends as [number, number];
  const bend = sheet.part.bends[first]!;
  const t = sheet.part.thickness;
  const g = step.gaugeSide;
  const lowSide = bend.sides[0].plate === plates.low ? 0 : 1;
  const lowWing: Wing = g === lowSide ? 'gauge' : 'front';
  const lowLine = sideFrame(bend.sides[lowSide].line);
  const highLine = sideFrame(sheet.part.bends[second]!.sides.find((s) => s.plate === plates.high)!.line);
  const posesAt = (x: number): ReadonlyMap<number, Rigid> =>
    platePoses(sheet, metal.shapes, angles.map((a, i) => (i === first || i === second ? x : a)), plates.low);
  /** The lower flange with its line at back 0 and its middle plane at up 0. */
  const level: Rigid = compose({ x: [sense(bend, g), 0, 0], y: [0, g === 1 ? 1 : -1, 0], z: [0, 0, bend.direction === 'A' ? 1 : -1], o: [step.place, 0, 0] }, invert(lowLine));
  const lowAt = (x: number): Rigid => {
    const high = apply(compose(level, compose(posesAt(x).get(plates.high)!, highLine)), [0, 0, 0]);
    return { ...level, o: [level.o[0], level.o[1] + (step.lineBack ?? 0) - high[1], level.o[2] + dieTop + t / 2 - high[2]] };
  };
  const root = (wing: Wing, x: number): Rigid => (wing === lowWing ? lowAt(x) : compose(lowAt(x), posesAt(x).get(plates.high)!));
  const web = (x: number): Rigid => posesAt(x).get(plates.web)!;

  /** Upper face of both arcs, of the web's and the flanges' ends between them: (back, up). */
  const faceAt = (x: number): Vec3[] => bends.flatMap((index) => {
    const own = sheet.part.bends[index]!;
    const pose = compose(lowAt(x), compose(posesAt(x).get(own.sides[0].plate)!, sideFrame(own.sides[0].line)));
    const up = bend.direction === 'A' ? t / 2 : -t / 2;
    return Array.from({ length: PLACES + 1 }, (_, k) => apply(pose, zonePoint(metal.shapes[index]!, x, 0, k / PLACES, up)));
  });
  const outline = outlineOf(punch.profile, facing);
  /** The punch's lower side over a place: up from its lowest land. */
  const under = (back: number): number => {
    let least = Infinity;
    outline.forEach((p, i) => {
      const q = outline[(i + 1) % outline.length]!;
      const [a, b] = p[0] < q[0] ? [p, q] : [q, p];
      if (back < a[0] || back > b[0]) return;
      least = Math.min(least, b[0] - a[0] < 1e-9 ? Math.min(a[1], b[1]) : a[1] + ((b[1] - a[1]) * (back - a[0])) / (b[0] - a[0]));
    });
    return least;
  };
  const tipAt = (x: number): number => {
    const face = faceAt(x);
    let tip = lowAt(x).o[2] + t / 2;
    // between two neighbouring points of the face the metal is as good as straight: the edge of the punch may rest there
    for (let i = 0; i + 1 < face.length; i++) {
      const [p, q] = [face[i]!, face[i + 1]!];
      for (let k = 0; k <= 8; k++) {
        const [back, up] = [p[1] + ((q[1] - p[1]) * k) / 8, p[2] + ((q[2] - p[2]) * k) / 8];
        // metal that stands along a wall is not under it
        const gap = Math.max(under(back - WALL), under(back + WALL));
        if (gap < Infinity) tip = Math.max(tip, up - gap);
      }
    }
    return tip;
  };

  const count = Math.max(2, Math.ceil(final / ((GRID * Math.PI) / 180)) + 1);
  const table = Array.from({ length: count }, (_, k) => {
    const x = (final * k) / (count - 1);
    return { tip: tipAt(x), low: apply(compose(lowAt(x), lowLine), [0, 0, 0]) };
  });
  const between = (pick: (p: (typeof table)[number]) => number): ((x: number) => number) => (x) => {
    const place = (x / final) * (count - 1);
    const k = Math.min(count - 2, Math.max(0, Math.floor(place)));
    return pick(table[k]!) + (pick(table[k + 1]!) - pick(table[k]!)) * (place - k);
  };
  const paths = table.reduce<{ low: number; ram: number }[]>((sums, p, k) => {
    const before = table[k - 1];
    const last = sums[k - 1];
    return [...sums, before && last ? { low: last.low + Math.hypot(p.low[1] - before.low[1], p.low[2] - before.low[2]), ram: last.ram + Math.abs(p.tip - before.tip) } : { low: 0, ram: 0 }];
  }, []);
  const along = (what: 'low' | 'ram', x0: number, x1: number): number => {
    const at = (x: number): number => {
      const place = (x / final) * (count - 1);
      const k = Math.min(count - 2, Math.max(0, Math.floor(place)));
      return paths[k]![what] + (paths[k + 1]![what] - paths[k]![what]) * (place - k);
    };
    return Math.abs(at(x1) - at(x0)) * BETWEEN;
  };
  // a point of the metal between hangs on no more curved and straight length than all of it, and on its distance from the neutral line
  const lengthAll = sheet.allowances[first]! + sheet.allowances[second]! + webWidth(sheet, plates.web, bend) + 4 * t;
  const fromWing = (e: Element, x0: number, x1: number): number => (e.running ? lengthAll * Math.abs(x1 - x0) : along('low', x0, x1));
  const fromBed = (e: Element, x0: number, x1: number): number => (e.running ? lengthAll * Math.abs(x1 - x0) : e.wing === lowWing ? along('low', x0, x1) : 0);
  return {
    root, web, lowWing, tip: between((p) => p.tip),
    travel: { fromWing, fromBed, fromPunch: (e, x0, x1) => fromBed(e, x0, x1) + along('ram', x0, x1) },
  };
};

const webWidth = (sheet: Developed, web: number, bend: Developed['part']['bends'][number]): number => {
  const frame = invert(sideFrame(bend.sides.find((s) => s.plate === web)!.line));
  return Math.max(...sheet.part.plates[web]!.outline.map((v) => Math.abs(apply(frame, [v.x, v.y, 0])[1])));
};
