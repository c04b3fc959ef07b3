import { useId } from 'react';
import { type Contour, type Vec2, flatten } from '../../geometry/index.js';
import type { Blank } from '../../sheet/index.js';
import { degrees, figure } from '../wording.js';

/** The drawing's own measure: about a pixel where the sheet has its usual width. */
const WIDE = 400;
const MARGIN = { left: 36, top: 34, right: 8, bottom: 8 } as const;
const TALLEST = 330;
/** Where along its line a bend's label stands: neighbours take turns, so that close lines do not cover each other's. */
const PLACES = [0.5, 0.26, 0.74] as const;
/** A line shorter than this has room for its name alone. */
const ROOM = 74;

const pathOf = (rings: readonly (readonly Vec2[])[]): string =>
  rings.map((ring) => `M${ring.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}Z`).join('');

/** An upright dimension's arrow head, pointing along (dx, dy). */
const head = (x: number, y: number, dx: number, dy: number): string =>
  `M${x} ${y}L${x - 8 * dx - 2.4 * dy} ${y - 8 * dy + 2.4 * dx}L${x - 8 * dx + 2.4 * dy} ${y - 8 * dy - 2.4 * dx}Z`;

/** The flat blank with its dimensions and bend lines; those of `lit` bends in the accent. */
export const BlankDrawing = ({ blank, lit, title }: { readonly blank: Blank; readonly lit: readonly string[]; readonly title: string }) => {
  const id = useId();
  const a = (-blank.angle * Math.PI) / 180;
  const turn = ([x, y]: Vec2): Vec2 => [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
  const rings = [blank.outline, ...blank.holes].map((contour: Contour) => flatten(contour, 0.05).map(turn));
  const [xs, ys] = [rings[0]!.map((p) => p[0]), rings[0]!.map((p) => p[1])];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((WIDE - MARGIN.left - MARGIN.right) / (x1 - x0), (TALLEST - MARGIN.top - MARGIN.bottom) / (y1 - y0));
  const [w, h] = [(x1 - x0) * scale, (y1 - y0) * scale];
  const left = MARGIN.left + (WIDE - MARGIN.left - MARGIN.right - w) / 2;
  const on = ([x, y]: Vec2): Vec2 => [left + (x - x0) * scale, MARGIN.top + (y1 - y) * scale];
  const tall = MARGIN.top + h + MARGIN.bottom;
  const [right, bottom, row, column] = [left + w, MARGIN.top + h, MARGIN.top - 14, left - 14];
  const wideBox = Math.abs(x1 - x0 - blank.length) < Math.abs(y1 - y0 - blank.length);
  const [across, down] = wideBox ? [blank.length, blank.width] : [blank.width, blank.length];
  return (
    <svg className="blank" viewBox={`0 0 ${WIDE} ${tall.toFixed(1)}`} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      <path d={pathOf(rings.map((ring) => ring.map(on)))} className="cut" fillRule="evenodd" />
      {blank.bendLines.map((line, i) => {
        const [p, q] = [on(turn(line.from)), on(turn(line.to))];
        const long = Math.hypot(q[0] - p[0], q[1] - p[1]);
        let turned = (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
        if (turned > 90.5 || turned <= -90) turned += turned > 0 ? -180 : 180;
        if (Math.abs(turned - 90) < 0.5) turned = -90;
        const share = PLACES[i % PLACES.length]!;
        const at = [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share] as const;
        return (
          <g key={line.id} className={lit.includes(line.id) ? 'bend-line lit' : 'bend-line'}>
            <line x1={p[0]} y1={p[1]} x2={q[0]} y2={q[1]} strokeDasharray={line.direction === 'A' ? '12 3 2 3' : '4 3'} />
            <text x={at[0]} y={at[1]} dy="0.34em" textAnchor="middle" transform={`rotate(${turned.toFixed(1)} ${at[0]} ${at[1]})`}>
              {long > ROOM ? `${line.id} ${line.direction} ${degrees(line.bendAngle)}` : line.id}
            </text>
          </g>
        );
      })}
      <g className="dimension">
        <path d={`M${left} ${MARGIN.top - 3}V${row - 4}M${right} ${MARGIN.top - 3}V${row - 4}M${left} ${row}H${right}M${left - 3} ${MARGIN.top}H${column - 4}M${left - 3} ${bottom}H${column - 4}M${column} ${MARGIN.top}V${bottom}`} />
        <path className="head" d={head(right, row, 1, 0) + head(left, row, -1, 0) + head(column, bottom, 0, 1) + head(column, MARGIN.top, 0, -1)} />
        <text x={(left + right) / 2} y={row - 5} textAnchor="middle">{figure(across, 2)}</text>
        <text x={column - 6} y={(MARGIN.top + bottom) / 2} textAnchor="middle" transform={`rotate(-90 ${column - 6} ${(MARGIN.top + bottom) / 2})`}>{figure(down, 2)}</text>
      </g>
    </svg>
  );
};
