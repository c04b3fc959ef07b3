import { useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { ApiFault, remove, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { mm } from '../wording.js';

const inWords = (name: string, thickness: number, bends: number): string =>
  `${name}: ${mm(thickness)} thick, ${bends === 0 ? 'flat, nothing to bend' : bends === 1 ? '1 bend' : `${bends} bends`}`;

/** A part that is one shape with an earlier part of its file. */
export interface Alike {
  readonly id: string;
  readonly of: string;
}

interface TakenListProps {
  readonly file: string;
  readonly parts: readonly PartRevision[];
  readonly alike: readonly Alike[];
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

/** The parts that a file of several gave: which are kept is chosen here, at first each shape once. */
export const TakenList = ({ file, parts, alike, changed }: TakenListProps) => {
  const once = parts.map(({ id }) => id).filter((id) => !alike.some((it) => it.id === id));
  const [chosen, setChosen] = useState<readonly string[]>(once);
  const [kept, setKept] = useState<readonly string[]>();
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  // a single part, or parts that were chosen already, leave nothing to choose
  const choosing = kept === undefined && parts.length > 1;
  const left = parts.filter(({ id }) => kept === undefined || kept.includes(id));
  const twinOf = (id: string): string => {
    const of = alike.find((it) => it.id === id)?.of;
    return of === undefined ? '' : `; the same shape as ${parts.find((it) => it.id === of)!.name}`;
  };
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
      {choosing && alike.length > 0 && <p>{once.length === 1 ? 'All are one shape' : `They are ${once.length} shapes`}: each is chosen once.</p>}
      {left.map(({ id, name, thickness, bends }) => (
        <div key={id} className="taken-line">
          {choosing ? (
            <label className="choice">
              <input type="checkbox" checked={chosen.includes(id)} disabled={busy} onChange={(event) => setChosen(event.target.checked ? [...chosen, id] : chosen.filter((it) => it !== id))} />
              <span>{inWords(name, thickness, bends)}{twinOf(id)}</span>
            </label>
          ) : <span>{inWords(name, thickness, bends)}</span>}
          <a href={to.part(id)}>Open {name}</a>
        </div>
      ))}
      <Fault sentence={fault} />
      {choosing && (
        <div className="buttons">
          {alike.length > 0 && <button type="button" disabled={busy} onClick={() => setChosen(once)}>Choose each shape once</button>}
          <button type="button" disabled={busy || chosen.length === parts.length} onClick={() => setChosen(parts.map(({ id }) => id))}>Choose all</button>
          <button type="button" disabled={busy || chosen.length === 0} onClick={() => setChosen([])}>Choose none</button>
          {chosen.length > 0 && chosen.length < parts.length && <button type="button" className="next" disabled={busy} onClick={() => void keep()}>Keep the {chosen.length} chosen, drop the others</button>}
        </div>
      )}
    </fieldset>
  );
};
