import { useState } from 'react';
import type { PartRevision } from '../../store/index.js';
import { sendFile } from '../ask.js';
import { nameOnRecord, setNameOnRecord } from '../nameOnRecord.js';
import { FlatDesk } from '../flat/FlatDesk.js';
import { to, useGo } from '../place.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { DropZone } from './DropZone.js';
import { PartRow } from './PartRow.js';

/** All parts, and the way in for another. */
export const PartsPage = () => {
  const go = useGo();
  const { value, fault, again } = useAnswer<{ readonly parts: readonly PartRevision[] }>('/api/parts');
  const [by, setBy] = useState(nameOnRecord);
  const [flats, setFlats] = useState<readonly File[]>([]);
  const [flat, ...more] = flats;
  const parts = value?.parts;
  return (
    <Sheet
      title="Parts"
      under={<span className="soft">Hand in a part, then try it on a machine or on all of them, or <a href={to.fits}>several parts on several machines</a>. Or work out <a href={to.bend}>one bend</a>. The <a href={to.floor}>floor</a> and the <a href={to.racks}>racks</a>.</span>}
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
        <DropZone added={again} flat={setFlats} busy={flat !== undefined} />
        {flat && (
          <FlatDesk
            key={`${more.length} ${flat.name}`} file={flat} told={{ from: 'dxf' }} action="Take it in" leave={() => setFlats(more)}
            take={async (told) => {
              const { parts: taken } = await sendFile<{ readonly parts: readonly PartRevision[] }>('/api/parts', flat, { told: JSON.stringify(told) });
              if (more.length === 0) return go(to.part(taken[0]!.id));
              setFlats(more);
              again();
            }}
          />
        )}
        {more.length > 0 && <p className="small soft">Then: {more.map(({ name }) => name).join(', ')}.</p>}
        <Fault sentence={fault} again={again} />
        {!parts && !fault && <Waiting what="Fetching the parts" />}
        {parts && parts.length === 0 && <p className="empty">No part is here yet. Hand in a STEP or DXF file above to begin.</p>}
        {parts && parts.length > 0 && (
          <ul className="parts" aria-label="Parts">
            {parts.map((part) => <PartRow key={part.id} part={part} purged={again} />)}
          </ul>
        )}
      </div>
    </Sheet>
  );
};
