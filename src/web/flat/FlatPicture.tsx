import { type Vec2, flatten, vertex } from '../../geometry/index.js';
import type { DxfPartResult } from '../../intake/index.js';

type Seen = DxfPartResult['seen'];

const WIDE = 420;
const TALL = 300;
const EDGE = 8;

/** A drawing's lines by what they are taken for: cut lines whole, bend lines dashed (towards A long, towards B short), others faint. */
export const FlatPicture = ({ seen }: { readonly seen: Seen }) => {
  const roles = new Map(seen.layers.map(({ key, role }) => [key, role]));
  const lines = seen.curves.map(({ from, to, bulge, key }) => ({
    role: roles.get(key) ?? 'ignore',
    points: bulge === 0 ? [from, to] : [...flatten([vertex(...from, bulge), vertex(...to)], 0.1), to],
  }));
  const all = lines.filter(({ role }) => role !== 'ignore').flatMap(({ points }) => points);
  if (all.length === 0) return null;
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of all) [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  const scale = Math.min((WIDE - 2 * EDGE) / Math.max(x1 - x0, 1e-9), (TALL - 2 * EDGE) / Math.max(y1 - y0, 1e-9));
  const tall = (y1 - y0) * scale + 2 * EDGE;
  const left = (WIDE - (x1 - x0) * scale) / 2;
  const at = ([x, y]: Vec2): string => `${(left + (x - x0) * scale).toFixed(1)} ${(EDGE + (y1 - y) * scale).toFixed(1)}`;
  const path = (role: string): string => lines.filter((line) => line.role === role).map(({ points }) => `M${points.map(at).join('L')}`).join('');
  return (
    <svg className="blank flat-picture" viewBox={`0 0 ${WIDE} ${tall.toFixed(1)}`} role="img" aria-label="The drawing as it is taken: cut lines whole, bend lines dashed, other lines faint">
      <path d={path('ignore')} className="left-out" />
      <path d={path('cut')} className="cut-line" />
      {(['bend', 'bend A', 'bend B'] as const).map((role) => <path key={role} d={path(role)} className="bend-stroke" strokeDasharray={role === 'bend B' ? '4 3' : role === 'bend A' ? '12 3' : '12 3 2 3'} />)}
    </svg>
  );
};
