import { useState } from 'react';
import type { Metal } from '../../metal/index.js';
import type { ShopRevision, StoredShopEntry } from '../../store/index.js';
import { remove, sentence } from '../ask.js';
import { nameOnRecord } from '../nameOnRecord.js';
import { to } from '../place.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { day, figure } from '../wording.js';
import { OwnMetalForm } from './OwnMetalForm.js';

interface Answer {
  readonly metals: readonly Metal[];
  readonly own: readonly StoredShopEntry[];
}

/** The shop's own metals, from a tensile test or from measured bends. */
export const OwnMetalsPage = () => {
  const { value, fault, again } = useAnswer<Answer>('/api/metals');
  const [wrong, setWrong] = useState<string>();
  const takeOff = async (id: string): Promise<void> => {
    try {
      await remove<ShopRevision>(`/api/metals/${encodeURIComponent(id)}`);
      setWrong(undefined);
      again();
    } catch (refusal) {
      setWrong(sentence(refusal));
    }
  };
  const rows = value?.own.flatMap((entry) => value.metals.filter(({ id }) => id === entry.id).map((metal) => ({ entry, metal })));
  return (
    <Sheet
      title="Own metals" trail={[['Floor', to.floor], ['Measured deductions', to.deductions], ['One bend', to.bend]]}
      under={<span className="soft">Batches that this shop has tested. Trials, fits and the page of one bend offer them beside the list’s metals.</span>}
      block={[['Sheet', 'Own metals'], ['How many', value ? String(value.own.length) : '–'], ['Who', nameOnRecord() || 'local'], ['What is kept', 'every revision']]}
    >
      <div className="body">
        <Fault sentence={fault} again={again} />
        <Fault sentence={wrong} />
        {!value && !fault && <Waiting what="Fetching the metals" />}
        {rows?.length === 0 && <p>None yet. A tensile test or two measured bends make one.</p>}
        {rows && rows.length > 0 && (
          <div className="scroll section" tabIndex={0} role="group" aria-label="Own metals">
            <table>
              <thead><tr><th scope="col">Metal</th><th scope="col" className="number">Yield MPa</th><th scope="col" className="number">Strength MPa</th><th scope="col">Rests on</th><th scope="col" className="number">Revision</th><th scope="col">Last change</th><th scope="col"><span className="hidden">Take off</span></th></tr></thead>
              <tbody>{rows.map(({ entry, metal }) => (
                <tr key={entry.id}>
                  <th scope="row">{metal.name}</th><td className="number">{figure(metal.yield.typical, 0)}</td><td className="number">{figure(metal.tensile.typical, 0)}</td><td>{metal.curveSource.source}</td>
                  <td className="number">{entry.revision}</td><td>{day(entry.createdAt)}, {entry.by}: {entry.change}</td>
                  <td><button type="button" className="quiet no-print" onClick={() => void takeOff(entry.id)} aria-label={`Take ${metal.name} off`}>Take off</button></td>
                </tr>
              ))}</tbody>
            </table>
          </div>
        )}
        {value && <OwnMetalForm like={value.metals.filter(({ id }) => value.own.every((entry) => entry.id !== id))} kept={again} />}
      </div>
    </Sheet>
  );
};
