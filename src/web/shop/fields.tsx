import { createContext, useContext, useId, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import type { DataFault } from '../../shop/index.js';
import { faultWords } from './faultWords.js';
import { figureTyped, inUnit, twoReadings } from './figureTyped.js';
import { at, isTree, withAt } from './tree.js';

/** The data of a form, how one field is set, and what is wrong with it by field. */
interface Form {
  readonly data: unknown;
  readonly set: (path: string, value: unknown) => void;
  /** All of the data at once, from what it is by then. */
  readonly alter: (how: (data: unknown) => unknown) => void;
  readonly faults: ReadonlyMap<string, string>;
  /** Is what is wrong with this field told by now? Of an empty one only when somebody was there, or asked for all. */
  readonly told: (path: string) => boolean;
  readonly beenAt: (path: string) => void;
  readonly tellAll: () => void;
}

const FormOf = createContext<Form>({ data: {}, set: () => undefined, alter: () => undefined, faults: new Map(), told: () => true, beenAt: () => undefined, tellAll: () => undefined });

const isEmpty = (value: unknown): boolean => value === undefined || value === '' || (Array.isArray(value) && value.length === 0);

/** What a parser found wrong, by field; without the entry's name in front, which the form has in its title. */
const faultsBy = (fault: DataFault | undefined): ReadonlyMap<string, string> =>
  new Map([...(fault ? [fault, ...(fault.others ?? [])] : [])].reverse().map((f) => [f.field, f.sentence.replace(`${f.entry}: `, '')]));

export const DataForm = ({ data, change, fault, children }: { readonly data: unknown; readonly change: (data: unknown) => void; readonly fault: DataFault | undefined; readonly children: ReactNode }) => {
  // what a file says arrives later than what is typed meanwhile: both go on what stands in the form by then
  const latest = useRef(data);
  useLayoutEffect(() => { latest.current = data; }, [data]);
  const alter = (how: (data: unknown) => unknown): void => {
    latest.current = how(latest.current);
    change(latest.current);
  };
  const [been, setBeen] = useState<ReadonlySet<string> | 'everywhere'>(new Set());
  const beenAt = (path: string): void => setBeen((before) => (before === 'everywhere' ? before : new Set([...before, path])));
  return (
    <FormOf.Provider value={{
      data, alter, faults: faultsBy(fault), beenAt, tellAll: () => setBeen('everywhere'),
      told: (path) => been === 'everywhere' || been.has(path) || !isEmpty(at(data, path)),
      set: (path, value) => {
        beenAt(path);
        alter((now) => withAt(now, path, value));
      },
    }}>{children}</FormOf.Provider>
  );
};

/** The sentence that belongs to a field, or to anything under it that has no field of its own. */
const useSentence = (path: string, deep: boolean, label?: string, per = 1): string | undefined => {
  const { faults, data, told } = useContext(FormOf);
  if (!told(path)) return undefined;
  const own = faults.get(path);
  if (own !== undefined) return twoReadings(at(data, path)) ?? faultWords(path, own, label, per);
  const [field, sentence] = (deep ? [...faults].find(([name]) => name.startsWith(`${path}.`)) : undefined) ?? [];
  return field === undefined || sentence === undefined ? undefined : faultWords(field, sentence);
};

export const FieldFault = ({ path, id, label, per = 1, deep = false }: { readonly path: string; readonly id?: string; readonly label?: string; readonly per?: number; readonly deep?: boolean }) => {
  const sentence = useSentence(path, deep, label, per);
  return sentence === undefined ? null : <p className="field-fault" id={id} role="status"><span aria-hidden="true">⚠</span> {sentence}</p>;
};

const Labelled = ({ path, label, per = 1, children }: { readonly path: string; readonly label: string; readonly per?: number; readonly children: (ids: { readonly id: string; readonly 'aria-describedby'?: string; readonly 'aria-invalid'?: boolean }) => ReactNode }) => {
  const id = useId();
  const wrong = useSentence(path, false) !== undefined;
  const { beenAt } = useContext(FormOf);
  return (
    <div className="field" onBlur={() => beenAt(path)}><label htmlFor={id}>{label}</label>
      {children({ id, ...(wrong ? { 'aria-describedby': `${id}-says`, 'aria-invalid': true } : {}) })}
      <FieldFault path={path} id={`${id}-says`} label={label} per={per} />
    </div>
  );
};

/** What both halves of an offset tool make; for other tools nothing. */
export const StepFields = () => {
  const { data } = useContext(FormOf);
  return at(data, 'shape') === 'offset' ? <>
    <NumberField path="offset.height" label="Step, mm" /><NumberField path="offset.insideRadius" label="Inside radius of both bends, mm" />
    <NumberField path="offset.leastThickness" label="For sheet from, mm" /><NumberField path="offset.mostThickness" label="For sheet to, mm" />
  </> : null;
};

/** A figure. `orNothing`: an empty field is `null`, which is not known. `mayStayOut`: an empty field is not in the data. `per`: how many of the data's unit are one of the label's. */
export const NumberField = ({ path, label, orNothing = false, mayStayOut = false, per = 1 }: { readonly path: string; readonly label: string; readonly orNothing?: boolean; readonly mayStayOut?: boolean; readonly per?: number }) => {
  const { data, set } = useContext(FormOf);
  const value = at(data, path);
  const [typed, setTyped] = useState('');
  const held = value === null || value === undefined ? '' : String(typeof value === 'number' ? inUnit(value, 1 / per) : value as string);
  // what is typed stays as typed ('12.') while it means the figure that is held
  const shown = String(figureTyped(typed)) === held && typed !== '' ? typed : held;
  return (
    <Labelled path={path} label={label} per={per}>
      {(ids) => <input {...ids} type="text" inputMode="decimal" autoComplete="off" value={shown} {...(orNothing ? { placeholder: 'not known' } : {})} onChange={(event) => {
        const text = event.target.value;
        setTyped(text);
        set(path, text.trim() !== '' ? inUnit(figureTyped(text), per) : orNothing ? null : mayStayOut ? undefined : text);
      }} />}
    </Labelled>
  );
};

/** A line of writing. `orNothing`: an empty one is `null`, which is not known. */
export const TextField = ({ path, label, wide = false, orNothing = false }: { readonly path: string; readonly label: string; readonly wide?: boolean; readonly orNothing?: boolean }) => {
  const { data, set } = useContext(FormOf);
  return (
    <div className={wide ? 'wide' : undefined}><Labelled path={path} label={label}>
      {(ids) => <input {...ids} type="text" autoComplete="off" value={String((at(data, path) as string | undefined) ?? '')} {...(orNothing ? { placeholder: 'not known' } : {})} onChange={(event) => set(path, orNothing && event.target.value.trim() === '' ? null : event.target.value)} />}
    </Labelled></div>
  );
};

/** One of several words; `orNothing` offers `null` as 'not known'. */
export const ChoiceField = ({ path, label, choices, orNothing = false }: { readonly path: string; readonly label: string; readonly choices: readonly string[]; readonly orNothing?: boolean }) => {
  const { data, set } = useContext(FormOf);
  const value = at(data, path);
  return (
    <Labelled path={path} label={label}>
      {(ids) => (
        <select {...ids} value={value === null || value === undefined ? '' : String(value as string)} onChange={(event) => set(path, event.target.value === '' ? null : event.target.value)}>
          {orNothing ? <option value="">not known</option> : (value === undefined || value === '') && <option value="">not chosen yet</option>}
          {choices.map((c) => <option key={c} value={c}>{c}</option>)}
        </select>
      )}
    </Labelled>
  );
};

/** Yes, no, or (with `orNothing`) not known. */
export const YesNoField = ({ path, label, orNothing = false }: { readonly path: string; readonly label: string; readonly orNothing?: boolean }) => {
  const { data, set } = useContext(FormOf);
  const value = at(data, path);
  return (
    <Labelled path={path} label={label}>
      {(ids) => (
        <select {...ids} value={value === true ? 'yes' : value === false ? 'no' : ''} onChange={(event) => set(path, event.target.value === '' ? null : event.target.value === 'yes')}>
          {orNothing && <option value="">not known</option>}
          <option value="yes">yes</option><option value="no">no</option>
        </select>
      )}
    </Labelled>
  );
};

/** Several of a few words. */
export const SeveralField = ({ path, label, choices }: { readonly path: string; readonly label: string; readonly choices: readonly string[] }) => {
  const { data, set } = useContext(FormOf);
  const held = at(data, path);
  const list: readonly unknown[] = Array.isArray(held) ? held : [];
  return (
    <fieldset className="several"><legend>{label}</legend>
      {choices.map((c) => (
        <label key={c} className="choice"><input type="checkbox" checked={list.includes(c)} onChange={(event) => set(path, choices.filter((o) => (o === c ? event.target.checked : list.includes(o))))} />{c}</label>
      ))}
      <FieldFault path={path} deep />
    </fieldset>
  );
};

/** An axis of the gauge: how it is driven and the figures that go with it. */
export const AxisField = ({ path, label }: { readonly path: string; readonly label: string }) => {
  const { data, set } = useContext(FormOf);
  const axis = at(data, path);
  const drive = isTree(axis) ? axis['drive'] : undefined;
  const held = (name: string, other: number): unknown => (isTree(axis) && name in axis ? axis[name] : other);
  const change = (next: string): void => set(path, next === 'fixed' ? { drive: 'fixed', at: held('at', 0) }
    : { drive: next, min: held('min', 0), max: held('max', 500), ...(next === 'powered' ? { speed: held('speed', 200) } : { seconds: held('seconds', 30) }) });
  const id = useId();
  return (
    <fieldset className="axis"><legend>{label}</legend>
      <div className="field"><label htmlFor={id}>Moved</label>
        <select id={id} value={String(drive)} onChange={(event) => change(event.target.value)}><option>powered</option><option>by hand</option><option>fixed</option></select></div>
      {drive === 'fixed' ? <NumberField path={`${path}.at`} label="Stands at, mm" /> : <>
        <NumberField path={`${path}.min`} label="From, mm" /><NumberField path={`${path}.max`} label="To, mm" />
        {drive === 'powered' ? <NumberField path={`${path}.speed`} label="Speed, mm/s" /> : <NumberField path={`${path}.seconds`} label="Setting takes, s" />}
      </>}
      <FieldFault path={path} />
    </fieldset>
  );
};

/** A figure that is as new, was measured, or is not known. */
export const KnownField = ({ path, label, optional = false }: { readonly path: string; readonly label: string; readonly optional?: boolean }) => {
  const { data, set } = useContext(FormOf);
  const known = at(data, path);
  const source = isTree(known) ? String(known['source']) : '';
  const id = useId();
  return (
    <fieldset className="known"><legend>{label}</legend>
      <div className="field"><label htmlFor={id}>From where</label>
        <select id={id} value={source} onChange={(event) => {
          const next = event.target.value;
          set(path, next === '' ? undefined : next === 'not known' ? { source: next } : { source: next, value: isTree(known) && 'value' in known ? known['value'] : 0.05 });
        }}>{optional && <option value="">not stated</option>}<option>as new</option><option>measured</option><option>not known</option></select></div>
      {(source === 'as new' || source === 'measured') && <NumberField path={`${path}.value`} label="Plus and minus, mm" />}
      <FieldFault path={path} />
    </fieldset>
  );
};

/** Of a form that cannot be kept: its first sentence, so that none is missed, how many more stand beside the fields, and how many nobody has filled in yet. */
export const FirstFault = () => {
  const { faults, data, told, tellAll } = useContext(FormOf);
  const [first, ...more] = [...faults].reverse().filter(([path]) => told(path));
  const empty = [...faults.keys()].filter((path) => !told(path)).length;
  if (faults.size === 0) return null;
  return <>
    {/* first, and always of the same words: what leaving a field adds to the line must not move it from under the finger */}
    {empty > 0 && <button type="button" className="quiet" onClick={tellAll}>Show what is missing</button>}
    Not yet. {first && `${twoReadings(at(data, first[0])) ?? faultWords(first[0], first[1])}${more.length > 0 ? ` ${more.length} more beside the fields.` : ''}`}
    {empty > 0 && ` ${empty === 1 ? '1 field is' : `${empty} fields are`} still empty.`}
  </>;
};

export const useForm = (): Form => useContext(FormOf);
