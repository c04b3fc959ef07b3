import { useId, useMemo } from 'react';
import { type Contour, type Vec2, flatten } from '../../geometry/index.js';
import { profileOf } from '../../shop/index.js';
import { type Moment, closeUp, cutPlace, dieOf, punchOf, rootOf, sheetSection, stationOf } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { figure } from '../wording.js';

const WIDE = 620;
/** Width over height of what is shown: the whole of a flat tool's face, and the punch when the ram is open. */
const SHAPE = 2.1;
/** mm over the punch's open place, and how much more height the open ram may ask than the stroke itself. */
const AIR = 3;
const MOST_MORE = 26;
const CHORD = 0.05;
/** Pixels between hatch lines of cut tools. */
const HATCH = 11;

/** The scene shown: (back, up) of its lower front corner and its size, mm. */
const windowOf = (trial: Trial, step: Step): { readonly back: number; readonly up: number; readonly wide: number; readonly tall: number } => {
  const { backs, ups } = closeUp(trial, step);
  const top = Math.max(ups[1], Math.min(stationOf(trial, step).dieTop + step.ramOpening + AIR, ups[1] + MOST_MORE));
  const tall = top - ups[0];
  const wide = Math.max(tall * SHAPE, backs[1] - backs[0]);
  // an offset stands in the middle, a hem towards the fingers
  return { back: step.kind === 'hem close' ? backs[1] - wide : -wide / 2, up: ups[0], wide, tall };
};

/** A stroke that is no V bend, cut across and moving: the sheet black, the tools hatched, the punch's lowest place dashed. */
export const MovingSection = ({ trial, step, moment }: { readonly trial: Trial; readonly step: Step; readonly moment: Moment }) => {
  const id = useId();
  const still = useMemo(() => {
    const { back, up, wide, tall } = windowOf(trial, step);
    const scale = WIDE / wide;
    const at = ([b, u]: Vec2): string => `${((b - back) * scale).toFixed(2)} ${((up + tall - u) * scale).toFixed(2)}`;
    const path = (ring: readonly Vec2[]): string => `M${ring.map(at).join('L')}Z`;
    const profile = (contour: Contour, by: Vec2): string => path(flatten(contour, CHORD).map((p): Vec2 => [p[0] + by[0], p[1] + by[1]]));
    const station = stationOf(trial, step);
    const punch = profileOf(punchOf(trial, step.punch), station.punchFacing);
    return {
      scale, path, place: (b: number, u: number): readonly [number, number] => [(b - back) * scale, (up + tall - u) * scale], height: tall * scale,
      die: profile(profileOf(dieOf(trial, step.die), station.dieFacing), [0, station.dieTop]),
      // moved by its tip's height as a whole
      punch: profile(punch, [0, 0]), lowest: profile(punch, [0, step.ramPosition]),
      finger: step.stop.kind === 'none' ? null : profile(trial.machine.gauge.finger.profile, [step.stop.axisX, step.stop.r]),
      root: rootOf(trial, step), along: cutPlace(trial, step), dieTop: station.dieTop, front: Math.min(...punch.filter((v) => Math.abs(v.y) < 1e-6).map((v) => v.x)),
    };
  }, [trial, step]);
  const { scale, path, place, height, dieTop } = still;
  const metal = sheetSection(trial.sheet, moment.angles, still.root, moment.pose, still.along);
  const offset = step.kind === 'offset bend';
  const { thickness } = trial.sheet.part;
  // what the tools hold between them: of a hem its height, of an offset over both flanges
  const [low, high] = offset ? [moment.tip - thickness, dieTop + thickness] : [dieTop, moment.tip];
  const [x] = place(still.front, 0);
  const left = Math.max(40, x - 66);
  const [y0, y1] = [place(0, low)[1], place(0, high)[1]];
  return (
    <svg className="moving-section" viewBox={`0 0 ${WIDE} ${height.toFixed(1)}`} role="img" aria-label={`The stroke in section, from the operator's right: ${moment.phase}.`}>
      <defs>
        <pattern id={`${id}-die`} width={HATCH} height={HATCH} patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><line x1={0} y1={0} x2={0} y2={HATCH} className="cut" /></pattern>
        <pattern id={`${id}-punch`} width={HATCH} height={HATCH} patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1={0} y1={0} x2={0} y2={HATCH} className="cut" /></pattern>
      </defs>
      <path d={still.die} className="tool" />
      <path d={still.die} fill={`url(#${id}-die)`} />
      {still.finger && <path d={still.finger} className="finger" transform={`translate(${moment.behind * scale} 0)`} />}
      <g transform={`translate(0 ${-moment.tip * scale})`}>
        <path d={still.punch} className="tool" />
        <path d={still.punch} fill={`url(#${id}-punch)`} />
      </g>
      <path d={still.lowest} className="lowest" />
      <path d={metal.map(path).join('')} className="metal" />
      {moment.travel !== null && (
        <g className="held">
          <path d={`M${left} ${y0}V${y1}M${left - 7} ${y0}h14M${left - 7} ${y1}h14`} />
          <text x={Math.max(6, left - 60)} y={Math.min(y0, y1) - 9}>{figure(high - low, 2)} {offset ? 'over both' : 'high'}</text>
        </g>
      )}
    </svg>
  );
};
