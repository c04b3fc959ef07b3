import { useState } from 'react';
import { type DayPlan, clockText } from '../../fit/index.js';
import { whoQuery } from '../nameOnRecord.js';
import type { PartRevision, TrialRecord } from '../../store/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Drawing } from '../sheet/Drawing.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { mm } from '../wording.js';

const DOES = { stays: 'stays', altered: 'altered', built: 'built', 'taken off': 'taken off' } as const;

type Day = DayPlan & { readonly trialIds: readonly string[]; readonly leftIds: readonly string[] };

/** A demonstration of several parts on one machine: the order, what to lay out, cut and check beforehand. */
export const DayPage = ({ trials }: { readonly trials: readonly string[] }) => {
  const [pieces, setPieces] = useState(1);
  const [spares, setSpares] = useState(2);
  const [one, setOne] = useState(false);
  const query = new URLSearchParams({ trials: trials.join(','), pieces: String(pieces || 1), spares: String(spares || 0), ...(one && { layout: 'one' }) }).toString();
  const { value, fault, again } = useAnswer<Day>(`/api/day-plan?${query}`);
  // while another is planned the last one stays, so that a field keeps its place under the hand
  const [last, setLast] = useState<Day>();
  if (value && value !== last) setLast(value);
  const plan = value ?? last;
  const planning = one ? 'Planning all parts onto one layout and checking each: some minutes' : 'Planning the day';
  const { value: records } = useAnswer<{ readonly trials: readonly TrialRecord[] }>('/api/trials');
  const { value: parts } = useAnswer<{ readonly parts: readonly PartRevision[] }>('/api/parts');
  if (!plan) {
    return <Sheet title="Day plan" trail={[['Parts', to.parts], ['Fit', to.fits]]} block={[['Sheet', 'Day plan']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what={planning} />}</div></Sheet>;
  }
  const partOf = (trialId: string): string | undefined => records?.trials.find(({ id }) => id === trialId)?.partId;
  return (
    <Sheet
      title={`Demonstration on ${plan.machine.name}`} trail={[['Parts', to.parts], ['Fit', to.fits]]} notes={<Cautions />}
      block={[['Sheet', 'Day plan'], ['Metal', plan.metal], ['Parts', String(plan.stops.length)], ['Work', clockText(plan.seconds)]]}
    >
      <div className="body">
        <p className="report-answer">{plan.stops.length === 1 ? '1 part' : `${plan.stops.length} parts`} in {clockText(plan.seconds)} of work; {plan.changes} rows of tools built, altered or taken off{plan.changesAsGiven > plan.changes ? `, ${plan.changesAsGiven - plan.changes} fewer than in the order given` : '; no order needs fewer'}.</p>
        {plan.left.length > 0 && (
          <section aria-labelledby="left-title">
            <h2 id="left-title">Not planned in</h2>
            <ul className="dots">{plan.left.map(({ part, words }, k) => <li key={plan.leftIds[k]}><a href={to.trial(plan.leftIds[k]!)}>{part}</a>: {words}</li>)}</ul>
          </section>
        )}
        <div className="day-asked no-print">
          <label className="field"><span>Pieces of each</span><input type="number" min={1} max={1000} value={Number.isNaN(pieces) ? '' : pieces} onChange={(event) => setPieces(event.target.valueAsNumber)} /></label>
          <label className="field"><span>Spare blanks of each</span><input type="number" min={0} max={1000} value={Number.isNaN(spares) ? '' : spares} onChange={(event) => setSpares(event.target.valueAsNumber)} /></label>
          <label className="choice"><input type="checkbox" checked={one} onChange={(event) => setOne(event.target.checked)} />All on one layout</label>
          {value && <a className="button next" href={`/api/day-plan.pdf?${query}&${whoQuery()}`} target="_blank" rel="noreferrer">Day plan (PDF)</a>}
        </div>
        <Fault sentence={fault} again={again} />
        {!value && !fault && <Waiting what={planning} />}
        <div className={value ? undefined : 'stale'}>
        {plan.layout && (
          <section aria-labelledby="layout-title">
            <h2 id="layout-title">One layout for {plan.left.length === 0 ? 'all parts' : plan.stops.length === 1 ? 'the part that is made' : `the ${plan.stops.length} parts that are made`}</h2>
            <p>{mm(plan.layout.length, 0)} of {mm(plan.layout.bed, 0)} of bed, {plan.layout.proven ? 'proven the least of its model' : `the best found; none of its model is shorter than ${mm(plan.layout.bound, 0)}`}.</p>
            <ul className="dots">{plan.layout.stations.map(({ station, parts: here }) => <li key={station}>{station}: {here.map(({ part, steps }) => `${part}, ${steps.length === 1 ? 'step' : 'steps'} ${steps.join(', ')}`).join('; ')}</li>)}</ul>
            <Drawing path={`/api/day-plan/layout.svg?${query}`} />
            <p className="small soft">{plan.layout.model}</p>
          </section>
        )}
        <ol className="day">
          {plan.stops.map((stop, k) => {
            const trialId = plan.trialIds[k]!;
            const partId = partOf(trialId);
            return (
              <li key={trialId}>
                {partId !== undefined && parts?.parts.some(({ id }) => id === partId) === true && <Drawing path={`/api/parts/${encodeURIComponent(partId)}/picture.svg`} className="day-drawing" />}
                <div>
                  <h2>{k + 1}. {stop.part} {stop.demo && <span className="tag">demo</span>}</h2>
                  <p>First stroke {clockText(stop.from)} after the start; {stop.seconds.change === 0 ? 'nothing to change over' : `change over ${clockText(stop.seconds.change)}`}, make ready {clockText(stop.seconds.prepare)}, {stop.blanks.pieces === 1 ? '1 piece' : `${stop.blanks.pieces} pieces`} {clockText(stop.seconds.pieces)}. Predicted.</p>
                  <ul className="dots">{stop.changes.map((c) => <li key={`${c.station} ${c.kind} ${c.what}`}>{c.station} {c.kind} {DOES[c.what]}: {c.name}</li>)}</ul>
                  <p>Cut {stop.blanks.pieces === 1 ? '1 blank' : `${stop.blanks.pieces} blanks`} and {stop.blanks.spares === 1 ? '1 spare' : `${stop.blanks.spares} spares`}, {stop.blanks.length === null ? 'by its drawing' : `${mm(stop.blanks.length)} by ${mm(stop.blanks.width!)}`}, {mm(stop.blanks.thickness)} thick; {stop.strips.length === 0 ? 'no test strip: as for a part before it' : stop.strips.map((s) => `${s.bends.length} test strips of ${s.along.toFixed(0)} by ${s.across.toFixed(0)} mm`).join(', ')}.</p>
                  <p className="no-print"><a href={to.walk(trialId, 1)}>Walk through it</a> · <a href={to.pieces(trialId)}>Write pieces down</a></p>
                </div>
              </li>
            );
          })}
        </ol>
        <div className="columns section">
          <section aria-labelledby="check-title"><h2 id="check-title">To check beforehand</h2><ul className="dots">{plan.checks.map((words) => <li key={words}>{words}</li>)}</ul></section>
          <section aria-labelledby="kit-title"><h2 id="kit-title">To lay out</h2>
            <table>
              <thead><tr><th scope="col">Tool</th><th scope="col" className="number">Length</th><th scope="col" className="number">Needed</th><th scope="col" className="number">At hand</th></tr></thead>
              <tbody>{plan.kit.map((it) => (
                <tr key={`${it.id} ${it.length} ${it.ear ?? ''}`}><th scope="row">{it.kind}: {it.name}{it.ear ? `, ear ${it.ear}` : ''}</th><td className="number">{mm(it.length, 0)}</td><td className="number">{it.needed}</td><td className="number">{it.needed > it.atHand ? `⚠ ${it.atHand}` : it.atHand}</td></tr>
              ))}</tbody>
            </table>
          </section>
        </div>
        <p className="small soft">{plan.model}</p>
        </div>
      </div>
    </Sheet>
  );
};
