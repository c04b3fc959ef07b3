import { DEMO_FLOOR_DATA } from './demoFloorData.js';
import { DEMO_RACK_DATA } from './demoRackData.js';
import type { Machine } from './machine.js';
import { parseFloor } from './parseFloor.js';
import { parseRack } from './parseRack.js';
import type { Rack } from './tool.js';

/** The five invented machines of the demo floor. */
export const demoFloor = (): readonly Machine[] => {
  const floor = parseFloor(DEMO_FLOOR_DATA);
  if (!floor.ok) throw new Error(floor.fault.sentence);
  return floor.value;
};

/** The invented tools that stand beside it. */
export const demoRack = (): Rack => {
  const rack = parseRack(DEMO_RACK_DATA);
  if (!rack.ok) throw new Error(rack.fault.sentence);
  return rack.value;
};
