import { type Vec3, scale3, unit3 } from '../../geometry/index.js';
import type { Surface } from '../step/brep.js';
import { fromLine } from './patches.js';

/** Unit normal out of the metal at a point of a plane or cylinder; undefined on other surfaces. */
export const outwardAt = (surface: Surface, p: Vec3): Vec3 | undefined => {
  if (surface.kind === 'plane') return surface.normal;
  if (surface.kind === 'cylinder') return scale3(unit3(fromLine(p, surface.origin, unit3(surface.axis))), surface.hollow ? -1 : 1);
  return undefined;
};
