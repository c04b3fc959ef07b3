import { to, useGo } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day } from '../wording.js';
import { DataForm } from './fields.js';
import { Keep } from './Keep.js';
import { SectionView } from './SectionView.js';
import { ToolForm } from './ToolForm.js';
import { at } from './tree.js';
import { useToolOfRack } from './useToolOfRack.js';

/** One punch, die or riser of a rack: typed, checked and drawn, kept as the rack's next revision. */
export const ToolPage = ({ rackId, id }: { readonly rackId: string; readonly id: string }) => {
  const go = useGo();
  const it = useToolOfRack(rackId, id);
  const { entry, rack, list, tool, read, next, without, after, forget, last, good, ready } = it;
  const kept = (): void => {
    it.kept();
    go(to.rack(rackId));
  };
  const name = (at(tool, 'name') as string | undefined) || (at(tool, 'id') as string | undefined) || 'Tool';
  return (
    <Sheet
      title={name} trail={[['Racks', to.racks], [entry.value?.name ?? 'Rack', to.rack(rackId)]]} notes={<Cautions />}
      block={[['Tool', name], ['Rack', entry.value?.name ?? '–'], ['Rack revision', entry.value ? String(entry.value.revision) : '–'], ['Held by', String(at(tool, list === 'risers' ? 'seat' : 'tang') as string | undefined ?? '–')], ['Who', entry.value?.by ?? '–'], ['When', entry.value ? day(entry.value.createdAt) : '–']]}
    >
      <div className="body">
        <Fault sentence={entry.fault} again={entry.again} />
        {!rack && !entry.fault && <Waiting what="Fetching the rack" />}
        {rack && !tool && <p>There is no tool '{id}' in this rack.</p>}
        {ready && tool && list && (
          <DataForm data={tool} change={it.type} fault={read?.ok === false ? read.fault : undefined}>
            <Keep path="/api/racks" data={next} after={after} good={read?.ok === true} changed={it.changed} forget={forget} merge={it.merge} kept={kept} />
            <div className="columns shop-columns">
              <div className="shop-form">
                <ToolForm list={list} currency={String(rack?.['currency'] ?? '')} drawn={last} />
                {without && <div className="section"><h2>Take it out of the rack</h2><Keep path="/api/racks" data={without} after={entry.latest} good changed overtaken={entry.again} kept={kept} /></div>}
              </div>
              {list !== 'risers' && (
                <div className={good ? 'shop-picture' : 'shop-picture stale'}>
                  {last && <SectionView pieces={[{ contour: last.profile, name: last.name, at: [0, 0], look: 'tool' }]} title={`Cross-section of ${last.name}`} />}
                  {it.isNew && <p className="small soft">The cross-section is a usual one to begin with: put the tool's own in its place.</p>}
                  {last ? <p className="small soft">Seen from the operator's right, the gauge to the right, mm. {good ? '' : 'The picture shows what was last right.'}</p> : <p className="small soft">It is drawn as soon as every field can be read.</p>}
                </div>
              )}
            </div>
          </DataForm>
        )}
      </div>
    </Sheet>
  );
};
