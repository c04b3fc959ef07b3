import type { Machine } from '../../shop/index.js';
import type { ShopRevision } from '../../store/index.js';
import { post } from '../ask.js';
import { nameOnRecord } from '../nameOnRecord.js';
import { to } from '../place.js';
import { Beware } from '../sheet/Beware.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { figure } from '../wording.js';
import { HandIn } from './HandIn.js';

interface Answer {
  readonly machines: readonly Machine[];
  readonly unreadable: readonly string[];
  readonly revisions: Readonly<Record<string, { readonly machine: number; readonly condition: number | null }>>;
}

/** The machines of the floor, as they can be promised on. */
export const FloorPage = () => {
  const { value, fault, again } = useAnswer<Answer>('/api/machines');
  const takeIn = async (floor: unknown): Promise<string> => {
    const { kept, same } = await post<{ readonly kept: readonly ShopRevision[]; readonly same: readonly string[] }>('/api/floor', floor);
    again();
    return `${kept.length} taken in${same.length > 0 ? `, ${same.length} as they were` : ''}.`;
  };
  return (
    <Sheet
      title="Floor" trail={[['Racks', to.racks], ['Measured deductions', to.deductions]]} notes={<Cautions />}
      under={<span className="soft">The machines that parts are tried on. Open one to see or change it.</span>}
      block={[['Sheet', 'Floor'], ['Machines', value ? String(value.machines.length) : '–'], ['Who', nameOnRecord() || 'local'], ['What is kept', 'every revision']]}
    >
      <div className="body">
        <Fault sentence={fault} again={again} />
        {!value && !fault && <Waiting what="Fetching the floor" />}
        {value?.unreadable.map((words) => <Warning key={words} word="Cannot be read.">{words}</Warning>)}
        {value && (
          <div className="scroll" tabIndex={0} role="group" aria-label="Machines">
            <table className="board">
              <thead><tr><th scope="col">Machine</th><th scope="col" className="number">Rating kN</th><th scope="col" className="number">Bed mm</th><th scope="col" className="number">Opens mm</th><th scope="col">X · R · Z</th><th scope="col">Condition</th><th scope="col" className="number">Revision</th><th scope="col"><span className="hidden">Open</span></th></tr></thead>
              <tbody>
                {value.machines.map((m) => {
                  const { machine, condition } = value.revisions[m.id]!;
                  return (
                    <tr key={m.id}>
                      <th scope="row"><span className="machine">{m.name}</span>{m.demo && <> <span className="tag">demo</span></>}<span className="small soft summary">{m.summary}</span><Beware of={m.beware} /></th>
                      <td className="number">{figure(m.rating / 1000, 0)}</td><td className="number">{figure(m.length, 0)}</td><td className="number">{figure(m.openHeight, 0)}</td>
                      <td>{[m.gauge.x, m.gauge.r, m.gauge.z].map(({ drive }) => drive).join(' · ')}</td>
                      <td>{m.condition}{(m.condition !== 'new' || condition !== null) && <><br /><a className="small" href={to.condition(m.id)}>{condition === null ? <><span aria-hidden="true">⚠</span> no record: not known</> : `record, revision ${condition}`}</a></>}</td>
                      <td className="number">{machine}</td>
                      <td><a className="button" href={to.machine(m.id)} aria-label={`Open ${m.name}`}>Open</a></td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
        )}
        <div className="buttons section no-print">
          <a className="button next" href={to.machine('new')}>Add a machine</a>
          <a className="button" href="/api/floor.json" download>Save the floor as JSON</a>
          <a className="button" href="/api/floor.csv" download>Save the floor as CSV</a>
          <HandIn label="Take machines in from JSON" accept=".json" take={(text) => takeIn(JSON.parse(text))} />
          <HandIn label="Take machines in from CSV" accept=".csv" take={(csv) => takeIn({ csv })} />
        </div>
      </div>
    </Sheet>
  );
};
