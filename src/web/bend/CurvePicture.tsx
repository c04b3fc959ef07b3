import { useSyncExternalStore } from 'react';
import type { AirBendCurve } from '../../forming/index.js';

/** Units of the drawing, and what is left round it for figures and words; on a narrow page the words of the two axes stand one under the other. */
const WIDE = { size: { width: 640, height: 300 }, room: { left: 62, right: 62, top: 26, bottom: 46 } } as const;
const NARROW = { size: { width: 350, height: 300 }, room: { left: 42, right: 42, top: 44, bottom: 46 } } as const;

const isNarrow = matchMedia('(max-width: 560px)');
const watchWidth = (changed: () => void): (() => void) => {
  isNarrow.addEventListener('change', changed);
  return () => isNarrow.removeEventListener('change', changed);
};

/** A round step that divides a range into about five. */
const stepOf = (range: number): number => {
  const rough = range / 5;
  const ten = 10 ** Math.floor(Math.log10(rough));
  return ten * [1, 2, 5, 10].find((m) => m * ten >= rough)!;
};
const ticks = (to: number): number[] => {
  const step = stepOf(to);
  return Array.from({ length: Math.floor(to / step + 1e-9) + 1 }, (_, i) => Number((i * step).toPrecision(6)));
};

/** Force (solid) and bend angle under load (dashed) against depth, with the depth that makes the bend. */
export const CurvePicture = ({ curve, depth }: { readonly curve: AirBendCurve; readonly depth: number | null }) => {
  const narrow = useSyncExternalStore(watchWidth, () => isNarrow.matches);
  const { size, room } = narrow ? NARROW : WIDE;
  const { points } = curve;
  const last = points[points.length - 1]!;
  const most = { depth: last.depth, force: Math.max(...points.map((p) => p.forcePerLength)) * 1.1, angle: last.bendAngleUnderLoad * 1.05 };
  const x = (d: number): number => room.left + (d / most.depth) * (size.width - room.left - room.right);
  const y = (share: number): number => size.height - room.bottom - share * (size.height - room.top - room.bottom);
  const path = (of: (p: (typeof points)[number]) => number): string => points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.depth).toFixed(1)} ${y(of(p)).toFixed(1)}`).join('');
  const base = y(0);
  return (
    <svg className="curve" viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label="Force per length and bend angle under load against depth from first touch">
      {ticks(most.depth).map((d) => (
        <g key={`d${d}`}><line className="tick" x1={x(d)} x2={x(d)} y1={base} y2={base + 5} /><text x={x(d)} y={base + 19} textAnchor="middle">{d}</text></g>
      ))}
      {ticks(most.force).map((f) => (
        <g key={`f${f}`}><line className="grid" x1={room.left} x2={size.width - room.right} y1={y(f / most.force)} y2={y(f / most.force)} /><text x={room.left - 7} y={y(f / most.force) + 4} textAnchor="end">{f}</text></g>
      ))}
      {ticks(most.angle).map((a) => <text key={`a${a}`} x={size.width - room.right + 7} y={y(a / most.angle) + 4}>{a}°</text>)}
      <path className="axes" d={`M${room.left} ${room.top}V${base}H${size.width - room.right}V${room.top}`} />
      <path className="force" d={path((p) => p.forcePerLength / most.force)} />
      <path className="angle" d={path((p) => p.bendAngleUnderLoad / most.angle)} />
      {depth !== null && <><line className="here" x1={x(depth)} x2={x(depth)} y1={room.top} y2={base} /><text className="here" x={x(depth) - 6} y={room.top + 14} textAnchor="end">depth {depth.toFixed(2)} mm</text></>}
      <text x={room.left} y={15}>force, N/mm (solid)</text>
      <text x={size.width - room.right} y={narrow ? 33 : 15} textAnchor="end">bend angle under load (dashed)</text>
      <text x={(room.left + size.width - room.right) / 2} y={size.height - 8} textAnchor="middle">depth from first touch, mm</text>
    </svg>
  );
};
