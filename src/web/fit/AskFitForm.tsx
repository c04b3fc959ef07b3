import { type FormEvent, useState } from 'react';
import type { Metal } from '../../metal/index.js';
import type { Machine } from '../../shop/index.js';
import type { PartRevision, ShopRevision } from '../../store/index.js';
import { get, sentence } from '../ask.js';
import { to, useGo } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { KeptFigure } from '../sheet/FigureField.js';
import { PIECES } from '../shop/figureWithin.js';
import { figure } from '../wording.js';
import { BuyersField } from './BuyersField.js';
import { Choices } from './Choices.js';
import { count } from './count.js';
import { machinesOfFile, rackOfFile } from './readBuyers.js';
import type { FitQuestion } from './useFitQuestion.js';

interface AskFitFormProps {
  readonly question: FitQuestion;
  readonly parts: readonly PartRevision[];
  readonly machines: readonly Machine[];
  readonly metals: readonly Metal[];
  /** Those that may be the buyer's: all but our first. */
  readonly racks: readonly ShopRevision[];
}

const FILES = '.json,.csv,application/json,text/csv';

/** The form that asks: parts, machines, metal, quantity, tolerance, and what the buyer has. */
export const AskFitForm = ({ question, parts, machines, metals, racks }: AskFitFormProps) => {
  const go = useGo();
  const [fault, setFault] = useState<string>();
  const [asking, setAsking] = useState(false);
  const { terms, choose } = question;
  const ask = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setAsking(true);
    setFault(undefined);
    try {
      go(to.fit((await question.ask()).id));
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setAsking(false);
    }
  };
  return (
    <form className="ask-fit" onSubmit={(event) => void ask(event)}>
      <div className="columns">
        <Choices legend="Parts" chosen={question.parts} choose={(ids) => choose({ parts: ids })}
          all={parts.map(({ id, name, thickness, bends, demo }) => ({ id, name, more: `${figure(thickness, 2)} mm, ${count(bends, 'bend')}${demo ? ', demo' : ''}` }))} />
        <div className="stack">
          <Choices legend="Machines" chosen={question.machines} choose={(ids) => choose({ machines: ids })} all={machines.map(({ id, name, summary }) => ({ id, name, more: summary }))} />
          <label className="field"><span>Metal</span>
            <select value={terms.metalId} onChange={(event) => choose({ terms: { metalId: event.target.value } })}>
              {metals.map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}
            </select>
          </label>
          <KeptFigure label="Quantity of each, with one set-up" first={terms.quantity} range={PIECES} change={(quantity) => choose({ terms: { quantity } })} />
          <label className="field"><span>Dimensions without a tolerance of their own</span>
            <select value={terms.toleranceClass} onChange={(event) => choose({ terms: { toleranceClass: event.target.value } })}>
              {['f', 'm', 'c', 'v'].map((cls) => <option key={cls} value={cls}>ISO 2768-1 class {cls}</option>)}
              <option value="none">not held to anything</option>
            </select>
          </label>
          <BuyersField label="The buyer's present machine" kept={machines} accept={FILES} hint="A column beside ours. Type it in on the floor, or take a file, JSON or CSV, as the floor’s page saves it."
            fetch={(id) => Promise.resolve([machines.find((m) => m.id === id)])} read={machinesOfFile} told={question.tellMachines} />
          <BuyersField label="The buyer's own tools" kept={racks} accept={FILES} hint="Each machine once more with them, as far as its tangs and seats hold them. Type them in as a rack, or take a file, JSON or CSV, as a rack’s page saves it."
            fetch={async (id) => (await get<{ readonly data: unknown }>(`/api/racks/${encodeURIComponent(id)}`)).data} read={rackOfFile} told={question.tellRack} />
          <button type="submit" className="next" disabled={asking || question.awaited || terms.quantity === undefined || question.parts.size === 0 || question.ours.length === 0}>Try {count(question.parts.size, 'part')} on {count(question.tried, 'machine')}</button>
          <p className="small soft" role="status">{question.awaited ? 'What the buyer has is chosen and not read yet: wait for it, choose a file that can be read, or “none told”.' : ''}</p>
          <Fault sentence={fault} />
        </div>
      </div>
    </form>
  );
};
