import { type FormEvent, useState } from 'react';
import type { Metal } from '../../metal/index.js';
import type { FitSummary } from '../../server/index.js';
import type { Machine } from '../../shop/index.js';
import type { PartRevision, ShopRevision } from '../../store/index.js';
import { get, post, sentence } from '../ask.js';
import { go, to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { day, figure } from '../wording.js';
import { BuyersField } from './BuyersField.js';
import { machinesOfFile, rackOfFile } from './readBuyers.js';

interface Choice {
  readonly id: string;
  readonly name: string;
  readonly more: string;
}

const count = (n: number, what: string): string => (n === 1 ? `1 ${what}` : `${n} ${what}s`);

const Choices = ({ legend, all, chosen, choose }: {
  readonly legend: string; readonly all: readonly Choice[]; readonly chosen: ReadonlySet<string>; readonly choose: (ids: ReadonlySet<string>) => void;
}) => (
  <fieldset className="choices">
    <legend>{legend}: {chosen.size} of {all.length}</legend>
    <div className="buttons">
      <button type="button" onClick={() => choose(new Set(all.map(({ id }) => id)))}>All</button>
      <button type="button" onClick={() => choose(new Set())}>None</button>
    </div>
    <ul>
      {all.map(({ id, name, more }) => (
        <li key={id}>
          <label><input type="checkbox" checked={chosen.has(id)} onChange={(event) => {
            const next = new Set(chosen);
            if (event.target.checked) next.add(id);
            else next.delete(id);
            choose(next);
          }} /> <span>{name} <span className="soft small">{more}</span></span></label>
        </li>
      ))}
    </ul>
  </fieldset>
);

/** Which parts on which machines, with what the buyer has, and the fits asked before. */
export const AskFitPage = () => {
  const parts = useAnswer<{ readonly parts: readonly PartRevision[] }>('/api/parts');
  const machines = useAnswer<{ readonly machines: readonly Machine[] }>('/api/machines');
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const racks = useAnswer<{ readonly racks: readonly ShopRevision[] }>('/api/racks');
  const fits = useAnswer<{ readonly fits: readonly FitSummary[] }>('/api/fits');
  const [partIds, setParts] = useState<ReadonlySet<string>>();
  const [machineIds, setMachines] = useState<ReadonlySet<string>>();
  const [metalId, setMetal] = useState('dc01');
  const [quantity, setQuantity] = useState(50);
  const [toleranceClass, setClass] = useState('c');
  const [buyersMachines, setBuyersMachines] = useState<unknown>();
  const [buyersMachine, setBuyersMachine] = useState<string>();
  const [buyersRack, setBuyersRack] = useState<unknown>();
  const [fault, setFault] = useState<string>();
  const [asking, setAsking] = useState(false);
  const wrong = parts.fault ?? machines.fault ?? metals.fault;
  if (!parts.value || !machines.value || !metals.value) {
    return <Sheet title="Fit" trail={[['Parts', to.parts]]} block={[['Sheet', 'Fit']]}><div className="body">{wrong ? <Fault sentence={wrong} again={() => { for (const answer of [parts, machines, metals, racks, fits]) answer.again(); }} /> : <Waiting what="Fetching parts and machines" />}</div></Sheet>;
  }
  const allParts = parts.value.parts;
  const allMachines = machines.value.machines;
  // somebody's own parts are what is asked about; the demonstration's where there are none
  const own = allParts.filter(({ demo }) => !demo);
  const chosenParts = partIds ?? new Set((own.length > 0 ? own : allParts).map(({ id }) => id));
  const chosenMachines = machineIds ?? new Set(allMachines.map(({ id }) => id));
  // the buyer's own is a column of its own, not one of ours
  const ours = [...chosenMachines].filter((id) => id !== buyersMachine);
  const tried = ours.length + (Array.isArray(buyersMachines) ? buyersMachines.length : 0);
  const ask = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setAsking(true);
    setFault(undefined);
    try {
      const buyer = {
        ...(buyersMachines !== undefined && { machines: buyersMachines }), ...(buyersRack !== undefined && { rack: buyersRack }),
      };
      const fit = await post<FitSummary>('/api/fits', {
        partIds: [...chosenParts], machineIds: ours, metalId, quantity, toleranceClass: toleranceClass === 'none' ? null : toleranceClass,
        ...(Object.keys(buyer).length > 0 && { buyer }),
      });
      go(to.fit(fit.id));
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setAsking(false);
    }
  };
  return (
    <Sheet
      title="Several parts on several machines" trail={[['Parts', to.parts]]} notes={<Cautions />}
      block={[['Sheet', 'Fit'], ['Parts', String(chosenParts.size)], ['Machines', String(ours.length)], ['Quantity', String(quantity)]]}
    >
      <div className="body">
        <form className="ask-fit" onSubmit={(event) => void ask(event)}>
          <div className="columns">
            <Choices legend="Parts" chosen={chosenParts} choose={setParts}
              all={allParts.map(({ id, name, thickness, bends, demo }) => ({ id, name, more: `${figure(thickness, 2)} mm, ${bends === 1 ? '1 bend' : `${bends} bends`}${demo ? ', demo' : ''}` }))} />
            <div className="stack">
              <Choices legend="Machines" chosen={chosenMachines} choose={setMachines} all={allMachines.map(({ id, name, summary }) => ({ id, name, more: summary }))} />
              <label className="field"><span>Metal</span>
                <select value={metalId} onChange={(event) => setMetal(event.target.value)}>
                  {metals.value.metals.map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}
                </select>
              </label>
              <label className="field"><span>Quantity of each, with one set-up</span>
                <input type="number" min={1} max={1_000_000} required value={Number.isNaN(quantity) ? '' : quantity} onChange={(event) => setQuantity(event.target.valueAsNumber)} />
              </label>
              <label className="field"><span>Dimensions without a tolerance of their own</span>
                <select value={toleranceClass} onChange={(event) => setClass(event.target.value)}>
                  {['f', 'm', 'c', 'v'].map((cls) => <option key={cls} value={cls}>ISO 2768-1 class {cls}</option>)}
                  <option value="none">not held to anything</option>
                </select>
              </label>
              <BuyersField label="The buyer's present machine" kept={allMachines} accept=".json,.csv,application/json,text/csv" hint="A column beside ours. Type it in on the floor, or take JSON or CSV as `machines` prints it."
                fetch={(id) => Promise.resolve([allMachines.find((m) => m.id === id)])} read={machinesOfFile} told={(data, id) => { setBuyersMachines(data); setBuyersMachine(id); }} />
              <BuyersField label="The buyer's own tools" kept={(racks.value?.racks ?? []).slice(1)} accept=".json,.csv,application/json,text/csv" hint="Each machine once more with them, as far as its tangs and seats hold them. Type them in as a rack, or take JSON or CSV as `tools` prints them."
                fetch={async (id) => (await get<{ readonly data: unknown }>(`/api/racks/${encodeURIComponent(id)}`)).data} read={rackOfFile} told={setBuyersRack} />
              <button type="submit" className="next" disabled={asking || chosenParts.size === 0 || ours.length === 0}>Try {count(chosenParts.size, 'part')} on {count(tried, 'machine')}</button>
              <Fault sentence={fault} />
            </div>
          </div>
        </form>
        {(fits.value?.fits.length ?? 0) > 0 && (
          <section className="section" aria-labelledby="before-title">
            <h2 id="before-title">Asked before</h2>
            <ul className="plain">
              {fits.value!.fits.map((fit) => (
                <li key={fit.id}><a href={to.fit(fit.id)}>{count(fit.parts.length, 'part')} on {count(fit.machines.length, 'machine')}, {fit.metalName}, {fit.quantity} of each</a> <span className="soft small">{fit.state}, {day(fit.createdAt)}, {fit.by}</span></li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </Sheet>
  );
};
