import { useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { remove, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { mm } from '../wording.js';

interface TakenListProps {
  readonly file: string;
  readonly parts: readonly PartRevision[];
  readonly changed: () => void;
}

/** The parts that a file of several gave: which are kept is chosen here, all at first. */
export const TakenList = ({ file, parts, changed }: TakenListProps) => {
  const [chosen, setChosen] = useState<readonly string[]>(parts.map(({ id }) => id));
  const [kept, setKept] = useState<readonly string[]>();
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  const left = parts.filter(({ id }) => kept === undefined || kept.includes(id));
  const keep = async (): Promise<void> => {
    setBusy(true);
    try {
      for (const { id } of parts) if (!chosen.includes(id)) await remove(`/api/parts/${encodeURIComponent(id)}`);
      setKept(chosen);
    } catch (refusal) {
      setFault(sentence(refusal));
    }
    setBusy(false);
    changed();
  };
  return (
    <fieldset className="taken">
      <legend>{file}: {left.length === 1 ? '1 part' : `${left.length} parts`} taken in{kept === undefined && parts.length > 1 ? '. Those that are not wanted can be dropped again.' : ''}</legend>
      {left.map(({ id, name, thickness, bends }) => (
        <div key={id} className="taken-line">
          <label className="choice">
            <input type="checkbox" checked={chosen.includes(id)} disabled={kept !== undefined || parts.length === 1} onChange={(event) => setChosen(event.target.checked ? [...chosen, id] : chosen.filter((it) => it !== id))} />
            <span>{name}: {mm(thickness)} thick, {bends === 0 ? 'flat, nothing to bend' : bends === 1 ? '1 bend' : `${bends} bends`}</span>
          </label>
          <a href={to.part(id)}>Open {name}</a>
        </div>
      ))}
      <Fault sentence={fault} />
      {kept === undefined && parts.length > 1 && (
        <div className="buttons">
          <button type="button" disabled={busy || chosen.length === parts.length} onClick={() => setChosen(parts.map(({ id }) => id))}>Choose all</button>
          <button type="button" disabled={busy || chosen.length === 0} onClick={() => setChosen([])}>Choose none</button>
          {chosen.length > 0 && chosen.length < parts.length && <button type="button" className="next" disabled={busy} onClick={() => void keep()}>Keep the {chosen.length} chosen, drop the others</button>}
        </div>
      )}
    </fieldset>
  );
};
