import type { ConditionRecord } from './condition.js';
import { DEMO_CONDITION_DATA } from './demoConditionData.js';
import { DEMO_FLOOR_DATA } from './demoFloorData.js';
import { DEMO_RACK_DATA } from './demoRackData.js';
import type { Machine } from './machine.js';
import { parseCondition } from './parseCondition.js';
import { parseFloor } from './parseFloor.js';
import { parseRack } from './parseRack.js';
import type { Rack } from './tool.js';
import { withCondition } from './withCondition.js';

/** The five invented machines of the demo floor, as data to be parsed, and the record of the one that was taken in used. */
export const demoShopData = (): { readonly machines: readonly { readonly id: string; readonly name: string }[]; readonly rack: object; readonly conditions: readonly ConditionRecord[] } => {
  const record = parseCondition(DEMO_CONDITION_DATA);
  if (!record.ok) throw new Error(record.fault.sentence);
  return { machines: DEMO_FLOOR_DATA, rack: DEMO_RACK_DATA, conditions: [record.value] };
};

/** The five invented machines of the demo floor, the used one as its record lets it be promised on. */
export const demoFloor = (): readonly Machine[] => {
  const floor = parseFloor(DEMO_FLOOR_DATA);
  if (!floor.ok) throw new Error(floor.fault.sentence);
  const { conditions } = demoShopData();
  return floor.value.map((machine) => {
    const record = conditions.find(({ machineId }) => machineId === machine.id);
    return record ? withCondition(machine, record) : machine;
  });
};

/** The invented tools that stand beside it. */
export const demoRack = (): Rack => {
  const rack = parseRack(DEMO_RACK_DATA);
  if (!rack.ok) throw new Error(rack.fault.sentence);
  return rack.value;
};
