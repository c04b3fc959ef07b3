import { useId, useState } from 'react';
import { sentence } from '../ask.js';

/** Bytes of a file that are read at most: what one question may bring, with room for the rest of it. */
const MOST = 3_500_000;

interface BuyersFieldProps {
  readonly label: string;
  /** What is kept here already and may be the buyer's. */
  readonly kept: readonly { readonly id: string; readonly name: string }[];
  /** The data of one that is kept. */
  readonly fetch: (id: string) => Promise<unknown>;
  readonly accept: string;
  readonly hint: string;
  /** The data of a file, or a thrown fault whose message is one sentence. */
  readonly read: (text: string, name: string) => unknown;
  /** The data that go with the question, and the id of what is kept here; undefined takes them back. */
  readonly told: (data: unknown, id?: string) => void;
}

const NONE = '';
const FILE = 'from a file';

/** What the buyer has: nothing told, one that is kept here, or a file. */
export const BuyersField = ({ label, kept, fetch, accept, hint, read, told }: BuyersFieldProps) => {
  const [chosen, setChosen] = useState(NONE);
  const [fault, setFault] = useState<string>();
  const id = useId();
  const tell = async (from: () => Promise<unknown>, of?: string): Promise<void> => {
    setFault(undefined);
    told(undefined);
    try {
      told(await from(), of);
    } catch (wrong) {
      setFault(sentence(wrong));
    }
  };
  const choose = (next: string): void => {
    setChosen(next);
    setFault(undefined);
    if (next === NONE || next === FILE) told(undefined);
    else void tell(() => fetch(next.slice(5)), next.slice(5));
  };
  const take = (file: File | undefined): void => {
    if (file === undefined) return told(undefined);
    void tell(async () => {
      if (file.size > MOST) throw new Error(`${file.name} has ${(file.size / 1e6).toFixed(1)} MB; up to ${MOST / 1e6} MB are taken.`);
      return read(await file.text(), file.name);
    });
  };
  return (
    <div className="field"><label htmlFor={id}>{label}</label>
      <select id={id} value={chosen} onChange={(event) => choose(event.target.value)}>
        <option value={NONE}>none told</option>
        {kept.map((k) => <option key={k.id} value={`kept ${k.id}`}>{k.name}</option>)}
        <option value={FILE}>{FILE}</option>
      </select>
      {chosen === FILE && <input type="file" accept={accept} aria-label={`${label}, file`} onChange={(event) => take(event.target.files?.[0])} />}
      <span className="small soft">{hint}</span>
      {fault !== undefined && <p className="field-fault" role="alert"><span aria-hidden="true">⚠</span> {fault}</p>}
    </div>
  );
};
