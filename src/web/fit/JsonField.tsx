import { useState } from 'react';

/** A file of data of the buyer's, read here and sent with the question; null takes it back. */
export const JsonField = ({ label, hint, told }: { readonly label: string; readonly hint: string; readonly told: (data: unknown) => void }) => {
  const [fault, setFault] = useState<string>();
  const read = async (file: File | undefined): Promise<void> => {
    setFault(undefined);
    if (file === undefined) return told(undefined);
    try {
      told(JSON.parse(await file.text()));
    } catch {
      told(undefined);
      setFault(`${file.name} is no JSON.`);
    }
  };
  return (
    <label className="field"><span>{label} <span className="soft">{hint}</span></span>
      <input type="file" accept=".json,application/json" onChange={(event) => void read(event.target.files?.[0])} />
      {fault && <span className="warning" role="alert">{fault}</span>}
    </label>
  );
};
