import { useEffect, useMemo, useState, type ReactNode } from 'react';
import { PHASE_ENDS, closeUp, filmOf, rootOf, stationOf } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { EdgesBody, PrismBody, SheetBody } from '../scene/bodies.js';
import { extentOf } from '../scene/extent.js';
import { letterSpots } from '../scene/letterSpot.js';
import { COLOURS } from '../scene/look.js';
import { flatPlates, sheetMesh } from '../scene/sheetMesh.js';
import { View3d } from '../scene/View3d.js';
import { pressOf } from './press.js';
import { MovingSection } from './MovingSection.js';
import { momentWords } from './momentWords.js';

/** s that the film of a stroke runs; it is no prediction of the stroke's own time. */
const FILM = 9;
const FROM = { round: 56, up: 17 } as const;
/** A hem or an offset is small beside its tools: seen more along the bed, the right end of the bend alone (mm along it, and about what moves). */
const NEAR = { round: 66, up: 12 } as const;
const NEAR_END = 46;
const NEAR_ABOUT = 14;
const HATCHES = 34;
/** The share of the film where the sheet lies at its stop. */
const AT_STOP = 0.23;

/** Who asked for less motion goes from moment to moment. */
const STILL = matchMedia('(prefers-reduced-motion: reduce)');

/** One stroke moving: play, stop, or drag it to any moment. It plays only when asked to. */
export const StrokeView = ({ trial, step, instead }: { readonly trial: Trial; readonly step: Step; readonly instead: ReactNode }) => {
  const [t, setT] = useState(AT_STOP);
  const [plays, setPlays] = useState(false);
  const plates = useMemo(() => flatPlates(trial.sheet), [trial]);
  const spots = useMemo(() => letterSpots(trial.sheet.part), [trial]);
  const press = useMemo(() => pressOf(trial, step), [trial, step]);
  const root = rootOf(trial, step);
  const meshAt = useMemo(() => {
    const film = filmOf(trial, step);
    return (share: number) => {
      const moment = film(share);
      return { moment, mesh: sheetMesh(trial.sheet, plates, moment.angles, root, moment.pose) };
    };
  }, [trial, step, plates, root]);
  const { moment, mesh } = useMemo(() => meshAt(t), [meshAt, t]);
  const up = stationOf(trial, step).dieTop;
  const near = step.kind !== 'V bend';
  const from = near ? NEAR : FROM;
  const extent = useMemo(() => {
    if (near) {
      const { backs, ups } = closeUp(trial, step);
      const { edges } = meshAt(AT_STOP).mesh;
      const end = Math.max(...edges.filter((_, i) => i % 3 === 0));
      return extentOf(NEAR, [end - NEAR_END, end].flatMap((along) => [backs[0] - NEAR_ABOUT, backs[1] + NEAR_ABOUT].flatMap((back) => [ups[0] - NEAR_ABOUT, ups[1] + NEAR_ABOUT].flatMap((height) => [along, back, height]))));
    }
    const raised = (edges: readonly number[], by: number): number[] => edges.map((v, i) => (i % 3 === 2 ? v + by : v));
    const open = up + step.ramOpening;
    return extentOf(FROM, raised(press.punch.edges, open), raised(press.clamp.edges, open), press.fingers.edges, press.bed.edges, raised(press.die.edges, up), ...[AT_STOP, 0.7].map((s) => meshAt(s).mesh.edges));
  }, [press, meshAt, up, trial, step, near]);

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

  const space = (
    <View3d label={`Step ${step.number} in the machine: ${moment.phase}.`} extent={extent} from={from} instead={near ? null : instead}>
      <SheetBody mesh={mesh} spots={spots} thickness={trial.sheet.part.thickness} pitch={(2 * extent.radius) / HATCHES} />
      <PrismBody prism={press.punch} colour={COLOURS.tool} up={moment.tip} />
      <EdgesBody prism={press.clamp} up={moment.tip} />
      <PrismBody prism={press.die} colour={COLOURS.tool} up={up} />
      <PrismBody prism={press.bed} colour={COLOURS.bed} />
      <PrismBody prism={press.fingers} colour={COLOURS.finger} back={moment.behind} />
    </View3d>
  );
  return (
    <figure className="stroke">
      {near ? <MovingSection trial={trial} step={step} moment={moment} /> : space}
      <div className="slider no-print">
        {STILL.matches
          ? <button type="button" onClick={() => setT(PHASE_ENDS.find((end) => end > t) ?? 0)}>Next moment</button>
          : <button type="button" onClick={() => { if (t >= 1) setT(0); setPlays(!plays); }}>{plays ? 'Pause' : 'Play'}</button>}
        <label><span className="hidden">Moment of the stroke</span>
          <input type="range" min={0} max={1000} value={Math.round(t * 1000)} aria-valuetext={moment.phase} onChange={(event) => { setPlays(false); setT(Number(event.target.value) / 1000); }} />
        </label>
      </div>
      <figcaption className="small"><strong>{moment.phase}</strong>, {momentWords(step, moment)}. <span className="soft">Not to time; ways in and out drawn short.</span></figcaption>
      {near && space}
    </figure>
  );
};
