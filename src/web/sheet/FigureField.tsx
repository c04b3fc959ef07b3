import { useId, useState } from 'react';
import { type FigureRange, figureWithin } from '../shop/figureWithin.js';

interface FigureInputProps {
  readonly text: string;
  readonly type: (text: string) => void;
  readonly range: FigureRange;
  /** Of the label that stands elsewhere; `name` where there is none. */
  readonly id?: string;
  readonly name?: string;
}

/** A typed figure, with a point or a comma, and under it what is wrong with it. */
export const FigureInput = ({ text, type, range, id, name }: FigureInputProps) => {
  const own = useId();
  const read = figureWithin(text, range);
  return (
    <>
      {/* a number field of the browser's leaves out a comma and takes 1,5 for 15 */}
      <input id={id ?? own} type="text" inputMode="decimal" autoComplete="off" value={text} aria-label={name} {...(read.ok ? {} : { 'aria-invalid': true, 'aria-describedby': `${own}-says` })} onChange={(event) => type(event.target.value)} />
      {!read.ok && <p className="field-fault" id={`${own}-says`} role="status"><span aria-hidden="true">⚠</span> {read.sentence}</p>}
    </>
  );
};

/** The same under its label. */
export const FigureField = ({ label, ...input }: Omit<FigureInputProps, 'id' | 'name'> & { readonly label: string }) => {
  const id = useId();
  return <div className="field"><label htmlFor={id}>{label}</label><FigureInput id={id} {...input} /></div>;
};

interface KeptFigureProps {
  readonly label: string;
  /** What stands in it at first. */
  readonly first: number | undefined;
  readonly range: FigureRange;
  /** The figure, or undefined while there is none or one that cannot be. */
  readonly change: (value: number | undefined) => void;
}

/** A field that keeps what is typed and passes on the figure. */
export const KeptFigure = ({ label, first, range, change }: KeptFigureProps) => {
  const [text, setText] = useState(first === undefined ? '' : String(first));
  return <FigureField label={label} text={text} range={range} type={(next) => {
    setText(next);
    const read = figureWithin(next, range);
    change(read.ok ? read.value : undefined);
  }} />;
};
