import type { Interval } from '../../geometry/index.js';
import type { Machine } from '../../shop/index.js';
import { resultantOf } from '../bentPieces.js';
import { span } from '../stopTargets.js';
import type { Planned } from '../task.js';
import { reachesFrames } from '../toolClearance.js';
import type { RowUse } from './row.js';

/** What a stroke asks of a row of stations. `force` in N */
export const useOf = ({ option }: Planned, machine: Machine, force: number): RowUse => {
  const { need, tools, stop, setting } = option;
  const half = machine.gauge.finger.width / 2;
  const sheet = setting.views.flatMap((v) => v.pieces.flatMap((p) => p.along));
  const metal = [...sheet, ...stop.z.flatMap((z) => [z - half, z + half])];
  const ends = (all: readonly number[]): Interval => [Math.min(...all), Math.max(...all)];
  // neither cylinder pulls, nor bears more than half the rating
  const middle = resultantOf(setting.sheet.part, setting.seat, setting.group);
  const reach = (machine.cylinders.spacing / 2) * Math.min(1, machine.rating / force - 1);
  const frames: Interval = reachesFrames(setting) ? [-machine.betweenFrames / 2 - ends(sheet)[0], machine.betweenFrames / 2 - ends(sheet)[1]] : [-Infinity, Infinity];
  const [zLeast, zMost] = span(machine.gauge.z);
  const z: Interval = [zLeast - Math.min(...stop.z), zMost - Math.max(...stop.z)];
  return { need, window: tools.window, metal: ends(metal), place: [Math.max(-reach - middle, frames[0], z[0]), Math.min(reach - middle, frames[1], z[1])] };
};

/** Does the part come or go sideways along the tools? */
export const leavesSideways = ({ option: { tools } }: Planned): boolean => tools.wayIn.by === 'side' || tools.wayOut.by === 'side';
