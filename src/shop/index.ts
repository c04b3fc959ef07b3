export type { Axis, Finger, FingerFace, Known, Machine, MachineOption, OptionEffect } from './machine.js';
export type { Die, Punch, Rack, Riser, Segment, Tool } from './tool.js';
export type { Result } from './result.js';
export type { DataFault } from './dataFault.js';
export { asDrawn } from './asDrawn.js';
export { demoFloor, demoRack } from './demo.js';
export { parseFloor } from './parseFloor.js';
export { parseRack } from './parseRack.js';
export { withOptions } from './withOptions.js';
export { inventedDie, inventedGooseneck, onAdapter } from './inventedTools.js';
export { halfOpening } from './profiles.js';
export { type Facing, mirrorProfile, profileOf } from './mirrorProfile.js';

export { punchPenetration } from './punchPenetration.js';
export { type ToolSlab, toolSlabs } from './toolSlabs.js';
