import { useRef, useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { ApiFault, remove, sentence } from '../ask.js';
import { to } from '../place.js';
import { Drawing } from '../sheet/Drawing.js';
import { Fault } from '../sheet/Fault.js';
import { day, figure } from '../wording.js';

/** One part of the list: its picture, what it is, and the way to purge it. */
export const PartRow = ({ part, purged }: { readonly part: PartRevision; readonly purged: () => void }) => {
  const ask = useRef<HTMLDialogElement>(null);
  const [fault, setFault] = useState<string>();
  const purge = async (): Promise<void> => {
    try {
      await remove(`/api/parts/${part.id}`);
      ask.current?.close();
      purged();
    } catch (refusal) {
      // somebody else was quicker: it is gone as was asked
      if (refusal instanceof ApiFault && refusal.status === 410) return purged();
      setFault(sentence(refusal));
    }
  };
  return (
    <li className="part">
      <a href={to.part(part.id)} className="part-link">
        <Drawing path={`/api/parts/${part.id}/picture.svg`} className="thumb" />
        <span className="part-name">{part.name}</span>
      </a>
      <p className="small">
        {figure(part.thickness, 2)} mm thick, {part.bends === 1 ? '1 bend' : `${part.bends} bends`} {part.demo && <span className="tag">demo</span>}
      </p>
      <p className="small soft part-from">{part.source ? part.source.fileName : part.change}; rev {part.revision}, {day(part.createdAt)}, {part.by}</p>
      <button type="button" className="quiet" onClick={() => ask.current?.showModal()} aria-label={`Delete ${part.name}`}>Delete</button>
      <dialog ref={ask} aria-label={`Delete ${part.name}?`}>
        <h2>Delete “{part.name}”?</h2>
        <p>Its file, all its revisions and its trials are purged and cannot be brought back. The record keeps only that it was done, when and by whom.</p>
        <Fault sentence={fault} />
        <div className="buttons">
          <button type="button" autoFocus onClick={() => ask.current?.close()}>Keep it</button>
          <button type="button" className="beware" onClick={() => void purge()}><span aria-hidden="true">⚠</span> Delete for good</button>
        </div>
      </dialog>
    </li>
  );
};
