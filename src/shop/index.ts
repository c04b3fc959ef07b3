export type { Axis, Finger, FingerFace, Known, Machine, MachineOption } from './machine.js';
export type { Die, Punch, Rack, Riser, Segment, Tool } from './tool.js';
