import { useId } from 'react';
import { AxisField, FieldFault, NumberField, TextField, useForm } from './fields.js';
import { at, isTree, withAt } from './tree.js';

/** What an option may change of a machine: name, label, and what it begins with. */
const EFFECTS: readonly (readonly [name: string, label: string, begins: unknown])[] = [
  ['x', 'the X axis', { drive: 'powered', min: 5, max: 500, speed: 300 }], ['r', 'the R axis', { drive: 'powered', min: 20, max: 200, speed: 100 }], ['z', 'the Z axis', { drive: 'powered', min: -1000, max: 1000, speed: 500 }],
  ['ownX', 'an X axis for each finger', { most: 200 }], ['openHeight', 'the open height', 500], ['throat', 'the throat', 400], ['crowning', 'powered crowning', 'powered'], ['stationSeconds', 'the time to build a station', 120],
];

const EffectFields = ({ path, name, label }: { readonly path: string; readonly name: string; readonly label: string }) => {
  switch (name) {
    case 'x': case 'r': case 'z':
      return <AxisField path={path} label={`Then ${label}`} />;
    case 'ownX':
      return <NumberField path={`${path}.most`} label="Fingers apart in X by at most, mm" />;
    case 'crowning':
      return <p className="field">Then the crowning is powered.<FieldFault path={path} /></p>;
    case 'stationSeconds':
      return <NumberField path={path} label="Then a station is built in, s" />;
    default:
      return <NumberField path={path} label={name === 'throat' ? 'Then the throat, mm' : 'Then the open height, mm'} />;
  }
};

/** The options that a machine may be bought with: name, price, and what each changes of it. */
export const OptionsField = () => {
  const { data, set } = useForm();
  const id = useId();
  const held = at(data, 'options');
  const list: readonly unknown[] = Array.isArray(held) ? held : [];
  const fresh = (): string => `option ${Array.from({ length: list.length + 1 }, (_, i) => i + 1).find((n) => !list.some((o) => at(o, 'id') === `option ${n}`))}`;
  const changed = (i: number, effect: unknown): void => set('options', list.map((o, k) => (k === i ? withAt(o, 'effect', isTree(effect) && Object.keys(effect).length > 0 ? effect : undefined) : o)));
  return (
    <>
      {list.map((option, i) => {
        const path = `options.${i}`;
        const effect = at(option, 'effect');
        const has = (name: string): boolean => isTree(effect) && name in effect;
        return (
          <fieldset key={i} className="listed wide"><legend>Option {i + 1}</legend>
            <section className="grid-fields" aria-label={`Option ${i + 1}`}>
              <TextField path={`${path}.id`} label="Short id" /><TextField path={`${path}.name`} label="Name" /><NumberField path={`${path}.price`} label="Price" />
              {EFFECTS.filter(([name]) => has(name)).map(([name, label]) => (
                <div key={name} className="effect"><EffectFields path={`${path}.effect.${name}`} name={name} label={label} />
                  <button type="button" onClick={() => changed(i, withAt(effect, name, undefined))}>It does not change {label}</button></div>
              ))}
              <div className="field"><label htmlFor={`${id}-${i}`}>{!isTree(effect) ? 'Changes nothing that a plan looks at; add' : 'It changes also'}</label>
                <select id={`${id}-${i}`} value="" onChange={(event) => { const [name, , begins] = EFFECTS.find(([n]) => n === event.target.value)!; changed(i, withAt(effect, name, begins)); }}>
                  <option value="">nothing more</option>{EFFECTS.filter(([name]) => !has(name)).map(([name, label]) => <option key={name} value={name}>{label}</option>)}
                </select></div>
            </section>
            <FieldFault path={`${path}.effect`} label={`Option ${i + 1}`} /><FieldFault path={path} label={`Option ${i + 1}`} />
            <div className="buttons"><button type="button" onClick={() => set('options', list.filter((_, k) => k !== i))}>Remove option {i + 1}</button></div>
          </fieldset>
        );
      })}
      <FieldFault path="options" label="Options" />
      <div className="buttons"><button type="button" onClick={() => set('options', [...list, { id: fresh(), name: 'New option', price: 0 }])}>Add an option</button></div>
    </>
  );
};
