import { useState } from 'react';
import { Fault } from '../sheet/Fault.js';
import { useForm } from './fields.js';

/** All of the data as text: what has no field of its own is changed here. */
export const WholeAsJson = ({ change }: { readonly change: (data: unknown) => void }) => {
  const { data } = useForm();
  const [typed, setTyped] = useState<string>();
  const [fault, setFault] = useState<string>();
  const take = (): void => {
    try {
      change(JSON.parse(typed ?? ''));
      setTyped(undefined);
      setFault(undefined);
    } catch (wrong) {
      setFault(`This is no JSON: ${(wrong as Error).message}.`);
    }
  };
  return (
    <details className="section whole"><summary>The whole as JSON (further cross-sections, and all of the above)</summary>
      <textarea rows={16} spellCheck={false} aria-label="The whole as JSON" value={typed ?? JSON.stringify(data, null, 1)} onChange={(event) => setTyped(event.target.value)} />
      <div className="buttons"><button type="button" disabled={typed === undefined} onClick={take}>Take this text</button></div>
      <Fault sentence={fault} />
    </details>
  );
};
