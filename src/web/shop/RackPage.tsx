import { useMemo, useState } from 'react';
import { type Rack, type Tool, parseRack } from '../../shop/index.js';
import type { ShopRevision } from '../../store/index.js';
import { post, remove, sentence } from '../ask.js';
import { to, useGo } from '../place.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day, figure, mm } from '../wording.js';
import { DataForm, NumberField, TextField, YesNoField } from './fields.js';
import { HandIn } from './HandIn.js';
import { Keep } from './Keep.js';
import { Revisions } from './Revisions.js';
import { SectionView } from './SectionView.js';
import { at } from './tree.js';
import { type Entry, useEntry } from './useEntry.js';

interface RackEntry extends Entry {
  readonly rack: Rack | null;
}

const what = (t: Tool): string =>
  t.offset ? `offset, step ${figure(t.offset.height, 1)} for ${figure(t.offset.leastThickness, 1)} to ${figure(t.offset.mostThickness, 1)}` :
  t.kind === 'punch' ? `${t.shape}, ${figure(t.includedAngle, 0)}° included, tip radius ${figure(t.tipRadius, 1)}` : t.shape === 'anvil' ? 'anvil' : `V ${figure(t.v, 0)} ${t.vConvention}, ${figure(t.includedAngle, 0)}° included`;

const Row = ({ rack, tool }: { readonly rack: string; readonly tool: Tool }) => (
  <tr>
    <td className="thumb-cell"><SectionView pieces={[{ contour: tool.profile, name: tool.name, at: [0, 0], look: 'tool' }]} title={`Cross-section of ${tool.name}`} tallest={300} /></td>
    <th scope="row"><span className="machine">{tool.name}</span>{tool.demo && <> <span className="tag">demo</span></>}<span className="small soft summary">{what(tool)}</span></th>
    <td className="number">{figure(tool.height, 1)}</td><td className="number">{figure(tool.rating, 0)}</td><td>{tool.tang}</td>
    <td className="number">{figure(tool.segments.reduce((sum, s) => sum + s.length * s.count, 0), 0)}</td>
    <td><a className="button" href={to.tool(rack, tool.id)} aria-label={`Open ${tool.name}`}>Open</a></td>
  </tr>
);

/** What a fit may propose that the rack does not hold. */
const BEYOND = [['gooseneck', 'a gooseneck'], ['die', 'a die'], ['adapter', 'an adapter']] as const;

/** The tools of one rack. */
export const RackPage = ({ id }: { readonly id: string }) => {
  const go = useGo();
  const path = `/api/racks/${encodeURIComponent(id)}`;
  const entry = useEntry<RackEntry>(path);
  const { value, fault, show, kept, data } = entry;
  const read = useMemo(() => (data === undefined ? undefined : parseRack(data)), [data]);
  const [refusal, setRefusal] = useState<string>();
  const rack = value?.rack;
  const latest = value?.revisions.at(-1)?.revision;
  const csv = (mode: 'add' | 'replace') => async (text: string): Promise<string> => {
    const done = await post<ShopRevision>(`${path}/tools`, { csv: text, mode });
    kept();
    return `Kept as revision ${done.revision}: ${done.change}.`;
  };
  const table = (title: string, tools: readonly Tool[]) => (
    <section className="section"><h2>{title}</h2>
      <div className="scroll" tabIndex={0} role="group" aria-label={title}><table className="board tools">
        <thead><tr><th scope="col"><span className="hidden">Cross-section</span></th><th scope="col">Tool</th><th scope="col" className="number">Height mm</th><th scope="col" className="number">N/mm</th><th scope="col">Held by</th><th scope="col" className="number">At hand mm</th><th scope="col"><span className="hidden">Open</span></th></tr></thead>
        <tbody>{tools.map((t) => <Row key={t.id} rack={id} tool={t} />)}</tbody>
      </table></div>
    </section>
  );
  return (
    <Sheet
      title={value?.name ?? 'Rack'} trail={[['Floor', to.floor], ['Racks', to.racks]]} under={value && value.revision !== latest ? <span>revision {value.revision} of {latest}: an old one</span> : undefined}
      block={[['Rack', value?.name ?? '–'], ['Revision', value ? String(value.revision) : '–'], ['Tools', rack ? String(rack.punches.length + rack.dies.length) : '–'], ['Risers', rack ? String(rack.risers.length) : '–'], ['Who', value?.by ?? '–'], ['When', value ? day(value.createdAt) : '–']]}
    >
      <div className="body">
        <Fault sentence={fault} again={entry.again} />
        <Fault sentence={refusal} />
        {!value && !fault && <Waiting what="Fetching the rack" />}
        {value && (
          <div className="buttons no-print">
            <a className="button next" href={to.tool(id, 'new-punch')}>Add a punch</a><a className="button next" href={to.tool(id, 'new-die')}>Add a die</a><a className="button" href={to.tool(id, 'new-riser')}>Add a riser</a>
            <a className="button" href={`${path}/tools.csv`} download>Save as CSV</a><a className="button" href={`${path}/rack.json`} download>Save as JSON</a>
            <HandIn label="Add tools from CSV" accept=".csv" take={csv('add')} />
          </div>
        )}
        {value && data !== undefined && (
          <details className="section no-print"><summary>Name and currency of the rack, prices of tools beyond it</summary>
            <DataForm data={data} change={entry.change} fault={read?.ok === false ? read.fault : undefined}>
              <section className="grid-fields" aria-label="Name and currency"><TextField path="name" label="Name" /><TextField path="currency" label="Currency of its prices" /><YesNoField path="demo" label="Invented, for demonstration" /></section>
              <section className="grid-fields" aria-label="Prices of tools beyond the rack">{BEYOND.map(([kind, label]) => <NumberField key={kind} path={`pricesBeyond.${kind}`} label={`Price of ${label} beyond the rack, ${String(at(data, 'currency') ?? '')} (may stay out)`} mayStayOut />)}</section>
              <div className="section"><Keep path="/api/racks" data={data} after={entry.after} good={read?.ok === true} changed={entry.changed} change={entry.lastChange} forget={entry.forget} merge={{ path, mine: data, take: entry.rebase }} kept={kept} /></div>
            </DataForm>
          </details>
        )}
        {rack && table('Punches', rack.punches)}
        {rack && table('Dies', rack.dies)}
        {rack && rack.risers.length > 0 && (
          <section className="section"><h2>Risers</h2><table>
            <thead><tr><th scope="col">Riser</th><th scope="col" className="number">Height mm</th><th scope="col">Seat</th><th scope="col" className="number">At hand mm</th><th scope="col"><span className="hidden">Open</span></th></tr></thead>
            <tbody>{rack.risers.map((r) => <tr key={r.id}><th scope="row">{r.id}</th><td className="number">{mm(r.height, 1)}</td><td>{r.seat}</td><td className="number">{figure(r.length, 0)}</td><td><a className="button" href={to.tool(id, r.id)} aria-label={`Open ${r.id}`}>Open</a></td></tr>)}</tbody>
          </table></section>
        )}
        {value && <Revisions revisions={value.revisions} shown={value.revision} show={show} typed={entry.forget !== undefined} />}
        {value && <div className="buttons section no-print"><button type="button" className="beware" onClick={() => { remove(path).then(() => go(to.racks), (f: unknown) => setRefusal(sentence(f))); }}>Take this rack away</button></div>}
      </div>
    </Sheet>
  );
};
