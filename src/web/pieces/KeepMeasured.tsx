import { useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { post, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';

/** Puts what the strips told into the shop's own table, which the next trials take in place of the calculation. */
export const KeepMeasured = ({ trialId }: { readonly trialId: string }) => {
  const [kept, setKept] = useState<ShopRevision>();
  const [fault, setFault] = useState<string>();
  const keep = async (): Promise<void> => {
    try {
      setKept(await post<ShopRevision>('/api/deductions', { trialId }));
      setFault(undefined);
    } catch (refusal) {
      setFault(sentence(refusal));
    }
  };
  return (
    <>
      <div className="buttons no-print"><button type="button" onClick={() => void keep()}>Put them into the shop&rsquo;s table</button>{kept && <span role="status">{kept.change}: kept as revision {kept.revision}.</span>}</div>
      <Fault sentence={fault} />
      <p className="small soft">The next trials take the <a href={to.deductions}>shop&rsquo;s measured deductions</a> in place of the calculation where metal, thickness, V and tip are the same. At the terminal: <code>trial --deductions</code>.</p>
    </>
  );
};
