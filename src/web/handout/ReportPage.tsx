import { useState } from 'react';
import type { StoredTrial } from '../../store/index.js';
import { money } from '../../fit/index.js';
import { Differences } from '../pieces/Differences.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Drawing } from '../sheet/Drawing.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { MachineSums } from '../fit/MachineSums.js';
import { OptionLines } from '../fit/OptionLines.js';
import { ReportPart } from './ReportPart.js';
import { TYPED, type Report, type Typed, keepTyped, keptTyped, queryOf } from './report.js';

const Walk = ({ trialId }: { readonly trialId: string }) => {
  const here = `/api/trials/${encodeURIComponent(trialId)}`;
  const { value } = useAnswer<StoredTrial>(here);
  if (!value) return null;
  return (
    <section className="section" aria-labelledby="walk-title">
      <h2 id="walk-title">{value.partName} on {value.machineName}, stroke by stroke</h2>
      <Drawing path={`${here}/path.svg`} />
      <ol className="report-walk">
        {value.trial.steps.map(({ number, words }) => (
          <li key={number}><p>{words}</p><Drawing path={`${here}/steps/${number}/picture.svg?when=after`} /></li>
        ))}
      </ol>
      <p className="no-print"><a href={to.walk(trialId, 1)}>Walk through it at the machine</a></p>
    </section>
  );
};

/** The buyer's report on a page: the same as on paper, with what is typed for it. */
export const ReportPage = ({ id }: { readonly id: string }) => {
  const here = `/api/fits/${encodeURIComponent(id)}`;
  const { value: report, fault, again } = useAnswer<Report>(`${here}/report`);
  const [typed, setTyped] = useState<Typed>(keptTyped);
  if (!report) {
    return <Sheet title="Buyer’s report" trail={[['Fit', to.fits], ['Board', to.fit(id)]]} block={[['Sheet', 'Report']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what="Putting the report together" />}</div></Sheet>;
  }
  const type = (name: keyof Typed, words: string): void => {
    const next = { ...typed, [name]: words };
    setTyped(next);
    keepTyped(next);
  };
  return (
    <Sheet
      title="Which machine makes your parts" trail={[['Fit', to.fits], ['Board', to.fit(id)]]} notes={<Cautions />}
      block={[['Sheet', 'Buyer’s report'], ['For', typed.buyer || '–'], ['Metal', report.metal.name], ['Quantity a batch', String(report.quantity)], ['Parts', String(report.parts.length)], ['Who', typed.who || '–']]}
    >
      <div className="body">
        <p className="report-answer">{report.answer}</p>
        <section className="section no-print report-typed" aria-labelledby="typed-title">
          <h2 id="typed-title">Printed as typed</h2>
          {TYPED.map(([name, label]) => (
            <label key={name} className="field"><span>{label}</span><input type="text" maxLength={2000} value={typed[name]} onChange={(event) => type(name, event.target.value)} /></label>
          ))}
          <div className="buttons"><a className="button next" href={`${here}/report.pdf?${queryOf(typed)}`} target="_blank" rel="noreferrer">Report (PDF)</a></div>
        </section>
        {report.cheapest.map((said) => <p key={said}><strong>{report.all ? 'Cheapest for all these parts' : 'Cheapest for those of these parts that are made'}:</strong> {said}. Prices as entered; those of demo machines and tools are invented.</p>)}
        <MachineSums fit={report} />
        <OptionLines fit={report} />
        {report.parts.map((part, p) => <ReportPart key={part.id} report={report} p={p} />)}
        {report.walkTrialId !== null && <Walk trialId={report.walkTrialId} />}
        <section className="section made" aria-labelledby="made-title">
          <h2 id="made-title">Pieces demonstrated: made and measured, not predicted</h2>
          {report.demonstrated.length === 0 && <p>None has been written down: every figure above is a prediction.</p>}
          {report.demonstrated.map(({ part, machine, records, differences }) => (
            <div key={records[0]!.id}><h3>{part} on {machine}: {records.length === 1 ? '1 piece' : `${records.length} pieces`}</h3><Differences differences={differences} /></div>
          ))}
        </section>
        <section className="section" aria-labelledby="site-title">
          <h2 id="site-title">Will it fit your shop</h2>
          <ul className="dots">
            {report.site.map(({ name, site, price, currency, demo }) => (
              <li key={name}>{name}: {money(price, currency)}{demo && ' (invented, for demonstration)'}; mass {site.mass.toLocaleString('en-GB')} kg, footprint {site.footprint.map((mm) => mm.toLocaleString('en-GB')).join(' by ')} mm, height {site.height.toLocaleString('en-GB')} mm, supply {site.supply}.</li>
            ))}
          </ul>
          <p className="small soft">Prices as entered, on the date of this report ({report.typed.date ?? 'not dated'}). To be checked against the machine’s own papers.</p>
        </section>
        {([['Beware of all these parts', report.beware.ofAll], ['Taken for granted', report.taken]] as const).map(([heading, lines]) => lines.length > 0 && (
          <section key={heading} className="section"><h2>{heading}</h2><ul className="small dots">{lines.map((words) => <li key={words}>{words}</li>)}</ul></section>
        ))}
        {(typed.delivery || typed.warranty || typed.remarks) && (
          <section className="section" aria-labelledby="terms-title">
            <h2 id="terms-title">Terms, as typed</h2>
            {typed.delivery && <p><strong>Delivery:</strong> {typed.delivery}</p>}
            {typed.warranty && <p><strong>Warranty:</strong> {typed.warranty}</p>}
            {typed.remarks && <p><strong>Remarks:</strong> {typed.remarks}</p>}
          </section>
        )}
        <section className="section" aria-labelledby="how-title">
          <h2 id="how-title">How each figure came about</h2>
          <ul className="small dots">{report.how.map(({ sign, words }) => <li key={sign}>{words}</li>)}</ul>
        </section>
      </div>
    </Sheet>
  );
};
