import { type Contour, bounds, flatten } from '../../geometry/index.js';
import { figure } from '../wording.js';

export interface Piece {
  readonly contour: Contour;
  readonly name: string;
  /** Where its origin lies in the picture: back, up. mm */
  readonly at: readonly [number, number];
  readonly look: 'tool' | 'machine' | 'gauge';
}

const WIDE = 420;
const EDGE = 46;
/** mm by which arcs are drawn as chords. */
const CHORD = 0.05;

/** Cross-sections in one picture, as seen from the operator's right: the gauge to the right, sizes along the edges, a cross at the origin. */
export const SectionView = ({ pieces, title, tallest = 460 }: { readonly pieces: readonly Piece[]; readonly title: string; readonly tallest?: number }) => {
  const rings = pieces.map(({ contour, at, ...rest }) => ({ ...rest, points: flatten(contour, CHORD).map(([x, y]) => [x + at[0], y + at[1]] as const) }));
  const all = rings.flatMap(({ points }) => points);
  if (all.length === 0) return null;
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])];
  const [x0, x1, y0, y1] = [Math.min(0, ...xs), Math.max(0, ...xs), Math.min(0, ...ys), Math.max(0, ...ys)];
  const scale = Math.min((WIDE - 2 * EDGE) / Math.max(x1 - x0, 1), (tallest - 2 * EDGE) / Math.max(y1 - y0, 1));
  const tall = (y1 - y0) * scale + 2 * EDGE;
  const left = (WIDE - (x1 - x0) * scale) / 2;
  const px = (x: number): number => left + (x - x0) * scale;
  const py = (y: number): number => EDGE + (y1 - y) * scale;
  const [lo, hi] = bounds(pieces.map(({ contour, at }) => contour.map((v) => ({ ...v, x: v.x + at[0], y: v.y + at[1] }))));
  const below = py(y0) + 18;
  const beside = px(x1) + 16;
  return (
    <svg className="shop-section" viewBox={`0 0 ${WIDE} ${tall.toFixed(1)}`} role="img" aria-label={title}>
      {rings.map(({ points, name, look }, i) => <path key={`${name} ${i}`} className={look} d={`M${points.map(([x, y]) => `${px(x).toFixed(2)} ${py(y).toFixed(2)}`).join('L')}Z`}><title>{name}</title></path>)}
      <path className="centre" d={`M${px(0)} ${EDGE - 14}V${tall - EDGE + 14}`} />
      <path className="cross" d={`M${px(0) - 6} ${py(0)}h12M${px(0)} ${py(0) - 6}v12`} />
      <g className="size"><path d={`M${px(lo[0])} ${below}H${px(hi[0])}M${px(lo[0])} ${below - 4}v8M${px(hi[0])} ${below - 4}v8`} /><text x={(px(lo[0]) + px(hi[0])) / 2} y={below + 15} textAnchor="middle">{figure(hi[0] - lo[0], 1)}</text></g>
      <g className="size"><path d={`M${beside} ${py(lo[1])}V${py(hi[1])}M${beside - 4} ${py(lo[1])}h8M${beside - 4} ${py(hi[1])}h8`} /><text x={beside + 13} y={(py(lo[1]) + py(hi[1])) / 2} textAnchor="middle" transform={`rotate(-90 ${beside + 13} ${(py(lo[1]) + py(hi[1])) / 2})`}>{figure(hi[1] - lo[1], 1)}</text></g>
    </svg>
  );
};
