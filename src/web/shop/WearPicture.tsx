import type { ConditionFigures, ConditionState, Machine } from '../../shop/index.js';
import { figure } from '../wording.js';

const WIDE = 860;
const TALL = 276;
const [LEFT, RIGHT, TOP, BOTTOM] = [92, 20, 26, 80];
/** Half the length of the words on the place of least wear, so that they stay within the picture. */
const WORDS = 125;
/** mm of height that the picture spans at least, so that a straight bed does not look hilly. */
const LEAST_SPAN = 0.1;

/** Bed seat and ram seat along the bed as read from one level line, heights much enlarged; below, where work of the length asked meets least wear. */
export const WearPicture = ({ state, machine, figures }: { readonly state: ConditionState; readonly machine: Machine; readonly figures: ConditionFigures }) => {
  const heights = state.wear.flatMap(({ bed, ram }) => [bed, ram]).filter((h) => h !== null);
  if (heights.length < 2) return <p>The wear map is empty: the wear of bed and ram seats is <strong>not known</strong>.</p>;
  const span = Math.max(LEAST_SPAN, Math.max(...heights) - Math.min(...heights));
  const middle = (Math.max(...heights) + Math.min(...heights)) / 2;
  const half = machine.length / 2;
  const px = (along: number): number => LEFT + ((along + half) / machine.length) * (WIDE - LEFT - RIGHT);
  const py = (up: number): number => TOP + (0.5 - (up - middle) / span) * (TALL - TOP - BOTTOM);
  const line = (of: 'bed' | 'ram'): string => state.wear.filter((p) => p[of] !== null).map((p) => `${px(p.along).toFixed(1)} ${py(p[of]!).toFixed(1)}`).join('L');
  const place = figures.elsewhere;
  const ticks = [Math.min(...heights), Math.max(...heights)];
  const lastOf = (of: 'bed' | 'ram') => state.wear.filter((p) => p[of] !== null).at(-1)!;
  const bedEnd = state.wear.some((p) => p.bed !== null) ? py(lastOf('bed').bed!) : null;
  const ramEnd = state.wear.some((p) => p.ram !== null) ? py(lastOf('ram').ram!) : null;
  // the names of the lines stand over the upper and under the lower one
  const bedOver = bedEnd !== null && ramEnd !== null && bedEnd < ramEnd;
  const y = TALL - 32;
  return (
    <svg className="wear" viewBox={`0 0 ${WIDE} ${TALL}`} role="img" aria-label={`Wear map: bed seat and ram seat from ${figure(-half, 0)} to ${figure(half, 0)} mm`}>
      <path className="axis" d={`M${LEFT} ${TOP - 8}V${TALL - BOTTOM + 8}H${WIDE - RIGHT}`} />
      {ticks.map((t) => <g key={t}><path className="axis" d={`M${LEFT - 5} ${py(t)}h5`} /><text x={LEFT - 9} y={py(t)} dy="0.35em" textAnchor="end">{figure(t, 2)}{t === ticks[1] && ' mm'}</text></g>)}
      {[-half, 0, half].map((along) => <text key={along} x={px(along)} y={TALL - 6} textAnchor={along < 0 ? 'start' : along > 0 ? 'end' : 'middle'}>{figure(along, 0)}{along > 0 && ' mm'}</text>)}
      <path className="ram" d={`M${line('ram')}`} /><path className="bed" d={`M${line('bed')}`} />
      {state.wear.map((p) => <g key={p.along}>{p.bed !== null && <circle cx={px(p.along)} cy={py(p.bed)} r={3} />}{p.ram !== null && <rect x={px(p.along) - 3} y={py(p.ram) - 3} width={6} height={6} />}</g>)}
      {ramEnd !== null && <text x={px(half) - 4} y={ramEnd + (bedOver ? 17 : -9)} textAnchor="end">ram seat</text>}{bedEnd !== null && <text x={px(half) - 4} y={bedEnd + (bedOver ? -9 : 17)} textAnchor="end">bed seat</text>}
      {place && <g className="here"><path d={`M${px(place.window[0])} ${y}H${px(place.window[1])}M${px(place.window[0])} ${y - 5}v10M${px(place.window[1])} ${y - 5}v10`} /><text x={Math.min(WIDE - RIGHT - WORDS, Math.max(LEFT + WORDS, (px(place.window[0]) + px(place.window[1])) / 2))} y={y - 8} textAnchor="middle">{`least wear for ${figure(figures.length, 0)} mm: ± ${figure(place.fit.left, 3)} mm`}</text></g>}
    </svg>
  );
};
