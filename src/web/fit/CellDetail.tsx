import { type BoardMachine, reasonsTold } from '../../fit/index.js';
import type { FitPart, KeptCell } from '../../server/index.js';
import { to } from '../place.js';
import { Warning } from '../sheet/Fault.js';
import { Verdict } from '../sheet/Verdict.js';
import { amountOf, figure, seconds } from '../wording.js';

/** All that one cell says: margins, reasons, remedies, the way to its trial. */
export const CellDetail = ({ part, machine, cell, seconds: limit }: { readonly part: FitPart; readonly machine: BoardMachine; readonly cell: KeptCell; readonly seconds: number }) => (
  <section className="section cell-detail" aria-labelledby="cell-title" aria-live="polite">
    <h2 id="cell-title">{part.name} on {machine.name}{machine.whose === 'ours' ? '' : ` (${machine.whose})`}</h2>
    <p className="big-verdict"><Verdict verdict={cell.verdict} /></p>
    {machine.standsStill?.map((words) => <Warning key={words} word="Beware.">{words}</Warning>)}
    {cell.seconds !== null && cell.partsAnHour !== null && cell.changeOver !== null && (
      <p>Predicted {figure(cell.partsAnHour, 0)} parts an hour once set up, change-over {figure(cell.changeOver / 60, 0)} min; {seconds(cell.seconds)} a part with the set-up shared.</p>
    )}
    {cell.reasons.length > 0 && <><h3>{cell.verdict === 'not decided' ? 'What was tried' : 'Why'}</h3><ul>{reasonsTold(cell.reasons).map((r) => <li key={r.sentence}>{r.sentence}</li>)}</ul></>}
    {cell.remedies.length > 0 && <><h3>What would change it, what leaves the drawing as it is first, the cheapest of it first</h3><ol>{cell.remedies.map((r) => <li key={r.sentence}>{r.sentence}</li>)}</ol></>}
    {cell.verdict === 'not decided' && <p><strong>What to do next.</strong> It was given {figure(limit, 0)} s of computing; more may decide it: “Computing time for each cell”, at the head of the board.{cell.trialId === null ? '' : ' How far the search came is in its trial.'}</p>}
    {cell.inVain !== undefined && <><h3>What was tried to change it</h3><p>{cell.inVain}</p></>}
    {cell.margins.length > 0 && (
      <table>
        <thead><tr><th scope="col">Limit</th><th scope="col" className="number">Used</th><th scope="col" className="number">Of</th><th scope="col" className="number">Share</th><th scope="col">From</th></tr></thead>
        <tbody>
          {cell.margins.map((m) => (
            <tr key={m.kind}>
              <th scope="row">{m.kind}: {m.name}{m.step > 0 ? `, step ${m.step}` : ''}</th>
              <td className="number">{amountOf(m.value, m.unit)}</td><td className="number">{amountOf(m.limit, m.unit)}</td>
              <td className="number">{figure(m.share * 100, 0)} %</td><td className="small">{m.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    )}
    {cell.warnings.length > 0 && <ul className="small dots">{cell.warnings.filter((w) => !machine.standsStill?.includes(w)).map((w) => <li key={w}>{w}</li>)}</ul>}
    {cell.trialId !== null && <div className="buttons no-print"><a className="button next" href={to.trial(cell.trialId)}>Open the trial</a></div>}
  </section>
);
