import { useId, useState, type FormEvent } from 'react';
import { FigureInput } from '../sheet/FigureField.js';
import { figureWithin } from '../shop/figureWithin.js';

interface NumberChangeProps {
  /** As it stands in a sentence. */
  readonly what: string;
  readonly unit: 'mm' | 'degrees';
  /** Where it says more than what and unit. */
  readonly label?: string;
  readonly value: number | undefined;
  readonly least?: number;
  readonly most: number;
  readonly send: (value: number) => void;
}

/** A figure and the button that sets it; the button can be pressed once the figure is another. */
export const NumberChange = ({ what, unit, label = `${what}, ${unit}`, value, least = 0, most, send }: NumberChangeProps) => {
  const [typed, setTyped] = useState(value === undefined ? '' : String(Number(value.toFixed(4))));
  const id = useId();
  const range = { what, unit, least, most, mayStayOut: true };
  const read = figureWithin(typed, range);
  const now = read.ok ? read.value : undefined;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (now !== undefined && now !== value) send(now);
  };
  return (
    <form noValidate className="change" onSubmit={submit}>
      <label htmlFor={id}>{label}</label>
      <FigureInput id={id} text={typed} type={setTyped} range={range} />
      <button type="submit" disabled={now === undefined || now === value} aria-label={`Set ${label}`}>Set</button>
    </form>
  );
};

interface ChoiceChangeProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly send: (value: T) => void;
}

/** A choice that is set by the button beside it. */
export const ChoiceChange = <T extends string>({ label, value, choices, send }: ChoiceChangeProps<T>) => {
  const [chosen, setChosen] = useState(value);
  const id = useId();
  return (
    <form noValidate className="change" onSubmit={(event) => { event.preventDefault(); if (chosen !== value) send(chosen); }}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={chosen} onChange={(event) => setChosen(event.target.value as T)}>
        {choices.map(([it, words]) => <option key={it} value={it}>{words}</option>)}
      </select>
      <button type="submit" disabled={chosen === value} aria-label={`Set ${label}`}>Set</button>
    </form>
  );
};

/** A line of writing that is set by the button beside it. */
export const TextChange = ({ label, value, send }: { readonly label: string; readonly value: string; readonly send: (value: string) => void }) => {
  const [typed, setTyped] = useState(value);
  const id = useId();
  return (
    <form noValidate className="change wide" onSubmit={(event) => { event.preventDefault(); if (typed.trim() !== value) send(typed.trim()); }}>
      <label htmlFor={id}>{label}</label>
      <input id={id} type="text" value={typed} spellCheck={false} autoComplete="off" onChange={(event) => setTyped(event.target.value)} />
      <button type="submit" disabled={typed.trim() === value} aria-label={`Set ${label}`}>Set</button>
    </form>
  );
};
