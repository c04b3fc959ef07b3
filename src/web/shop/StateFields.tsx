import { ChoiceField, NumberField, TextField, YesNoField, useForm } from './fields.js';
import { at, isTree } from './tree.js';
import { WearFields } from './WearFields.js';

/** What was found on one day, field by field; an empty field is not known. */
export const StateFields = ({ path, length }: { readonly path: 'asFound' | 'overhauled'; readonly length: number }) => {
  const { data, set } = useForm();
  const drift = at(data, `${path}.ramDrift`);
  const instruments = at(data, `${path}.instruments`) as readonly unknown[];
  const bends = at(data, `${path}.testBends`) as readonly unknown[];
  const figure = ({ name, label }: { readonly name: string; readonly label: string }) => <NumberField path={`${path}.${name}`} label={label} orNothing />;
  return (
    <>
      <section className="grid-fields" aria-label="When and by whom">
        <TextField path={`${path}.date`} label="Day, YYYY-MM-DD" /><TextField path={`${path}.by`} label="By" />
      </section>
      <h3>Instruments</h3>
      <section className="grid-fields" aria-label="Instruments">
        {instruments.map((_, i) => <div key={i} className="pair wide"><TextField path={`${path}.instruments.${i}.what`} label={`Instrument ${i + 1}`} /><TextField path={`${path}.instruments.${i}.calibrated`} label="Calibrated, YYYY-MM-DD" orNothing /><button type="button" onClick={() => set(`${path}.instruments`, instruments.filter((__, k) => k !== i))} aria-label={`Remove instrument ${i + 1}`}>Remove</button></div>)}
        <div className="wide buttons"><button type="button" onClick={() => set(`${path}.instruments`, [...instruments, { what: '', calibrated: null }])}>Add an instrument</button></div>
      </section>
      <h3>Frame, force, guides</h3>
      <section className="grid-fields" aria-label="Frame, force, guides">
        <ChoiceField path={`${path}.throat`} label="Cracks or weld repair at the throat" choices={['nothing found', 'crack found', 'weld repair found']} orNothing /><TextField path={`${path}.throatWords`} label="Where, and how it was looked for" />
        <NumberField path={`${path}.forceReached`} label="Force reached, kN" per={1000} orNothing />{figure({ name: 'guideClearance', label: 'Clearance in the guides, mm' })}
        {isTree(drift) ? <><NumberField path={`${path}.ramDrift.mm`} label="Ram sank at rest by, mm" /><NumberField path={`${path}.ramDrift.seconds`} label="Ram drift: in so long, s" /><div className="field"><button type="button" onClick={() => set(`${path}.ramDrift`, null)}>Ram drift is not known</button></div></>
          : <div className="field"><span className="label">Ram drift under hold: not known</span><button type="button" onClick={() => set(`${path}.ramDrift`, { mm: 0, seconds: 60 })}>Enter it</button></div>}
      </section>
      <h3>Wear of bed and ram seats</h3>
      <WearFields path={`${path}.wear`} length={length} />
      <h3>Repeatability and gauge, plus and minus</h3>
      <section className="grid-fields" aria-label="Repeatability and gauge">
        {figure({ name: 'repeatability.ram', label: 'Ram, mm' })}{figure({ name: 'repeatability.x', label: 'X, mm' })}{figure({ name: 'repeatability.r', label: 'R, mm' })}{figure({ name: 'repeatability.z', label: 'Z, mm' })}
        {figure({ name: 'squareness', label: 'Gauge out of square, mm over 1,000 mm' })}{figure({ name: 'play', label: 'Play of a finger, mm' })}
        <YesNoField path={`${path}.crowningWorks`} label="Crowning works" orNothing /><YesNoField path={`${path}.tiltWorks`} label="Tilt of the ram works" orNothing />
      </section>
      <h3>Guarding</h3>
      <section className="grid-fields" aria-label="Guarding">
        <ChoiceField path={`${path}.guarding`} label="Guarding" choices={['present', 'missing']} orNothing />{figure({ name: 'stoppingTime', label: 'Stopping time, ms' })}<TextField path={`${path}.testedBy`} label="Tested by (competent person)" />
      </section>
      <h3>Test bends</h3>
      {bends.map((_, i) => (
        <fieldset key={i} className="test-bend"><legend>Test bend {i + 1}</legend>
          <section className="grid-fields" aria-label={`Test bend ${i + 1}`}>
            <ChoiceField path={`${path}.testBends.${i}.load`} label="Load" choices={['light', 'heavy']} /><TextField path={`${path}.testBends.${i}.metal`} label="Metal" /><NumberField path={`${path}.testBends.${i}.thickness`} label="Thickness, mm" />
            <NumberField path={`${path}.testBends.${i}.v`} label="V, mm" /><NumberField path={`${path}.testBends.${i}.length`} label="Length, mm" />
            {figure({ name: `testBends.${i}.includedAngles.left`, label: 'Left, degrees included' })}{figure({ name: `testBends.${i}.includedAngles.middle`, label: 'Middle, degrees included' })}{figure({ name: `testBends.${i}.includedAngles.right`, label: 'Right, degrees included' })}
            <button type="button" onClick={() => set(`${path}.testBends`, bends.filter((__, k) => k !== i))}>Remove test bend {i + 1}</button>
          </section>
        </fieldset>
      ))}
      <div className="buttons"><button type="button" onClick={() => set(`${path}.testBends`, [...bends, { load: bends.length === 0 ? 'light' : 'heavy', metal: 'DC01', thickness: 1.5, v: 12, length: 200, includedAngles: { left: null, middle: null, right: null } }])}>Add a test bend</button></div>
      <TextField path={`${path}.remarks`} label="Remarks" wide />
    </>
  );
};
