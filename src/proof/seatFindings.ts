import { type Rigid, type Vec3, apply, compose } from '../geometry/index.js';
import type { Placed } from '../trial/index.js';
import { sideFrame } from './bendShape.js';
import { platePoses } from './fold.js';
import type { Metal } from './metal.js';
import { metalSpans } from './metalSpans.js';
import type { Setting } from './setting.js';
import { mm } from './stepLog.js';
import { COLLINEAR, SEGMENT_PLAY, UNCOVERED_END } from './tolerances.js';

/** Poses of all plates in the machine with the running bends at x. */
export const machinePoses = (setting: Setting, metal: Metal, angles: readonly number[], x: number): ReadonlyMap<number, Rigid> => {
  const at = angles.map((a, i) => (setting.running.has(i) ? x : a));
  const gauge = setting.root('gauge', x);
  const poses = platePoses(setting.sheet, metal.shapes, at, setting.wings.roots.gauge);
  return new Map([...poses].map(([plate, pose]) => [plate, compose(gauge, pose)]));
};

/** Where the middle of the arc, seen flat or bent, lies against the bending plane. */
const lineEnds = (setting: Setting, poses: ReadonlyMap<number, Rigid>, index: number): readonly (readonly [Vec3, Vec3])[] => {
  const bend = setting.sheet.part.bends[index]!;
  return bend.sides.map(({ plate, line }) => {
    const frame = compose(poses.get(plate)!, sideFrame(line));
    const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
    return [apply(frame, [0, 0, 0]), apply(frame, [length, 0, 0])];
  });
};

/** Hems closed together: each wing's lines lie where the first bend's do. The worst that does not, or null. */
const closingLines = (setting: Setting, poses: ReadonlyMap<number, Rigid>): { readonly id: string; readonly by: number } | null => {
  const linesOf = (index: number): ReadonlyMap<string, Vec3> =>
    new Map(lineEnds(setting, poses, index).map(([p], k) => [setting.wings.ofPlate.get(setting.sheet.part.bends[index]!.sides[k]!.plate)!, p]));
  const first = linesOf(setting.first);
  for (const i of setting.running) {
    const by = Math.max(...[...linesOf(i)].map(([wing, p]) => Math.max(Math.abs(p[1] - first.get(wing)![1]), Math.abs(p[2] - first.get(wing)![2]))));
    if (by > COLLINEAR) return { id: setting.sheet.part.bends[i]!.id, by };
  }
  return null;
};

/**
 * Bends of one stroke lie on one line: before the stroke and under load, both lines of each lie where those of the
 * first do, the same height, the same way from the bending plane, parallel to the bed; and they turn the same way.
 */
export const collinearFindings = (setting: Setting, metal: Metal, angles: readonly number[]): string[] => {
  const { step, sheet } = setting;
  const findings: string[] = [];
  // the two lines of an offset lie beside each other: stepping.ts and offsetFindings.ts hold them
  if (setting.offset) return findings;
  for (const x of [setting.before, setting.load]) {
    const poses = machinePoses(setting, metal, angles, x);
    if (setting.closes) {
      const wrong = closingLines(setting, poses);
      if (wrong !== null) {
        findings.push(`Step ${step.number}: bend ${wrong.id} lies ${mm(wrong.by)} mm off the line of bend ${sheet.part.bends[setting.first]!.id}; one stroke cannot close both.`);
        return findings;
      }
      continue;
    }
    const [first] = lineEnds(setting, poses, setting.first);
    const [away, height] = [Math.abs(first![0][1]), first![0][2]];
    for (const i of setting.running) {
      const wrong = Math.max(
        ...lineEnds(setting, poses, i)
          .flat()
          .map((p) => Math.max(Math.abs(Math.abs(p[1]) - away), Math.abs(p[2] - height))),
      );
      if (wrong <= COLLINEAR) continue;
      findings.push(`Step ${step.number}: bend ${sheet.part.bends[i]!.id} lies ${mm(wrong)} mm off the line of bend ${sheet.part.bends[setting.first]!.id}; one stroke cannot make both.`);
      return findings;
    }
  }
  return findings;
};

/** Tools joined where they stand side by side. */
const covered = (row: readonly Placed[]): (readonly [number, number])[] => {
  const out: [number, number][] = [];
  for (const p of [...row].sort((a, b) => a.from - b.from)) {
    const last = out[out.length - 1];
    if (last !== undefined && p.from <= last[1] + SEGMENT_PLAY) last[1] = Math.max(last[1], p.from + p.length);
    else out.push([p.from, p.from + p.length]);
  }
  return out;
};

/** Punch and die each bear on every piece of metal in a running bend, but for a little at either end of it. */
export const coverFindings = (setting: Setting, metal: Metal, angles: readonly number[]): string[] => {
  const { step, station, sheet } = setting;
  const poses = machinePoses(setting, metal, angles, setting.before);
  const findings: string[] = [];
  for (const i of setting.running) {
    const bend = sheet.part.bends[i]!;
    const frame = compose(poses.get(bend.sides[0].plate)!, sideFrame(bend.sides[0].line));
    for (const [u0, u1] of metalSpans(bend.zone)) {
      const ends = [apply(frame, [u0, 0, 0])[0], apply(frame, [u1, 0, 0])[0]];
      const [from, to] = [Math.min(...ends), Math.max(...ends)];
      for (const [word, row] of [['punch', station.punchSegments], ['die', station.dieSegments]] as const) {
        const bare = Math.min(
          Infinity,
          ...covered(row).map(([a, b]) => Math.max(a - from, to - b, 0)),
        );
        if (bare <= UNCOVERED_END + COLLINEAR) continue;
        findings.push(
          bare === Infinity
            ? `Step ${step.number}: station ${station.id} has no ${word}.`
            : `Step ${step.number}: the ${word} of station ${station.id} leaves ${mm(bare)} mm at an end of bend ${bend.id} uncovered; ${UNCOVERED_END} mm are allowed.`,
        );
      }
    }
  }
  return findings;
};
