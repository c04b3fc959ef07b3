import { bendLine } from './bentPieces.js';
import type { Conflict } from './conflict.js';
import { exactDepth } from './exactDepth.js';
import { exactPlateDepth } from './exactPlateDepth.js';
import { exactRoomAlong } from './exactRoomAlong.js';
import type { Group } from './groups.js';
import type { TrialInput } from './input.js';
import { type Twice, anglesIn } from './states.js';
import { needOf, settingOf } from './strokeOption.js';
import type { Blocked } from './task.js';
import type { Tooling } from './tooling.js';
import { viewer } from './views.js';

/** Gives a conflict that is to be told its exact depth. */
export const measuring = (tooling: Tooling, groups: readonly Group[], twice: Twice, machine: TrialInput['machine']): ((b: Blocked, c: Conflict) => Conflict) => {
  const look = viewer(tooling.sheet);
  const angles = anglesIn(tooling.sheet.part, twice);
  return ({ action, mask }, conflict) => {
    const setting = settingOf(tooling, machine, groups[action.group]!, action.gaugeSide, tooling.pairs[action.pair]!, look, angles(mask));
    const need = needOf(bendLine(tooling.sheet.part, setting.seat, setting.group));
    const by = exactDepth(setting, conflict, need) ?? exactPlateDepth(setting, conflict) ?? exactRoomAlong(setting, conflict, need);
    return by === null ? conflict : { ...conflict, by };
  };
};
