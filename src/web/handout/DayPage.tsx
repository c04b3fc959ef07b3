import { useState } from 'react';
import { clockText } from '../../fit/index.js';
import { whoQuery } from '../nameOnRecord.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { DemoTag } from '../sheet/DemoTag.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { KeptFigure } from '../sheet/FigureField.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { DayKit } from './DayKit.js';
import { DayLayout } from './DayLayout.js';
import { DayOrder } from './DayOrder.js';
import type { Day } from './day.js';

const PIECES = { what: 'number of pieces', least: 1, most: 1000, whole: true } as const;
const SPARES = { what: 'number of spare blanks', least: 0, most: 1000, whole: true } as const;

/** A demonstration of several parts on one machine: the order, what to lay out, cut and check beforehand. */
export const DayPage = ({ trials }: { readonly trials: readonly string[] }) => {
  // undefined while what is typed cannot be: the plan shown is then that of the figures before
  const [asked, setAsked] = useState<{ readonly pieces: number | undefined; readonly spares: number | undefined }>({ pieces: 1, spares: 2 });
  const [good, setGood] = useState({ pieces: 1, spares: 2 });
  const change = (figures: Partial<typeof asked>): void => {
    const { pieces, spares } = { ...asked, ...figures };
    setAsked({ pieces, spares });
    if (pieces !== undefined && spares !== undefined) setGood({ pieces, spares });
  };
  const [one, setOne] = useState(false);
  const query = new URLSearchParams({ trials: trials.join(','), pieces: String(good.pieces), spares: String(good.spares), ...(one && { layout: 'one' }) }).toString();
  const { value, fault, again } = useAnswer<Day>(`/api/day-plan?${query}`);
  // while another is planned the last one stays, so that a field keeps its place under the hand
  const [last, setLast] = useState<{ readonly plan: Day; readonly query: string }>();
  if (value && value !== last?.plan) setLast({ plan: value, query });
  const { plan, query: of } = value ? { plan: value, query } : last ?? {};
  const current = value !== undefined && asked.pieces !== undefined && asked.spares !== undefined;
  const planning = one ? 'Planning all parts onto one layout and checking each: some minutes' : 'Planning the day';
  if (plan === undefined || of === undefined) {
    return <Sheet title="Day plan" trail={[['Parts', to.parts], ['Fit', to.fits]]} block={[['Sheet', 'Day plan']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what={planning} />}</div></Sheet>;
  }
  return (
    <Sheet
      title={`Demonstration on ${plan.machine.name}`} trail={[['Parts', to.parts], ['Fit', to.fits]]} notes={<Cautions />} under={<DemoTag of={plan.machine} />}
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
          <KeptFigure label="Pieces of each" first={good.pieces} range={PIECES} change={(pieces) => change({ pieces })} />
          <KeptFigure label="Spare blanks of each" first={good.spares} range={SPARES} change={(spares) => change({ spares })} />
          <label className="choice"><input type="checkbox" checked={one} onChange={(event) => setOne(event.target.checked)} />All on one layout</label>
          {current && <a className="button next" href={`/api/day-plan.pdf?${query}&${whoQuery()}`} target="_blank" rel="noreferrer">Day plan (PDF)</a>}
        </div>
        <Fault sentence={fault} again={again} />
        {!value && !fault && <Waiting what={planning} />}
        <div className={current ? undefined : 'stale'} aria-busy={!value && !fault}>
          <DayLayout plan={plan} query={of} />
          <DayOrder plan={plan} query={of} />
          <DayKit plan={plan} />
          <p className="small soft">{plan.model}</p>
        </div>
      </div>
    </Sheet>
  );
};
