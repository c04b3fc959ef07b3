import type { Metal } from '../../metal/index.js';
import type { FitSummary } from '../../server/index.js';
import type { Machine } from '../../shop/index.js';
import type { PartRevision, ShopRevision } from '../../store/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { day } from '../wording.js';
import { AskFitForm } from './AskFitForm.js';
import { count } from './count.js';
import { useFitQuestion } from './useFitQuestion.js';

const AskedBefore = ({ fits }: { readonly fits: readonly FitSummary[] }) => fits.length === 0 ? null : (
  <section className="section" aria-labelledby="before-title">
    <h2 id="before-title">Asked before</h2>
    <ul className="plain">
      {fits.map((fit) => (
        <li key={fit.id}><a href={to.fit(fit.id)}>{count(fit.parts.length, 'part')} on {count(fit.machines.length, 'machine')}, {fit.metalName}, {fit.quantity} of each</a> <span className="soft small">{fit.state}, {day(fit.createdAt)}, {fit.by}</span></li>
      ))}
    </ul>
  </section>
);

/** Which parts on which machines, with what the buyer has, and the fits asked before. */
export const AskFitPage = () => {
  const parts = useAnswer<{ readonly parts: readonly PartRevision[] }>('/api/parts');
  const machines = useAnswer<{ readonly machines: readonly Machine[] }>('/api/machines');
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const racks = useAnswer<{ readonly racks: readonly ShopRevision[] }>('/api/racks');
  const fits = useAnswer<{ readonly fits: readonly FitSummary[] }>('/api/fits');
  const question = useFitQuestion(parts.value?.parts ?? [], machines.value?.machines ?? []);
  const wrong = parts.fault ?? machines.fault ?? metals.fault;
  if (!parts.value || !machines.value || !metals.value) {
    return <Sheet title="Fit" trail={[['Parts', to.parts]]} block={[['Sheet', 'Fit']]}><div className="body">{wrong ? <Fault sentence={wrong} again={() => { for (const answer of [parts, machines, metals, racks, fits]) answer.again(); }} /> : <Waiting what="Fetching parts and machines" />}</div></Sheet>;
  }
  return (
    <Sheet
      title="Several parts on several machines" trail={[['Parts', to.parts]]} notes={<Cautions />}
      block={[['Sheet', 'Fit'], ['Parts', String(question.parts.size)], ['Machines', String(question.ours.length)], ['Quantity', String(question.terms.quantity)]]}
    >
      <div className="body">
        <AskFitForm question={question} parts={parts.value.parts} machines={machines.value.machines} metals={metals.value.metals} racks={(racks.value?.racks ?? []).slice(1)} />
        <AskedBefore fits={fits.value?.fits ?? []} />
      </div>
    </Sheet>
  );
};
