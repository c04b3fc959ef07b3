import type { Vec2 } from '../../geometry/index.js';
import { apply, compose } from '../../geometry/index.js';
import { type Developed, alongArc, bendFrame, fold } from '../../sheet/index.js';
import { degrees } from '../wording.js';

const WIDE = 420;
const TALL = 250;
const EDGE = 40;
/** Points on the arc of a bend. */
const ARC = 16;

/** The section of a profile, as folded: the sheet by its middle line as thick as it is, flanges by number, bends by their angle. */
export const SectionPicture = ({ sheet, lit }: { readonly sheet: Developed; readonly lit: number | undefined }) => {
  const { part } = sheet;
  const { poses } = fold(sheet, part.bends.map(({ bendAngle }) => bendAngle), Math.floor((part.plates.length - 1) / 2));
  const point = (p: readonly [number, number, number]): Vec2 => [p[1], p[2]];
  const flanges = part.plates.map((plate, i) => {
    const ys = plate.outline.map(({ y }) => y);
    return [Math.min(...ys), Math.max(...ys)].map((y) => point(apply(poses[i]!, [0, y, 0]))) as [Vec2, Vec2];
  });
  const arcs = part.bends.map(({ sides, bendAngle }, i) => {
    const base = compose(poses[sides[0].plate]!, bendFrame(sides[0].line));
    return Array.from({ length: ARC + 1 }, (_, k) => point(apply(compose(base, alongArc(sheet, i, bendAngle, k / ARC)), [0, 0, 0])));
  });
  const all = [...flanges.flat(), ...arcs.flat()];
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((WIDE - 2 * EDGE) / Math.max(x1 - x0, 1), (TALL - 2 * EDGE) / Math.max(y1 - y0, 1));
  const left = (WIDE - (x1 - x0) * scale) / 2;
  const tall = (y1 - y0) * scale + 2 * EDGE;
  const at = ([x, y]: Vec2): Vec2 => [left + (x - x0) * scale, EDGE + (y1 - y) * scale];
  const path = (points: readonly Vec2[]): string => `M${points.map((p) => at(p).map((v) => v.toFixed(2)).join(' ')).join('L')}`;
  const thick = Math.max(1.2, part.thickness * scale);
  return (
    <svg className="blank section-picture" viewBox={`0 0 ${WIDE} ${tall.toFixed(1)}`} role="img" aria-label={`Section: ${part.plates.length} flanges, bend angles ${part.bends.map(({ bendAngle, direction }) => `${degrees(bendAngle)} towards ${direction}`).join(', ') || 'none'}`}>
      {arcs.map((points, i) => <path key={i} d={path(points)} className="metal" strokeWidth={thick} />)}
      {flanges.map((ends, i) => <path key={i} d={path(ends)} className={lit === i ? 'metal lit' : 'metal'} strokeWidth={thick} />)}
      {flanges.map((ends, i) => {
        const [p, q] = ends.map(at) as [Vec2, Vec2];
        const length = Math.max(Math.hypot(q[0] - p[0], q[1] - p[1]), 1e-9);
        // balloons stand on the A side
        const off = thick / 2 + 13;
        const [cx, cy] = [(p[0] + q[0]) / 2 + ((q[1] - p[1]) / length) * off, (p[1] + q[1]) / 2 - ((q[0] - p[0]) / length) * off];
        return <g key={i} className="flange-number"><circle cx={cx} cy={cy} r={9} /><text x={cx} y={cy} dy="0.35em" textAnchor="middle">{i + 1}</text></g>;
      })}
    </svg>
  );
};
