import { useMemo, useState } from 'react';
import { type ConditionRecord, type ConditionState, type Machine, ACCURACY_STANDARDS, conditionFigures, parseCondition, stateOf, withCondition } from '../../shop/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { day } from '../wording.js';
import { ChoiceField, DataForm, NumberField, TextField } from './fields.js';
import { ConditionResult } from './ConditionResult.js';
import { Keep } from './Keep.js';
import { Revisions } from './Revisions.js';
import { StateFields } from './StateFields.js';
import { at } from './tree.js';
import { type Entry, useEntry } from './useEntry.js';
import { WearPicture } from './WearPicture.js';

const today = (): string => new Date().toISOString().slice(0, 10);

const nothingYet = (): ConditionState => ({
  date: today(), by: '', instruments: [], throat: null, throatWords: '', ramDrift: null, forceReached: null, guideClearance: null, wear: [], squareness: null, play: null,
  repeatability: { ram: null, x: null, r: null, z: null }, crowningWorks: null, tiltWorks: null, guarding: null, stoppingTime: null, testedBy: '', testBends: [], remarks: '',
});

/** The condition record of a machine taken in used: as found, after an overhaul, and what follows for its promises. */
export const ConditionPage = ({ id }: { readonly id: string }) => {
  const machinePath = `/api/machines/${encodeURIComponent(id)}`;
  const machine = useAnswer<{ readonly machine: Machine | null; readonly condition: object | null; readonly name: string }>(machinePath);
  const begun = machine.value?.condition !== null && machine.value !== undefined;
  const path = `${machinePath}/condition`;
  const blank = useMemo((): ConditionRecord => ({ machineId: id, demo: false, plate: { serial: '', year: null, force: null, mass: null }, manuals: null, supply: '', asFound: nothingYet(), overhaul: '', overhauled: null }), [id]);
  const entry = useEntry<Entry>(begun ? path : null, machine.value && !begun ? blank : undefined, path);
  const [length, setLength] = useState('1000');
  const { data } = entry;
  const read = useMemo(() => (data === undefined ? undefined : parseCondition(data)), [data]);
  const record = read?.ok ? read.value : undefined;
  const [last, setLast] = useState<ConditionRecord>();
  if (record && record !== last) setLast(record);
  const press = machine.value?.machine ?? undefined;
  const work = Number(length) > 0 ? Number(length) : 1000;
  const figures = press && last ? conditionFigures(press, last, work) : undefined;
  const overhauled = at(data, 'overhauled');
  const name = machine.value?.name ?? id;
  return (
    <Sheet
      title={`Condition: ${name}`} trail={[['Floor', to.floor], [name, to.machine(id)]]} notes={<Cautions />}
      under={<span>Check sheet: {begun && <><a href={`${machinePath}/check-sheet.pdf?length=${work}`} target="_blank" rel="noreferrer">filled</a> · </>}<a href={`${machinePath}/check-sheet.pdf?blank=true`} target="_blank" rel="noreferrer">blank, to fill in by hand</a></span>}
      block={[['Machine', name], ['Revision', entry.value ? String(entry.value.revision) : 'new'], ['Promises rest on', figures?.asOf ?? '–'], ['Day', last ? stateOf(last).date : '–'], ['Who', entry.value?.by ?? '–'], ['When', entry.value ? day(entry.value.createdAt) : '–']]}
    >
      <div className="body">
        <Fault sentence={machine.fault ?? entry.fault} again={() => { machine.again(); entry.again(); }} />
        {data === undefined && !machine.fault && !entry.fault && <Waiting what="Fetching the record" />}
        {figures && last && press && (
          <div className={record ? '' : 'stale'}>
            <div className="scroll" tabIndex={0} role="group" aria-label="Wear map as a picture"><WearPicture state={stateOf(last)} machine={press} figures={figures} /></div>
            <label className="field work-length"><span>Work along the bed, mm</span><input type="text" inputMode="decimal" value={length} onChange={(event) => setLength(event.target.value)} /></label>
            <ConditionResult figures={figures} beware={withCondition(press, last).beware ?? []} />
          </div>
        )}
        {data !== undefined && press && (
          <DataForm data={data} change={entry.change} fault={read?.ok === false ? read.fault : undefined}>
            <div className="section"><Keep path={path} data={data} after={entry.after} good={record !== undefined} changed={entry.changed} change={entry.lastChange} forget={entry.forget} merge={{ path, from: blank, mine: data, take: (draft) => { entry.rebase(draft); machine.again(); } }} kept={() => { entry.kept(); machine.again(); }} /></div>
            <div className="shop-form">
              <h2>As the plate says</h2>
              <section className="grid-fields" aria-label="Plate">
                <TextField path="plate.serial" label="Serial number" /><NumberField path="plate.year" label="Year" orNothing /><NumberField path="plate.force" label="Force, kN" per={1000} orNothing /><NumberField path="plate.mass" label="Mass, kg" orNothing />
                <ChoiceField path="manuals" label="Manuals" choices={['complete', 'in part', 'missing']} orNothing /><TextField path="supply" label="Supply" />
              </section>
              <details className="section" open={overhauled === null}><summary><h2>As found</h2></summary><StateFields path="asFound" length={press.length} /></details>
              {overhauled === null || overhauled === undefined
                ? <div className="buttons section"><button type="button" onClick={() => entry.change({ ...(data as ConditionRecord), overhauled: { ...nothingYet(), instruments: (data as ConditionRecord).asFound.instruments } })}>It was overhauled: record it again</button></div>
                : <details className="section" open><summary><h2>After the overhaul</h2></summary>
                    <TextField path="overhaul" label="What was done" wide />
                    <p className="small soft">Promises rest on what was measured after the overhaul alone. Copy a reading from above only where the overhaul did not touch it.</p>
                    <div className="buttons"><button type="button" onClick={() => entry.change({ ...(data as ConditionRecord), overhauled: { ...(data as ConditionRecord).asFound, date: (overhauled as ConditionState).date, by: (overhauled as ConditionState).by } })}>Copy all readings as found</button>
                      <button type="button" onClick={() => entry.change({ ...(data as ConditionRecord), overhauled: null })}>Take this part out</button></div>
                    <StateFields path="overhauled" length={press.length} /></details>}
            </div>
            {entry.value && <Revisions revisions={entry.value.revisions} shown={entry.value.revision} show={entry.show} typed={entry.forget !== undefined} />}
          </DataForm>
        )}
        <p className="small soft section">A record says what was measured on a day; it is no acceptance test. Tests of a press brake's accuracy are described in {ACCURACY_STANDARDS}; no tolerance of theirs is used here. Guarding and stopping time are for a competent person to test, by the local rules and the machine's manual.</p>
      </div>
    </Sheet>
  );
};
