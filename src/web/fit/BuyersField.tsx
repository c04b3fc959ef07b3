import { useId, useRef, useState } from 'react';
import { sentence } from '../ask.js';

/** Bytes of a file that are read at most: what one question may bring, with room for the rest of it. */
const MOST = 3_500_000;

/** What the buyer has, as the field stands: nothing, something that is not read yet or cannot be, or its data. */
export type Told =
  | { readonly state: 'none' | 'awaited' }
  /** `id`: of what is kept here. */
  | { readonly state: 'told'; readonly data: unknown; readonly id?: string };

export const NONE_TOLD: Told = { state: 'none' };
const AWAITED: Told = { state: 'awaited' };

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
  readonly told: (told: Told) => void;
}

const NONE = '';
const FILE = 'from a file';

/** What the buyer has: nothing told, one that is kept here, or a file. */
export const BuyersField = ({ label, kept, fetch, accept, hint, read, told }: BuyersFieldProps) => {
  const [chosen, setChosen] = useState(NONE);
  const [fault, setFault] = useState<string>();
  const id = useId();
  // an answer that comes after another choice is of no use any more
  const choice = useRef(0);
  const tell = async (from: () => Promise<unknown>, of?: string): Promise<void> => {
    const mine = ++choice.current;
    setFault(undefined);
    told(AWAITED);
    try {
      const data = await from();
      if (choice.current === mine) told({ state: 'told', data, ...(of !== undefined && { id: of }) });
    } catch (wrong) {
      if (choice.current === mine) setFault(sentence(wrong));
    }
  };
  const drop = (then: Told): void => {
    choice.current++;
    setFault(undefined);
    told(then);
  };
  const choose = (next: string): void => {
    setChosen(next);
    if (next === NONE) drop(NONE_TOLD);
    else if (next === FILE) drop(AWAITED);
    else void tell(() => fetch(next.slice(5)), next.slice(5));
  };
  const take = (file: File | undefined): void => {
    if (file === undefined) return drop(AWAITED);
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
