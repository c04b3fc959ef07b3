import { useRef, useState } from 'react';
import { sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';

/** Bytes: the largest request of data that the server takes, less what goes round the text. */
const MOST = 950_000;
const megabytes = (bytes: number): string => (bytes / 1e6).toLocaleString('en-GB', { maximumFractionDigits: 2 });

/** A button that takes a file in as text and says what came of it. */
export const HandIn = ({ label, accept, take }: { readonly label: string; readonly accept: string; readonly take: (text: string) => Promise<string> }) => {
  const chooser = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState<string>();
  const [said, setSaid] = useState<string>();
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setSaid(undefined);
    if (file.size > MOST) return setFault(`${file.name} has ${megabytes(file.size)} MB; such a table is taken up to ${megabytes(MOST)} MB.`);
    try {
      setSaid(await take(await file.text()));
      setFault(undefined);
    } catch (refusal) {
      setFault(refusal instanceof SyntaxError ? `${file.name} is no JSON: ${refusal.message}.` : `${file.name}: ${sentence(refusal)}`);
    }
  };
  return (
    <>
      <button type="button" onClick={() => chooser.current?.click()}>{label}</button>
      <input ref={chooser} type="file" accept={accept} className="hidden" tabIndex={-1} aria-label={label} onChange={(event) => { void read(event.target.files?.[0]); event.target.value = ''; }} />
      {said !== undefined && <span role="status">{said}</span>}
      <Fault sentence={fault} />
    </>
  );
};
