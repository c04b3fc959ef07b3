import { type FormEvent, useState } from 'react';
import type { ExpectedFigure, MadePiece, PieceRecord } from '../../fit/index.js';
import { post, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { useTypedFields } from '../shop/useTypedFields.js';
import { figure } from '../wording.js';
import { noNumber, typedNumber } from './pieces.js';

const unit = (f: Pick<ExpectedFigure, 'unit'>): string => (f.unit === 'mm' ? 'mm' : 'degrees');

const HEAD = ['serial', 'batch', 'instrument', 'tools', 'note'] as const;
type Head = (typeof HEAD)[number];
const headOf = (fields: Readonly<Record<Head, string>>): Readonly<Record<string, string>> => Object.fromEntries(HEAD.map((name) => [name, fields[name]]));

/** The field of a figure, beside those of the piece. */
const ofFigure = (id: string): string => `figure ${id}`;

interface PieceFormProps {
  readonly here: string;
  readonly expected: readonly ExpectedFigure[];
  readonly tools: string;
  /** The entry that is put right, and its id. */
  readonly before?: MadePiece;
  readonly corrects?: string;
  readonly kept: (record: PieceRecord) => void;
}

/** A piece as it is measured at the machine: big fields, empty ones are left out. */
export const PieceForm = ({ here, expected, tools, before, corrects, kept }: PieceFormProps) => {
  const [fields, type] = useTypedFields(corrects === undefined ? `piece ${here}` : null, {
    serial: before?.serial ?? '', batch: before?.batch ?? '', instrument: before?.instrument ?? '', tools: before?.tools ?? tools, note: before?.note ?? '',
    ...Object.fromEntries(expected.map(({ id }) => [ofFigure(id), String(before?.figures.find((f) => f.id === id)?.measured ?? '')])),
  });
  const typed = (id: string): string => fields[ofFigure(id)] ?? '';
  const [fault, setFault] = useState<string>();
  const [sending, setSending] = useState(false);
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const measured = expected.flatMap(({ id }) => (typed(id).trim() === '' ? [] : [{ id, value: typedNumber(typed(id)) }]));
    const wrong = expected.find(({ id }) => measured.some((m) => m.id === id && Number.isNaN(m.value)));
    if (wrong) return setFault(noNumber(wrong.what, typed(wrong.id)));
    if (measured.length === 0) return setFault('Nothing is measured yet: type at least one figure.');
    setSending(true);
    setFault(undefined);
    try {
      const record = await post<PieceRecord>(`${here}/pieces`, { kind: 'piece', ...headOf(fields), measured, ...(corrects !== undefined && { corrects }) });
      // batch, instrument and tools are those of the next piece too
      type({ serial: '', note: '', ...Object.fromEntries(expected.map(({ id }) => [ofFigure(id), ''])) });
      kept(record);
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setSending(false);
    }
  };
  const field = (name: Head, label: string, required = false) => (
    <label className="field"><span>{label}</span><input type="text" autoFocus={before !== undefined && name === 'serial'} required={required} maxLength={name === 'note' || name === 'tools' ? 1000 : 80} value={fields[name]} onChange={(event) => type({ [name]: event.target.value })} /></label>
  );
  return (
    <form className="piece-form" onSubmit={(event) => void send(event)}>
      <div className="piece-head">{field('serial', 'Serial of the piece', true)}{field('batch', 'Batch of the metal')}{field('instrument', 'Measured with')}</div>
      <ul className="piece-fields">
        {expected.map((f) => (
          <li key={f.id}>
            <label>
              <span className="what">{f.what}</span>
              <input type="text" inputMode="decimal" autoComplete="off" value={typed(f.id)} placeholder={figure(f.predicted, f.unit === 'mm' ? 2 : 1)} onChange={(event) => type({ [ofFigure(f.id)]: event.target.value })} />
              <span className="small soft">{unit(f)}; {f.drawn === undefined || f.tolerance === null ? `predicted ${figure(f.predicted, f.unit === 'mm' ? 2 : 1)}` : `predicted ${figure(f.predicted, 2)}; drawn ${figure(f.drawn, 2)}`}{f.tolerance === null ? ', no tolerance asked' : ` ± ${figure(f.tolerance, 2)}`}</span>
            </label>
          </li>
        ))}
      </ul>
      {field('tools', 'Tools it was bent with')}
      {field('note', 'Note')}
      <div className="buttons"><button type="submit" className="next" disabled={sending}>{before ? 'Write down the correction' : 'Write the piece down'}</button></div>
      <Fault sentence={fault} />
    </form>
  );
};
