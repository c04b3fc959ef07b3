import { type FormEvent, useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { post, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';

/** Makes a metal of the shop's own of what two strips told: strength, depth's zero, curve and deductions. */
export const KeepMetal = ({ trialId }: { readonly trialId: string }) => {
  const [name, setName] = useState('');
  const [kept, setKept] = useState<ShopRevision>();
  const [fault, setFault] = useState<string>();
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    try {
      setKept(await post<ShopRevision>('/api/metals', { trialId, name }));
      setFault(undefined);
    } catch (refusal) {
      setFault(sentence(refusal));
    }
  };
  return (
    <form className="no-print" onSubmit={(event) => void keep(event)}>
      <label className="field"><span>Name of this batch’s metal</span><input type="text" required maxLength={60} value={name} onChange={(event) => setName(event.target.value)} /></label>
      <div className="buttons"><button type="submit">Make it a metal of the shop’s own</button>{kept && <span role="status">{kept.name}, {kept.change} Kept as revision {kept.revision}.</span>}</div>
      <Fault sentence={fault} />
      <p className="small soft">Of two strips or more whose depth was read. Trials, fits and the page of one bend then offer it beside the list’s (<a href={to.metals}>own metals</a>).</p>
    </form>
  );
};
