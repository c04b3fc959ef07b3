import { useState } from 'react';
import type { BentStrip, PieceRecord } from '../../fit/index.js';
import type { StoredTrial } from '../../store/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { trialBlock } from '../trial/trialBlock.js';
import { useAnswer } from '../useAnswer.js';
import { asSentence, day, degrees, figure, mm } from '../wording.js';
import { Differences } from './Differences.js';
import { KeepMeasured } from './KeepMeasured.js';
import { KeepMetal } from './KeepMetal.js';
import { Measured } from './Measured.js';
import { PieceForm } from './PieceForm.js';
import { StripForm } from './StripForm.js';
import type { Pieces } from './pieces.js';

const stripSaid = (entry: BentStrip): string => (
  `strip: bend angle ${degrees(entry.bendAngle)}, cut ${mm(entry.cut)}, legs ${mm(entry.legs[0])} and ${mm(entry.legs[1])}, ${mm(entry.thickness)} thick${entry.depth === undefined ? '' : `, depth ${mm(entry.depth)}`}${entry.underLoad === undefined ? '' : `, ${degrees(entry.underLoad)} under load`}${entry.force === undefined ? '' : `, ${figure(entry.force, 0)} N/mm`}`);

/** Pieces made of a trial: written down at the machine, and how they differ from what was predicted. */
export const PiecesPage = ({ id }: { readonly id: string }) => {
  const here = `/api/trials/${encodeURIComponent(id)}`;
  const trial = useAnswer<StoredTrial>(here);
  const pieces = useAnswer<Pieces>(`${here}/pieces`);
  const [corrects, setCorrects] = useState<PieceRecord>();
  const [turn, setTurn] = useState(0);
  const fault = trial.fault ?? pieces.fault;
  if (!trial.value || !pieces.value) {
    return <Sheet title="Pieces made" trail={[['Parts', to.parts], ['Trial', to.trial(id)]]} block={[['Sheet', 'Pieces']]}><div className="body">{fault ? <Fault sentence={fault} again={() => { trial.again(); pieces.again(); }} /> : <Waiting what="Fetching the pieces" />}</div></Sheet>;
  }
  const { expected, tools, records, differences, deductions } = pieces.value;
  const made = trial.value.verdict === 'makes';
  const corrected = new Set(records.map((r) => r.corrects));
  const kept = (): void => {
    setCorrects(undefined);
    setTurn((n) => n + 1);
    pieces.again();
  };
  return (
    <Sheet
      title={`Pieces made: ${trial.value.partName} on ${trial.value.machineName}`} notes={<Cautions trial={trial.value.trial} />}
      trail={[['Parts', to.parts], [trial.value.partName, to.part(trial.value.partId)], ['Trial', to.trial(id)]]} block={trialBlock(trial.value, ['Sheet', 'Pieces made'])}
    >
      <div className="body">
        {!made && <Warning word="Not to be bent.">The trial has no plan that is shown to hold, so no piece is written down by it. <a href={to.trial(id)}>Why not.</a></Warning>}
        {made && <section className="section no-print" aria-labelledby="write-title">
          <h2 id="write-title">{corrects ? `Correct what was written of ${corrects.entry.serial}` : 'Write a piece down'}</h2>
          <PieceForm key={corrects?.id ?? 'new'} here={here} expected={expected} tools={tools} corrects={corrects} kept={kept} />
          {corrects && <button type="button" className="quiet" onClick={() => setCorrects(undefined)}>No correction after all</button>}
        </section>}
        <section className="section" aria-labelledby="differ-title">
          <h2 id="differ-title">Measured less predicted</h2>
          {differences.length === 0 ? <p>No piece is written down yet.</p> : <Differences differences={differences} />}
        </section>
        {records.length > 0 && (
          <section className="section" aria-labelledby="all-title">
            <h2 id="all-title">All entries</h2>
            <ul className="plain piece-list">
              {records.map((record) => (
                <li key={record.id} className={corrected.has(record.id) ? 'stale' : ''}>
                  <p><strong>{record.entry.serial}</strong>{record.entry.batch && `, batch ${record.entry.batch}`}{record.entry.kind === 'strip' && `: ${stripSaid(record.entry)}`}</p>
                  {record.entry.kind === 'piece' && <Measured piece={record.entry} />}
                  {record.entry.note && <p>{asSentence(record.entry.note)}</p>}
                  <p className="small soft">{record.by}, {day(record.createdAt)} {record.createdAt.slice(11, 16)} UTC{record.entry.instrument && `, measured with ${record.entry.instrument}`}{record.corrects !== null && '; corrects an earlier entry'}{corrected.has(record.id) && '; corrected since, not counted'}</p>
                  {made && !corrected.has(record.id) && record.entry.kind === 'piece' && <button type="button" className="no-print" onClick={() => { setCorrects(record); scrollTo(0, 0); }}>Correct {record.entry.serial}</button>}
                </li>
              ))}
            </ul>
          </section>
        )}
        {(made || deductions.length > 0) && <details className="section">
          <summary>Test strips and the deduction they tell</summary>
          {made && <StripForm key={turn} here={here} trial={trial.value.trial} kept={kept} />}
          {deductions.length > 0 && (
            <>
              <ul className="dots">{deductions.map((d) => <li key={`${d.v} ${d.tipRadius} ${d.bendAngle}`}>V {d.v} mm, tip radius {d.tipRadius} mm, bend angle {degrees(d.bendAngle)}: deduction {mm(d.deduction)} (± {figure(d.spread, 2)} mm on {d.pieces === 1 ? '1 strip' : `${d.pieces} strips`})</li>)}</ul>
              <div className="buttons"><a className="button" href={`${here}/deductions.csv`} download>Table of measured deductions (CSV)</a></div>
              <KeepMeasured trialId={id} />
              <KeepMetal trialId={id} />
            </>
          )}
        </details>}
      </div>
    </Sheet>
  );
};
