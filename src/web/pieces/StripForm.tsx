import { type FormEvent, useState } from 'react';
import type { BentStrip, PieceRecord } from '../../fit/index.js';
import type { Trial } from '../../trial/index.js';
import { post, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { useTypedFields } from '../shop/useTypedFields.js';
import { noNumber, typedNumber } from './pieces.js';

const FIELDS = [['bendAngle', 'Bend angle, released, degrees'], ['cut', 'Cut length across the bend, mm'], ['legA', 'One leg outside, mm'], ['legB', 'Other leg outside, mm'], ['thickness', 'Thickness, mm']] as const;
/** Read where they can be: two strips with their depth tell the metal. */
const MORE = [['depth', 'Depth from first touch, mm (may stay empty)'], ['underLoad', 'Bend angle under load, degrees (may stay empty)'], ['force', 'Greatest force, N per mm of bend (may stay empty)']] as const;
type Name = (typeof FIELDS | typeof MORE)[number][0];

const typedOf = ({ bendAngle, cut, legs: [legA, legB], thickness, depth, underLoad, force }: BentStrip): Readonly<Partial<Record<Name, string>>> =>
  Object.fromEntries(Object.entries({ bendAngle, cut, legA, legB, thickness, depth, underLoad, force }).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])));

const NOTHING = Object.fromEntries([...FIELDS, ...MORE].map(([name]) => [name, ''])) as Readonly<Record<Name, string>>;

interface StripFormProps {
  readonly here: string;
  readonly trial: Trial;
  /** The entry that is put right, and its id. */
  readonly before?: BentStrip;
  readonly corrects?: string;
  readonly kept: (record: PieceRecord) => void;
}

/** A test strip as it was measured: it tells the deduction of this metal batch and pair of tools. */
export const StripForm = ({ here, trial, before, corrects, kept }: StripFormProps) => {
  const [fields, type] = useTypedFields(corrects === undefined ? `strip ${here}` : null, {
    serial: before?.serial ?? '', batch: before?.batch ?? '', station: before?.station ?? trial.stations[0]?.id ?? '', ...NOTHING, ...(before && typedOf(before)),
  });
  const { serial, batch, station } = fields;
  const typed: Readonly<Record<Name, string>> = fields;
  const [fault, setFault] = useState<string>();
  const [sending, setSending] = useState(false);
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const value = (name: Name): number => typedNumber(typed[name]);
    const wrong = FIELDS.find(([name]) => Number.isNaN(value(name)));
    const read = MORE.filter(([name]) => typed[name].trim() !== '');
    const unread = read.find(([name]) => Number.isNaN(value(name)));
    if (unread) return setFault(noNumber(unread[1], typed[unread[0]]));
    if (wrong) return setFault(noNumber(wrong[1], typed[wrong[0]]));
    setFault(undefined);
    setSending(true);
    try {
      const record = await post<PieceRecord>(`${here}/pieces`, {
        kind: 'strip', serial, batch, station, ...(before && { instrument: before.instrument, note: before.note }), ...(corrects !== undefined && { corrects }),
        bendAngle: value('bendAngle'), cut: value('cut'), legs: [value('legA'), value('legB')], thickness: value('thickness'), ...Object.fromEntries(read.map(([name]) => [name, value(name)])),
      });
      type({ serial: '', ...NOTHING });
      kept(record);
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setSending(false);
    }
  };
  return (
    <form className="piece-form" onSubmit={(event) => void send(event)}>
      <div className="piece-head">
        <label className="field"><span>Mark on the strip</span><input type="text" autoFocus={before !== undefined} required maxLength={80} value={serial} onChange={(event) => type({ serial: event.target.value })} /></label>
        <label className="field"><span>Batch of the strip’s metal</span><input type="text" maxLength={80} value={batch} onChange={(event) => type({ batch: event.target.value })} /></label>
        <label className="field"><span>Station</span>
          <select value={station} onChange={(event) => type({ station: event.target.value })}>{trial.stations.map(({ id, punch, die }) => <option key={id} value={id}>{id}: {punch} over {die}</option>)}</select>
        </label>
      </div>
      <ul className="piece-fields">
        {[...FIELDS, ...MORE].map(([name, label]) => (
          <li key={name}><label><span className="what">{label}</span><input type="text" inputMode="decimal" autoComplete="off" value={typed[name]} onChange={(event) => type({ [name]: event.target.value })} /></label></li>
        ))}
      </ul>
      <div className="buttons"><button type="submit" disabled={sending}>{before ? 'Write down the correction' : 'Write the strip down'}</button></div>
      <Fault sentence={fault} />
    </form>
  );
};
