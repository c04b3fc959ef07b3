import { useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { post, sentence } from '../ask.js';
import { nameOnRecord } from '../nameOnRecord.js';
import { to, useGo } from '../place.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { day } from '../wording.js';
import { HandIn } from './HandIn.js';
import { isTree } from './tree.js';

/** The racks: ours first, others (a buyer's own) beside it. */
export const RacksPage = () => {
  const go = useGo();
  const { value, fault, again } = useAnswer<{ readonly racks: readonly ShopRevision[] }>('/api/racks');
  const [refusal, setRefusal] = useState<string>();
  const fresh = async (): Promise<void> => {
    const taken = new Set(value?.racks.map((r) => r.id));
    const number = Array.from({ length: taken.size + 1 }, (_, i) => i + 1).find((n) => !taken.has(`rack-${n}`))!;
    try {
      const kept = await post<ShopRevision>('/api/racks', { data: { id: `rack-${number}`, name: `Rack ${number}`, demo: false, currency: 'EUR', punches: [], dies: [], risers: [] } });
      go(to.rack(kept.id));
    } catch (wrong) {
      setRefusal(sentence(wrong));
    }
  };
  const takeIn = async (text: string): Promise<string> => {
    const read = JSON.parse(text) as unknown;
    // as the page saves it, or as `tools --json` prints it
    const data = isTree(read) && isTree(read['rack']) ? read['rack'] : read;
    const before = value?.racks.find(({ id }) => isTree(data) && id === data['id']);
    const kept = await post<ShopRevision>('/api/racks', { data, after: before?.revision ?? 0 });
    again();
    return `${kept.name} is kept as revision ${kept.revision}.`;
  };
  return (
    <Sheet
      title="Racks" trail={[['Floor', to.floor], ['Measured deductions', to.deductions], ['Own metals', to.metals]]} under={<span className="soft">Tools at hand. Trials take the first rack unless another is named.</span>}
      block={[['Sheet', 'Racks'], ['How many', value ? String(value.racks.length) : '–'], ['Who', nameOnRecord() || 'local'], ['What is kept', 'every revision']]}
    >
      <div className="body">
        <Fault sentence={fault} again={again} />
        <Fault sentence={refusal} />
        {!value && !fault && <Waiting what="Fetching the racks" />}
        {value && (
          <table>
            <thead><tr><th scope="col">Rack</th><th scope="col" className="number">Revision</th><th scope="col">Last change</th><th scope="col"><span className="hidden">Open</span></th></tr></thead>
            <tbody>{value.racks.map((r) => (
              <tr key={r.id}><th scope="row"><span className="machine">{r.name}</span>{r.demo && <> <span className="tag">demo</span></>}</th><td className="number">{r.revision}</td><td>{day(r.createdAt)}, {r.by}: {r.change}</td>
                <td><a className="button" href={to.rack(r.id)} aria-label={`Open ${r.name}`}>Open</a></td></tr>
            ))}</tbody>
          </table>
        )}
        <div className="buttons section no-print"><button type="button" className="next" disabled={!value} onClick={() => void fresh()}>Begin another rack</button><HandIn label="Take a rack in from JSON" accept=".json" take={takeIn} /></div>
      </div>
    </Sheet>
  );
};
