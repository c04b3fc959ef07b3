import { to } from '../place.js';
import { Drawing } from '../sheet/Drawing.js';
import { Verdict } from '../sheet/Verdict.js';
import { figure, seconds } from '../wording.js';
import type { Report } from './report.js';

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
          <thead><tr><th scope="col">Machine</th><th scope="col">Verdict</th><th scope="col">Margins, or why not and what would change it</th><th scope="col" className="number">A part</th><th scope="col" className="number">An hour, running</th><th scope="col" className="number">Change-over</th></tr></thead>
          <tbody>
            {report.machines.map((machine, c) => {
              const cell = report.cells[p]![c]!;
              const made = cell.verdict === 'makes';
              return (
                <tr key={machine.id}>
                  <th scope="row">{cell.trialId === null ? machine.name : <a href={to.trial(cell.trialId)}>{machine.name}</a>}{machine.whose !== 'ours' && <span className="tag">{machine.whose}</span>}</th>
                  <td><Verdict verdict={cell.verdict} /></td>
                  <td className="small">
                    {made ? cell.margins.map((m) => `${m.kind} ${figure(m.share * 100, 0)} % (${figure(m.value, m.limit < 10 ? 2 : 0)} of ${figure(m.limit, m.limit < 10 ? 2 : 0)} ${m.unit})`).join('; ') : (
                      <>
                        <ul className="dots">{cell.reasons.map(({ sentence }) => <li key={sentence}>{sentence}</li>)}</ul>
                        {cell.remedies.map(({ sentence }) => <p key={sentence}><strong>Remedy.</strong> {sentence}</p>)}
                      </>
                    )}
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
    </section>
  );
};
