import { useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { nameOnRecord, setNameOnRecord } from '../ask.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { DropZone } from './DropZone.js';
import { PartRow } from './PartRow.js';

/** All parts, and the way in for another. */
export const PartsPage = () => {
  const { value, fault, again } = useAnswer<{ readonly parts: readonly PartRevision[] }>('/api/parts');
  const [by, setBy] = useState(nameOnRecord);
  const parts = value?.parts;
  return (
    <Sheet
      title="Parts"
      under={<span className="soft">Hand in a part, then try it on a machine or on all of them.</span>}
      trail={[]}
      block={[
        ['Sheet', 'Parts'],
        ['How many', parts ? String(parts.length) : '–'],
        ['Who', by || 'local'],
        ['What is kept', 'on this server alone'],
      ]}
      notes={
        <label className="field name-field no-print">
          <span>Your name on the record <span className="soft">(may stay empty)</span></span>
          <input type="text" maxLength={40} value={by} autoComplete="off" onChange={(event) => {
            setBy(event.target.value);
            setNameOnRecord(event.target.value);
          }} />
        </label>
      }
    >
      <div className="body">
        <DropZone added={again} />
        <Fault sentence={fault} />
        {!parts && !fault && <Waiting what="Fetching the parts" />}
        {parts && parts.length === 0 && <p className="empty">No part is here yet. Hand in a STEP file above to begin.</p>}
        {parts && parts.length > 0 && (
          <ul className="parts" aria-label="Parts">
            {parts.map((part) => <PartRow key={part.id} part={part} purged={again} />)}
          </ul>
        )}
      </div>
    </Sheet>
  );
};
