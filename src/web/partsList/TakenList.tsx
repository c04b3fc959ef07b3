import { useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { ApiFault, remove, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { mm } from '../wording.js';

const inWords = (name: string, thickness: number, bends: number): string =>
  `${name}: ${mm(thickness)} thick, ${bends === 0 ? 'flat, nothing to bend' : bends === 1 ? '1 bend' : `${bends} bends`}`;

interface TakenListProps {
  readonly file: string;
  readonly parts: readonly PartRevision[];
  readonly changed: () => void;
}

/** Purges a part; one that is gone already is gone. */
const dropped = async (id: string): Promise<void> => {
  try {
    await remove(`/api/parts/${encodeURIComponent(id)}`);
  } catch (refusal) {
    if (!(refusal instanceof ApiFault && refusal.status === 410)) throw refusal;
  }
};

/** The parts that a file of several gave: which are kept is chosen here, all at first. */
export const TakenList = ({ file, parts, changed }: TakenListProps) => {
  const [chosen, setChosen] = useState<readonly string[]>(parts.map(({ id }) => id));
  const [kept, setKept] = useState<readonly string[]>();
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  // a single part, or parts that were chosen already, leave nothing to choose
  const choosing = kept === undefined && parts.length > 1;
  const left = parts.filter(({ id }) => kept === undefined || kept.includes(id));
  const keep = async (): Promise<void> => {
    setBusy(true);
    try {
      for (const { id } of parts) if (!chosen.includes(id)) await dropped(id);
      setKept(chosen);
    } catch (refusal) {
      setFault(sentence(refusal));
    }
    setBusy(false);
    changed();
  };
  return (
    <fieldset className="taken">
      <legend>{file}: {left.length === 1 ? '1 part' : `${left.length} parts`} taken in{choosing ? '. Those that are not wanted can be dropped again.' : ''}</legend>
      {left.map(({ id, name, thickness, bends }) => (
        <div key={id} className="taken-line">
          {choosing ? (
            <label className="choice">
              <input type="checkbox" checked={chosen.includes(id)} disabled={busy} onChange={(event) => setChosen(event.target.checked ? [...chosen, id] : chosen.filter((it) => it !== id))} />
              <span>{inWords(name, thickness, bends)}</span>
            </label>
          ) : <span>{inWords(name, thickness, bends)}</span>}
          <a href={to.part(id)}>Open {name}</a>
        </div>
      ))}
      <Fault sentence={fault} />
      {choosing && (
        <div className="buttons">
          <button type="button" disabled={busy || chosen.length === parts.length} onClick={() => setChosen(parts.map(({ id }) => id))}>Choose all</button>
          <button type="button" disabled={busy || chosen.length === 0} onClick={() => setChosen([])}>Choose none</button>
          {chosen.length > 0 && chosen.length < parts.length && <button type="button" className="next" disabled={busy} onClick={() => void keep()}>Keep the {chosen.length} chosen, drop the others</button>}
        </div>
      )}
    </fieldset>
  );
};
