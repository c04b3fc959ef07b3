import { type DayStop, clockText, stripsInWords } from '../../fit/index.js';
import { whoQuery } from '../nameOnRecord.js';
import { to } from '../place.js';
import { Drawing } from '../sheet/Drawing.js';
import { mm } from '../wording.js';
import type { Day } from './day.js';

/** What is cut for a part before the day: its blanks and its test strips. */
const cutWords = ({ blanks: { pieces, spares, length, width, thickness }, strips }: DayStop): string =>
  `Cut ${pieces === 1 ? '1 blank' : `${pieces} blanks`} and ${spares === 1 ? '1 spare' : `${spares} spares`}, ${length === null ? 'by its drawing' : `${mm(length)} by ${mm(width!)}`}, ${mm(thickness)} thick; ` +
  `${strips.length === 0 ? 'no test strip: as for a part before it' : `test strips: ${stripsInWords({ strips }).join(', ')}`}.`;

/** The parts of the day in their order: when each begins, what is changed on the bed for it, what is cut for it, and by what it is bent. `query` is what the plan was asked by. */
export const DayOrder = ({ plan: { stops, trialIds, partIds, layout }, query }: { readonly plan: Day; readonly query: string }) => (
  <ol className="day">
    {stops.map((stop, k) => (
      <li key={trialIds[k]}>
        <Drawing path={`/api/parts/${encodeURIComponent(partIds[k]!)}/picture.svg`} className="day-drawing" />
        <div>
          <h2>{k + 1}. {stop.part} {stop.demo && <span className="tag">demo</span>}</h2>
          <p>First stroke {clockText(stop.from)} after the start; {stop.seconds.change === 0 ? 'nothing to change over' : `change over ${clockText(stop.seconds.change)}`}, make ready {clockText(stop.seconds.prepare)}, {stop.blanks.pieces === 1 ? '1 piece' : `${stop.blanks.pieces} pieces`} {clockText(stop.seconds.pieces)}. Predicted.</p>
          <ul className="dots">{stop.changes.map((c) => <li key={`${c.station} ${c.kind} ${c.what}`}>{c.station} {c.kind} {c.what}: {c.name}</li>)}</ul>
          <p>{cutWords(stop)}</p>
          {layout
            ? <p className="no-print"><a href={`/api/day-plan/setup-sheet.pdf?${query}&${new URLSearchParams({ trial: trialIds[k]! }).toString()}&${whoQuery()}`} target="_blank" rel="noreferrer">Set-up sheet on this layout (PDF)</a>. Walk and pieces belong to the part’s own plan: <a href={to.trial(trialIds[k]!)}>its trial</a>.</p>
            : <p className="no-print"><a href={to.walk(trialIds[k]!, 1)}>Walk through it</a> · <a href={to.pieces(trialIds[k]!)}>Write pieces down</a></p>}
        </div>
      </li>
    ))}
  </ol>
);
