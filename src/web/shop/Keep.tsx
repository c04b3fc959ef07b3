import { useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { ApiFault, post, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { FirstFault } from './fields.js';
import { type Merge, Overtaken } from './Overtaken.js';

interface KeepProps {
  readonly path: string;
  readonly data: unknown;
  /** The revision on which this was typed; 0 for a new entry. */
  readonly after: number;
  readonly good: boolean;
  readonly changed: boolean;
  /** What that revision changed, in words; absent where it was of more than what is typed here. */
  readonly change?: string | undefined;
  readonly kept: (revision: ShopRevision) => void;
  /** Takes back what was typed; absent while nothing is. */
  readonly forget?: (() => void) | undefined;
  /** How it is brought together with what somebody else kept meanwhile; absent where it cannot be. */
  readonly merge?: Merge | undefined;
  /** Where it cannot be: what to do when somebody else was quicker. */
  readonly overtaken?: () => void;
}

/** Keeps what was typed as the next revision. */
export const Keep = ({ path, data, after, good, changed, change, kept, forget, merge, overtaken }: KeepProps) => {
  const [fault, setFault] = useState<string>();
  /** The revision on which it was refused because there is a later one. */
  const [late, setLate] = useState<number>();
  const [busy, setBusy] = useState(false);
  const keep = async (): Promise<void> => {
    setBusy(true);
    try {
      const revision = await post<ShopRevision>(path, { data, after });
      setFault(undefined);
      setLate(undefined);
      kept(revision);
    } catch (refusal) {
      setFault(sentence(refusal));
      const quicker = refusal instanceof ApiFault && refusal.status === 409;
      setLate(quicker ? after : undefined);
      if (quicker) overtaken?.();
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="keep no-print">
      <button type="button" className="next" disabled={!good || !changed || busy || (merge !== undefined && late === after)} onClick={() => void keep()}>{after === 0 ? 'Keep it' : `Keep as revision ${after + 1}`}</button>
      {forget && <button type="button" className="quiet" onClick={() => { setFault(undefined); setLate(undefined); forget(); }}>Forget what was typed</button>}
      <span className="soft" role="status">{!changed ? after === 0 ? 'Nothing is typed yet.' : change === undefined ? 'Nothing is changed.' : `Kept as revision ${after}: ${change}. Nothing is changed since.` : good ? 'Read in full.' : <FirstFault />}</span>
      <Fault sentence={fault} />
      {merge && late === after && <Overtaken merge={{ ...merge, take: (draft) => { setFault(undefined); setLate(undefined); merge.take(draft); } }} after={after} />}
    </div>
  );
};
