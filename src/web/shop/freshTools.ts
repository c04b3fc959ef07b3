import type { Tree } from './tree.js';
import type { ToolList } from './useToolOfRack.js';

// a usual shape to begin with; what only the tool itself or its papers can say is empty until it is typed
const TOOL = { name: '', demo: false, includedAngle: '', height: '', rating: '', reversible: true, segments: [], weight: '' };

/** What a new tool starts from, by the id that stands for it in an address. */
export const FRESH_TOOLS: Readonly<Record<string, readonly [ToolList, Tree]>> = {
  'new-punch': ['punches', { kind: 'punch', id: 'new-punch', ...TOOL, tang: 'tang A', shape: 'straight', tipRadius: '', profile: { shape: 'straight', bodyWidth: 12, bodyTop: 78, shoulderWidth: 30, shoulderFrom: 92 } }],
  'new-die': ['dies', { kind: 'die', id: 'new-die', ...TOOL, tang: 'seat A', shape: 'V', v: '', vConvention: 'sharp', shoulderRadius: '', profile: { shape: 'block', topWidth: 26, baseWidth: 30, stepAt: 30, flat: 0.6 } }],
  'new-riser': ['risers', { id: 'new-riser', height: '', seat: 'seat A', length: '', width: '' }],
};
