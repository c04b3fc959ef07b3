import { useMemo, useState } from 'react';
import { type Machine, asDrawn, demoShopData, parseFloor } from '../../shop/index.js';
import type { ShopRevision } from '../../store/index.js';
import { remove, sentence } from '../ask.js';
import { to, useGo } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day, kilonewtons, mm } from '../wording.js';
import { AxisField, ChoiceField, DataForm, KnownField, NumberField, SeveralField, TextField, YesNoField } from './fields.js';
import { EnvelopeSection } from './EnvelopeSection.js';
import { FacesField } from './FacesField.js';
import { Keep } from './Keep.js';
import { OptionsField } from './OptionsField.js';
import { Revisions } from './Revisions.js';
import { SectionField } from './SectionField.js';
import { type Piece, SectionView } from './SectionView.js';
import { at } from './tree.js';
import { type Entry, useEntry } from './useEntry.js';
import { WholeAsJson } from './WholeAsJson.js';

interface MachineEntry extends Entry {
  readonly condition: ShopRevision | null;
}

const LETTERS = [...'ABCDEFGH'];

/** A new machine starts as the second of the demo floor under another name, not marked demo. */
const fresh = (): unknown => ({ ...asDrawn(demoShopData().machines[1]) as object, id: 'new-machine', name: 'New machine', summary: 'One sentence for a buyer.', demo: false });

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
  const entry = useEntry<MachineEntry>(isNew ? null : `/api/machines/${encodeURIComponent(id)}`, useMemo(() => (isNew ? fresh() : undefined), [isNew]), isNew ? 'new machine' : undefined);
  const { data, value } = entry;
  const read = useMemo(() => (data === undefined ? undefined : parseFloor([data])), [data]);
  const machine = read?.ok ? read.value[0] : undefined;
  const [last, setLast] = useState<Machine>();
  if (machine && machine !== last) setLast(machine);
  const [refusal, setRefusal] = useState<string>();
  const name = String(at(data, 'name') as string | undefined ?? 'Machine');
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
                <section className="grid-fields" aria-label="What it is">
                  {isNew && <TextField path="id" label="Short id" />}<TextField path="name" label="Name" />
                  <ChoiceField path="condition" label="Taken in" choices={['new', 'reconditioned']} /><YesNoField path="demo" label="Invented, for demonstration" />
                  <TextField path="summary" label="One sentence for a buyer" wide />
                </section>
                <h2>Force and sizes</h2>
                <section className="grid-fields" aria-label="Force and sizes">
                  <NumberField path="rating" label="Rating, kN" per={1000} /><NumberField path="ratingPerLength" label="Rating per length, N/mm" /><NumberField path="length" label="Bed that takes tools, mm" />
                  <NumberField path="betweenFrames" label="Between side frames, mm" /><NumberField path="throat" label="Throat, mm" /><NumberField path="openHeight" label="Open height, mm" />
                  <NumberField path="shutHeight" label="Shut height, mm" /><NumberField path="bedHeight" label="Die seat over floor, mm" /><NumberField path="cylinders.spacing" label="Between cylinders, mm" />
                  <ChoiceField path="cylinders.synchronisation" label="Ends of the ram kept level" choices={['electronic', 'torsion bar']} /><ChoiceField path="crowning" label="Crowning" choices={['powered', 'by hand', 'none']} />
                  <NumberField path="speeds.approach" label="Approach, mm/s" /><NumberField path="speeds.bend" label="Bending, mm/s" /><NumberField path="speeds.return" label="Return, mm/s" /><NumberField path="changePoint" label="Speed changes over the sheet at, mm" /><NumberField path="stationSeconds" label="Time to build a station, s (may stay out)" mayStayOut />
                </section>
                <h2>Back gauge</h2>
                <section className="grid-fields" aria-label="Back gauge">
                  <AxisField path="gauge.x" label="X, back from the bending plane" /><AxisField path="gauge.r" label="R, up from the die seat" /><AxisField path="gauge.z" label="Z, along the bed" />
                  <NumberField path="gauge.fingers" label="Fingers" /><NumberField path="gauge.finger.width" label="Width of a finger, mm" /><NumberField path="gauge.apart" label="Least distance of two, mm" /><NumberField path="gauge.ownX.most" label="Fingers apart in X by at most, mm (may stay out)" mayStayOut />
                </section>
                <h2>Repeatability, as new or as measured</h2>
                <section className="grid-fields" aria-label="Repeatability">
                  <KnownField path="repeatability.ram" label="Ram" /><KnownField path="repeatability.x" label="X" /><KnownField path="repeatability.r" label="R" />
                  <KnownField path="gauge.play" label="Play of a finger" optional /><KnownField path="gauge.squareness" label="Squareness, over 1,000 mm" optional />
                </section>
                <p className="small soft">Of a machine taken in used, the condition record replaces these figures; what it does not hold is not known.</p>
                <h2>Cross-sections</h2>
                <section className="grid-fields" aria-label="Cross-sections">
                  <SectionField path="beam.0" label="Beam of the ram, from the punch's shoulder seat" shapes={['beam', 'rectangle']} of="machine" drawn={last?.beam[0]} />
                  <SectionField path="clamp.0" label="Clamp row, from the punch's shoulder seat" shapes={['clamp', 'rectangle']} of="machine" drawn={last?.clamp[0]} />
                  <SectionField path="bed.0" label="Bed, from the die seat" shapes={['bed', 'rectangle']} of="machine" drawn={last?.bed[0]} />
                  <SectionField path="gauge.finger.profile" label="Finger, from X and R" shapes={['finger', 'rectangle']} of="machine" drawn={last?.gauge.finger.profile} />
                  <SectionField path="gauge.beam" label="Gauge beam, from X and R" shapes={['rectangle']} of="machine" drawn={last?.gauge.beam} />
                </section>
                <FacesField />
                <h2>What it holds</h2>
                <SeveralField path="clampFamilies" label="Punch tangs" choices={LETTERS.map((l) => `tang ${l}`)} /><SeveralField path="seatFamilies" label="Die seats" choices={LETTERS.map((l) => `seat ${l}`)} />
                <h2>Options to be had with it</h2>
                <OptionsField />
                <h2>Price and site</h2>
                <section className="grid-fields" aria-label="Price and site">
                  <NumberField path="price" label="Price" /><TextField path="currency" label="Currency" /><NumberField path="site.mass" label="Mass, kg" /><NumberField path="site.footprint.0" label="Footprint wide, mm" />
                  <NumberField path="site.footprint.1" label="Footprint deep, mm" /><NumberField path="site.height" label="Height, mm" /><TextField path="site.supply" label="Supply" />
                </section>
                <WholeAsJson change={entry.change} />
              </div>
              <div className={machine ? 'shop-picture' : 'shop-picture stale'}>
                {last && <SectionView pieces={piecesOf(last)} title={`Cross-section of ${last.name}: bed, ram, clamps and gauge`} tallest={620} />}
                <p className="small soft">Seen from the operator's right, ram at its highest, mm. The cross is the die seat on the bending plane. {machine ? '' : 'The picture shows what was last right.'}</p>
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
