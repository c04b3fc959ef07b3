import { useMemo, useState } from 'react';
import { type Machine, parseFloor } from '../../shop/index.js';
import type { ShopRevision } from '../../store/index.js';
import { remove, sentence } from '../ask.js';
import { to, useGo } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day, kilonewtons, mm } from '../wording.js';
import { DataForm } from './fields.js';
import { freshMachine } from './freshMachine.js';
import { EnvelopeSection } from './EnvelopeSection.js';
import { Keep } from './Keep.js';
import { MachineForm } from './MachineForm.js';
import { Revisions } from './Revisions.js';
import { type Piece, SectionView } from './SectionView.js';
import { at } from './tree.js';
import { type Entry, useEntry } from './useEntry.js';
import { WholeAsJson } from './WholeAsJson.js';

interface MachineEntry extends Entry {
  readonly condition: ShopRevision | null;
}

/** The press from the side, ram at its highest, the gauge in the middle of its travel. */
const piecesOf = (m: Machine): Piece[] => {
  const of = (axis: Machine['gauge']['x']): number => (axis.drive === 'fixed' ? axis.at : Math.min(axis.max, Math.max(axis.min, 120)));
  const gauge = [of(m.gauge.x), of(m.gauge.r)] as const;
  const upper = [0, m.openHeight] as const;
  return [
    ...m.bed.map((contour): Piece => ({ contour, name: 'bed', at: [0, 0], look: 'machine' })),
    ...m.beam.map((contour): Piece => ({ contour, name: 'beam of the ram', at: upper, look: 'machine' })),
    ...m.clamp.map((contour): Piece => ({ contour, name: 'clamps', at: upper, look: 'tool' })),
    { contour: m.gauge.beam, name: 'gauge beam', at: gauge, look: 'gauge' },
    { contour: m.gauge.finger.profile, name: 'finger', at: gauge, look: 'gauge' },
  ];
};

/** One machine: its data, checked and drawn as they are typed, kept as revisions. */
export const MachinePage = ({ id }: { readonly id: string }) => {
  const go = useGo();
  const isNew = id === 'new';
  const entry = useEntry<MachineEntry>(isNew ? null : `/api/machines/${encodeURIComponent(id)}`, useMemo(() => (isNew ? freshMachine() : undefined), [isNew]), isNew ? 'new machine' : undefined);
  const { data, value } = entry;
  const read = useMemo(() => (data === undefined ? undefined : parseFloor([data])), [data]);
  const machine = read?.ok ? read.value[0] : undefined;
  const [last, setLast] = useState<Machine>();
  if (machine && machine !== last) setLast(machine);
  const [refusal, setRefusal] = useState<string>();
  const name = (at(data, 'name') as string | undefined) || (isNew ? 'New machine' : 'Machine');
  const takeOff = (): void => {
    remove(`/api/machines/${encodeURIComponent(id)}`).then(() => go(to.floor), (fault: unknown) => setRefusal(sentence(fault)));
  };
  return (
    <Sheet
      title={name} trail={[['Floor', to.floor]]} notes={<Cautions />}
      under={value && <a href={to.condition(id)}>{value.condition ? `Condition record, revision ${value.condition.revision}` : 'Begin a condition record'}</a>}
      block={[
        ['Machine', name], ['Revision', value ? String(value.revision) : isNew ? 'new' : '–'], ['Rating', last ? kilonewtons(last.rating) : '–'], ['Length', last ? mm(last.length, 0) : '–'],
        ['Who', value?.by ?? '–'], ['When', value ? day(value.createdAt) : '–'],
      ]}
    >
      <div className="body">
        <Fault sentence={entry.fault} again={entry.again} />
        <Fault sentence={refusal} />
        {data === undefined && !entry.fault && <Waiting what="Fetching the machine" />}
        {value && <EnvelopeSection id={id} />}
        {data !== undefined && (
          <DataForm data={data} change={entry.change} fault={read?.ok === false ? read.fault : undefined}>
            {value && <h2>Its data</h2>}
            <Keep path="/api/machines" data={data} after={entry.after} good={machine !== undefined} changed={entry.changed} change={entry.lastChange} forget={entry.forget} merge={isNew ? undefined : { path: `/api/machines/${encodeURIComponent(id)}`, mine: data, take: entry.rebase }} kept={(kept) => { entry.kept(); if (isNew) go(to.machine(kept.id)); }} />
            <div className="columns shop-columns">
              <div className="shop-form">
                <MachineForm isNew={isNew} drawn={last} />
                <WholeAsJson change={entry.change} />
              </div>
              <div className={machine ? 'shop-picture' : 'shop-picture stale'}>
                {last && <SectionView pieces={piecesOf(last)} title={`Cross-section of ${last.name}: bed, ram, clamps and gauge`} tallest={620} />}
                {isNew && <p className="small soft">The cross-sections are usual ones to begin with: put the machine's own in their place.</p>}
                {last ? <p className="small soft">Seen from the operator's right, ram at its highest, mm. The cross is the die seat on the bending plane. {machine ? '' : 'The picture shows what was last right.'}</p> : <p className="small soft">It is drawn as soon as every field can be read.</p>}
              </div>
            </div>
            {value && <Revisions revisions={value.revisions} shown={value.revision} show={entry.show} typed={entry.forget !== undefined} />}
            {value && <div className="buttons section no-print"><button type="button" className="beware" onClick={takeOff}>Take it off the floor</button><span className="soft small">Its revisions and trials stay.</span></div>}
          </DataForm>
        )}
      </div>
    </Sheet>
  );
};
