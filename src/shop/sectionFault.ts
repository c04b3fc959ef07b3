import type { ProfileFault } from './profileFault.js';
import type { RawSection } from './sectionSchema.js';

/** Why a machine's parameters draw no simple outline, by the parameter that is the cause; undefined where none is found. It refuses nothing of its own. */
export const sectionFault = (s: RawSection): ProfileFault | undefined => {
  switch (s.shape) {
    case 'rectangle':
      for (const side of ['back', 'up'] as const) {
        const [from, to] = s[side];
        if (from >= to) return { field: `${side}.0`, what: `(${from} mm) must be less than where it ends (${to} mm)` };
      }
      return undefined;
    case 'clamp':
      return s.chamfer >= Math.min(s.width / 2, s.height) ? { field: 'chamfer', what: `(${s.chamfer} mm) must be less than half the width (${s.width / 2} mm) and less than the height (${s.height} mm)` } : undefined;
    case 'bed': {
      const slope = Math.max(0, (s.bodyWidth - s.topWidth) / 2);
      const most = s.depth - slope;
      if (most <= 0) return { field: 'depth', what: `(${s.depth} mm) must be more than ${s.topDepth + slope} mm: down to ${s.topDepth} mm, then a slope ${slope} mm high` };
      return s.topDepth >= most ? { field: 'topDepth', what: `(${s.topDepth} mm) must be less than ${most} mm, where the slope to the width below begins` } : undefined;
    }
    case 'finger':
      if (s.stepBehind >= s.length) return { field: 'stepBehind', what: `(${s.stepBehind} mm) must be less than the finger's length (${s.length} mm)` };
      return s.clear + s.drop >= s.length ? { field: 'clear', what: `(${s.clear} mm) and the drop behind (${s.drop} mm) must together be less than the finger's length (${s.length} mm)` } : undefined;
    case 'beam':
    case 'contour':
      return undefined;
  }
};
