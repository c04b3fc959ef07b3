import { FieldFault, NumberField, TextField, useForm } from './fields.js';
import { at } from './tree.js';

/** The stop faces of a finger, each an upright edge of its cross-section. */
export const FacesField = () => {
  const { data, set } = useForm();
  const path = 'gauge.finger.faces';
  const held = at(data, path);
  const list: readonly unknown[] = Array.isArray(held) ? held : [];
  return (
    <fieldset className="listed wide"><legend>Stop faces of the finger: upright edges of its cross-section</legend>
      {list.map((_, i) => (
        <div key={i} className="listed-line">
          <TextField path={`${path}.${i}.name`} label={`Face ${i + 1}`} /><NumberField path={`${path}.${i}.behind`} label="Behind X, mm" /><NumberField path={`${path}.${i}.from`} label="Up from R, from, mm" /><NumberField path={`${path}.${i}.to`} label="To, mm" />
          <button type="button" onClick={() => set(path, list.filter((__, k) => k !== i))} aria-label={`Remove face ${i + 1}`}>Remove</button>
          <FieldFault path={`${path}.${i}`} label={`Face ${i + 1}`} />
        </div>
      ))}
      <FieldFault path={path} label="Stop faces" />
      <div className="buttons"><button type="button" onClick={() => set(path, [...list, { name: `face ${list.length + 1}`, behind: 0, from: 0, to: 10 }])}>Add a face</button></div>
    </fieldset>
  );
};
