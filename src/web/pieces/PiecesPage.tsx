import { useState } from 'react';
import type { PieceRecord } from '../../fit/index.js';
import type { StoredTrial } from '../../store/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { trialBlock } from '../trial/trialBlock.js';
import { useAnswer } from '../useAnswer.js';
import { Differences } from './Differences.js';
import { EntryList } from './EntryList.js';
import { PieceForm } from './PieceForm.js';
import { StripSection } from './StripSection.js';
import type { Pieces } from './pieces.js';

/** Pieces made of a trial: written down at the machine, and how they differ from what was predicted. */
export const PiecesPage = ({ id }: { readonly id: string }) => {
  const here = `/api/trials/${encodeURIComponent(id)}`;
  const trial = useAnswer<StoredTrial>(here);
  const pieces = useAnswer<Pieces>(`${here}/pieces`);
  const [said, setSaid] = useState('');
  const fault = trial.fault ?? pieces.fault;
  const again = (): void => { trial.again(); pieces.again(); };
  if (!trial.value || !pieces.value) {
    return <Sheet title="Pieces made" trail={[['Parts', to.parts], ['Trial', to.trial(id)]]} block={[['Sheet', 'Pieces']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what="Fetching the pieces" />}</div></Sheet>;
  }
  const { expected, tools, records, differences, deductions } = pieces.value;
  const made = trial.value.verdict === 'makes';
  const kept = ({ entry, corrects }: PieceRecord): void => {
    setSaid(`${corrects === null ? 'Written down' : 'Corrected'}: ${entry.kind === 'strip' ? 'strip ' : ''}${entry.serial}.`);
    pieces.again();
  };
  return (
    <Sheet
      title={`Pieces made: ${trial.value.partName} on ${trial.value.machineName}`} notes={<Cautions trial={trial.value.trial} />}
      trail={[['Parts', to.parts], [trial.value.partName, to.part(trial.value.partId)], ['Trial', to.trial(id)]]} block={trialBlock(trial.value, ['Sheet', 'Pieces made'])}
    >
      <div className="body">
        {!made && <Warning word="Not to be bent.">The trial has no plan that is shown to hold, so no piece is written down by it. <a href={to.trial(id)}>Why not.</a></Warning>}
        {made && (
          <section className="section no-print" aria-labelledby="write-title">
            <h2 id="write-title">Write a piece down</h2>
            <PieceForm here={here} expected={expected} tools={tools} kept={kept} />
            <p role="status">{said}</p>
          </section>
        )}
        <Fault sentence={fault} again={again} />
        <section className="section" aria-labelledby="differ-title">
          <h2 id="differ-title">Measured less predicted</h2>
          {differences.length === 0 ? <p>No piece is written down yet.</p> : <Differences differences={differences} />}
        </section>
        {records.length > 0 && (
          <section className="section" aria-labelledby="all-title">
            <h2 id="all-title">All entries</h2>
            <EntryList here={here} trial={trial.value.trial} expected={expected} tools={tools} records={records} kept={made ? kept : undefined} />
          </section>
        )}
        {(made || deductions.length > 0) && <StripSection here={here} trialId={id} trial={trial.value.trial} deductions={deductions} kept={made ? kept : undefined} />}
      </div>
    </Sheet>
  );
};
