import { type FitMargin, reasonInShort } from '../../fit/index.js';
import { to } from '../place.js';
import { Drawing } from '../sheet/Drawing.js';
import { Verdict } from '../sheet/Verdict.js';
import { amountOf, figure, seconds } from '../wording.js';
import type { Report } from './report.js';

/** "force 28 % (134 N/mm of 500 N/mm)"; of the gauge where it stands and which end is nearest. */
const marginSaid = ({ kind, name, value, limit, unit, share }: FitMargin): string => {
  const [axis, end] = name.split(', ');
  return `${kind} ${figure(share * 100, 0)} % (${kind === 'gauge travel' && end !== undefined ? `${axis} at ${amountOf(value, unit)}, ${end} ${amountOf(limit, unit)}` : `${amountOf(value, unit)} of ${amountOf(limit, unit)}`})`;
};

/** The paper's sign of the verdict stands in the table's own. */
const withoutSign = (heading: string): string => heading.replace(/^\S+ (?=Why|Not )/, '');

/** One part of the report: drawn, and on every machine with its margins, or why not and what would change it. */
export const ReportPart = ({ report, p }: { readonly report: Report; readonly p: number }) => {
  const part = report.parts[p]!;
  return (
    <section className="section report-part" aria-labelledby={`part-${p}`}>
      <h2 id={`part-${p}`}>{part.name} {part.demo && <span className="tag">demo</span>}</h2>
      <div className="report-drawn">
        <Drawing path={`/api/parts/${encodeURIComponent(part.id)}/picture.svg?revision=${part.revision}`} />
        <p>{figure(part.thickness, 2)} mm thick, {part.bends === 1 ? '1 bend' : `${part.bends} bends`}. {report.metal.name}. Predicted for a batch of {report.quantity}.</p>
      </div>
      <div className="scroll" tabIndex={0} role="group" aria-label={`${part.name}, machine by machine`}>
        <table>
          <thead><tr><th scope="col">Machine</th><th scope="col">Verdict</th><th scope="col">Used of each limit; or why not, below at length</th><th scope="col" className="number">A part</th><th scope="col" className="number">An hour, running</th><th scope="col" className="number">Change-over</th></tr></thead>
          <tbody>
            {report.machines.map((machine, c) => {
              const cell = report.cells[p]![c]!;
              const made = cell.verdict === 'makes';
              return (
                <tr key={machine.id}>
                  <th scope="row">{cell.trialId === null ? machine.name : <a href={to.trial(cell.trialId)}>{machine.name}</a>}{machine.whose !== 'ours' && <span className="tag">{machine.whose}</span>}</th>
                  <td><Verdict verdict={cell.verdict} /></td>
                  <td className="small">
                    {made ? cell.margins.map(marginSaid).join('; ') : reasonInShort(cell)}
                  </td>
                  <td className="number">{made && cell.seconds !== null ? seconds(cell.seconds) : '–'}</td>
                  <td className="number">{made && cell.partsAnHour !== null ? figure(cell.partsAnHour, 0) : '–'}</td>
                  <td className="number">{made && cell.changeOver !== null ? `${figure(cell.changeOver / 60, 0)} min` : '–'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {report.beware.ofPart[p]!.length > 0 && <><h3>Beware</h3><ul className="why-not">{report.beware.ofPart[p]!.map((words) => <li key={words}><span aria-hidden="true">⚠</span> {words}</li>)}</ul></>}
      {report.why[p]!.map(({ heading, lines }) => (
        <div key={heading}>
          <h3>{withoutSign(heading)}</h3>
          <ul className="why-not">{lines.map(({ sign, words }) => <li key={words}><span aria-hidden="true">{sign}</span> {words}</li>)}</ul>
        </div>
      ))}
    </section>
  );
};
