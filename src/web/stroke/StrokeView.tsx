import { useEffect, useMemo, useState, type ReactNode } from 'react';
import type { Step, Trial } from '../../trial/index.js';
import { EdgesBody, PrismBody, SheetBody } from '../scene/bodies.js';
import { extentOf } from '../scene/extent.js';
import { letterSpots } from '../scene/letterSpot.js';
import { COLOURS } from '../scene/look.js';
import { flatPlates, sheetMesh } from '../scene/sheetMesh.js';
import { View3d } from '../scene/View3d.js';
import { degrees } from '../wording.js';
import { PHASE_ENDS, momentAt } from './moment.js';
import { pressOf } from './press.js';
import { settingOf } from './seat.js';

/** s that the film of a stroke runs; it is no prediction of the stroke's own time. */
const FILM = 9;
const FROM = { round: 56, up: 17 } as const;
const HATCHES = 34;
/** The share of the film where the sheet lies at its stop. */
const AT_STOP = 0.23;

/** Who asked for less motion goes from moment to moment. */
const STILL = matchMedia('(prefers-reduced-motion: reduce)');

/** One stroke moving: play, stop, or drag it to any moment. It plays only when asked to. */
export const StrokeView = ({ trial, step, instead }: { readonly trial: Trial; readonly step: Step; readonly instead: ReactNode }) => {
  const [t, setT] = useState(AT_STOP);
  const [plays, setPlays] = useState(false);
  const setting = useMemo(() => settingOf(trial, step), [trial, step]);
  const plates = useMemo(() => flatPlates(trial.sheet), [trial]);
  const spots = useMemo(() => letterSpots(trial.sheet.part), [trial]);
  const press = useMemo(() => pressOf(trial, setting), [trial, setting]);
  const root = trial.sheet.part.bends[setting.running[0]!]!.sides[0].plate;
  const meshAt = useMemo(() => (share: number) => {
    const moment = momentAt(trial, setting, share);
    return { moment, mesh: sheetMesh(trial.sheet, plates, moment.angles, root, moment.pose) };
  }, [trial, setting, plates, root]);
  const { moment, mesh } = useMemo(() => meshAt(t), [meshAt, t]);
  const up = setting.station.dieTop;
  const extent = useMemo(() => {
    const raised = (edges: readonly number[], by: number): number[] => edges.map((v, i) => (i % 3 === 2 ? v + by : v));
    const open = up + step.ramOpening;
    return extentOf(FROM, raised(press.punch.edges, open), raised(press.clamp.edges, open), press.fingers.edges, press.bed.edges, raised(press.die.edges, up), ...[AT_STOP, 0.7].map((s) => meshAt(s).mesh.edges));
  }, [press, meshAt, up, step]);

  useEffect(() => {
    if (!plays) return;
    let last: number | undefined;
    let frame = requestAnimationFrame(function tick(now) {
      const passed = last === undefined ? 0 : (now - last) / 1000 / FILM;
      last = now;
      setT((share) => Math.min(1, share + passed));
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [plays]);
  if (plays && t >= 1) setPlays(false);

  return (
    <figure className="stroke">
      <View3d label={`Step ${step.number} in the machine: ${moment.phase}.`} extent={extent} from={FROM} instead={instead}>
        <SheetBody mesh={mesh} spots={spots} thickness={trial.sheet.part.thickness} pitch={(2 * extent.radius) / HATCHES} />
        <PrismBody prism={press.punch} colour={COLOURS.tool} up={moment.tip} />
        <EdgesBody prism={press.clamp} up={moment.tip} />
        <PrismBody prism={press.die} colour={COLOURS.tool} up={up} />
        <PrismBody prism={press.bed} colour={COLOURS.bed} />
        <PrismBody prism={press.fingers} colour={COLOURS.finger} back={moment.behind} />
      </View3d>
      <div className="slider no-print">
        {STILL.matches
          ? <button type="button" onClick={() => setT(PHASE_ENDS.find((end) => end > t) ?? 0)}>Next moment</button>
          : <button type="button" onClick={() => { if (t >= 1) setT(0); setPlays(!plays); }}>{plays ? 'Pause' : 'Play'}</button>}
        <label><span className="hidden">Moment of the stroke</span>
          <input type="range" min={0} max={1000} value={Math.round(t * 1000)} aria-valuetext={moment.phase} onChange={(event) => { setPlays(false); setT(Number(event.target.value) / 1000); }} />
        </label>
      </div>
      <figcaption className="small"><strong>{moment.phase}</strong>, bend angle {degrees(moment.angle)}, included angle {degrees(180 - moment.angle)}. <span className="soft">Not to time; ways in and out drawn short.</span></figcaption>
    </figure>
  );
};
