import { type Contour, reversed, vertex } from '../geometry/index.js';
import type { Tool } from './tool.js';

/** How a tool stands: as its profile is drawn (+x to the back), or with front and back exchanged. */
export type Facing = 'as drawn' | 'reversed';

/** Front and back exchanged; still counter-clockwise. */
export const mirrorProfile = (contour: Contour): Contour =>
  reversed(contour.map((v) => vertex(v.x === 0 ? 0 : -v.x, v.y, v.bulge === 0 ? 0 : -v.bulge)));

/** The tool's cross-section in (back, up) as it stands. */
export const profileOf = (tool: Tool, facing: Facing): Contour =>
  facing === 'as drawn' ? tool.profile : mirrorProfile(tool.profile);

