import { type Bend, type Developed, fold } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import type { Group } from './groups.js';
import { plainness } from './plainness.js';
import { smallerSide } from './smallerSide.js';
import { settingOf } from './strokeOption.js';
import { type Stroke, touchOf, travelOf } from './stroke.js';
import type { Action } from './task.js';
import { TIME, leastStroke } from './time.js';
import { leastWays } from './toolClearance.js';
import type { Tooling } from './tooling.js';
import type { viewer } from './views.js';
import type { Way } from './ways.js';

interface Asked {
  readonly tooling: Tooling;
  readonly machine: Machine;
  readonly groups: readonly Group[];
  readonly look: ReturnType<typeof viewer>;
  /** Each bend's angle with these bits made, in degrees. */
  readonly angles: (mask: number) => (bend: number) => number;
  readonly handling: number;
  /** What a way in and a way out cost beyond the least stroke. s */
  readonly waysCost: (stroke: Stroke, wayIn: Way, wayOut: Way) => number;
}

/** Where the gauge lies seen from the bend's line, as an angle in the blank's plane, with each of its sides to the gauge. Degrees, 0 to 360. */
const towardsGauge = (sheet: Developed, { sides: [{ line, plate }] }: Bend): ((gaugeSide: 0 | 1) => number) => {
  const pose = fold(sheet, sheet.part.bends.map(() => 0)).poses[plate]!;
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const u = [pose.x[0] * dx + pose.y[0] * dy, pose.x[1] * dx + pose.y[1] * dy] as const;
  return (gaugeSide) => {
    // the gauge lies to the bend line's left when side 1 points there
    const turned = Math.atan2(u[0], -u[1]) * (180 / Math.PI) + (gaugeSide === 1 ? 0 : 180);
    return ((turned % 360) + 360) % 360;
  };
};

/** Every way to put a group into the machine: each side to the gauge, each pair of tools that may bend it. */
export const actionsOf = ({ tooling, machine, groups, look, angles, handling, waysCost }: Asked): readonly Action[] => {
  const { sheet, pairs } = tooling;
  return groups.flatMap((group, g) => {
    const first = group.bends[0]!;
    const bend = sheet.part.bends[first]!;
    const towards = towardsGauge(sheet, bend);
    const sides = group.closes ? [smallerSide(sheet.part, first)] : ([0, 1] as const);
    // the flange beyond the second bend comes out higher: it lies where the tools have their high land
    const stands = (gaugeSide: 0 | 1, pair: number): boolean => !group.offset || (gaugeSide === group.hubSide) === (pairs[pair]!.punchFacing === 'as drawn');
    return sides.flatMap((gaugeSide) => (group.closes ? tooling.closing : tooling.pairsOf[first]!).filter((pair) => stands(gaugeSide, pair)).map((pair): Action => {
      const setting = settingOf(tooling, machine, group, gaugeSide, pairs[pair]!, look, angles(group.needs ?? 0));
      const stroke = setting.bend;
      return {
        group: g, gaugeSide, pair, sideUp: bend.direction, towards: towards(gaugeSide), plainness: plainness(pairs[pair]!),
        leastExtra: Math.min(...leastWays(setting).map((w) => waysCost(stroke, w.wayIn, w.wayOut))),
        base: TIME.seat * handling + leastStroke(machine, travelOf(stroke), touchOf(stroke)),
      };
    }));
  });
};
