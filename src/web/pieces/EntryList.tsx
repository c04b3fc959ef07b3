import { useState } from 'react';
import { type BentStrip, type ExpectedFigure, type PieceRecord, standing, stripFault } from '../../fit/index.js';
import type { Trial } from '../../trial/index.js';
import { Warning } from '../sheet/Fault.js';
import { asSentence, day, degrees, figure, mm } from '../wording.js';
import { Measured } from './Measured.js';
import { PieceForm } from './PieceForm.js';
import { StripForm } from './StripForm.js';

const stripSaid = (entry: BentStrip): string => (
  `strip: bend angle ${degrees(entry.bendAngle)}, cut ${mm(entry.cut)}, legs ${mm(entry.legs[0])} and ${mm(entry.legs[1])}, ${mm(entry.thickness)} thick${entry.depth === undefined ? '' : `, depth ${mm(entry.depth)}`}${entry.underLoad === undefined ? '' : `, ${degrees(entry.underLoad)} under load`}${entry.force === undefined ? '' : `, ${figure(entry.force, 0)} N/mm`}`);

interface EntryListProps {
  readonly here: string;
  readonly trial: Trial;
  readonly expected: readonly ExpectedFigure[];
  readonly tools: string;
  readonly records: readonly PieceRecord[];
  /** Undefined where nothing is written down by the trial. */
  readonly kept: ((record: PieceRecord) => void) | undefined;
}

/** All that was written down, oldest first; each entry that stands can be corrected in its place, by an entry of its own. */
export const EntryList = ({ here, trial, expected, tools, records, kept }: EntryListProps) => {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const counted = new Set(standing(records).map(({ id }) => id));
  const turn = (id: string, wanted: boolean): void => setOpen((before) => new Set([...[...before].filter((it) => it !== id), ...(wanted ? [id] : [])]));
  return (
    <ul className="plain piece-list">
      {records.map((record) => {
        const { id, entry, corrects, by, createdAt } = record;
        const stands = counted.has(id);
        const form = { here, corrects: id, kept: (made: PieceRecord): void => { turn(id, false); kept?.(made); } };
        const correctable = stands && kept !== undefined;
        const fault = stands && entry.kind === 'strip' ? stripFault(trial, entry) : null;
        return (
          <li key={id} className={stands ? '' : 'stale'}>
            <p><strong>{entry.serial}</strong>{entry.batch && `, batch ${entry.batch}`}{entry.kind === 'strip' && `: ${stripSaid(entry)}`}</p>
            {entry.kind === 'piece' && <Measured piece={entry} />}
            {fault !== null && <Warning word="Not counted.">{fault}</Warning>}
            {entry.note && <p>{asSentence(entry.note)}</p>}
            <p className="small soft">{by}, {day(createdAt)} {createdAt.slice(11, 16)} UTC{entry.instrument && `, measured with ${entry.instrument}`}{corrects !== null && '; corrects an earlier entry'}{!stands && '; corrected since, not counted'}</p>
            {correctable && <button type="button" className="no-print" aria-expanded={open.has(id)} onClick={() => turn(id, !open.has(id))}>{open.has(id) ? `No correction of ${entry.serial} after all` : `Correct ${entry.serial}`}</button>}
            {correctable && open.has(id) && (
              <section className="correction no-print" aria-label={`Correct what was written of ${entry.serial}`}>
                {entry.kind === 'piece' ? <PieceForm {...form} expected={expected} tools={tools} before={entry} /> : <StripForm {...form} trial={trial} before={entry} />}
              </section>
            )}
          </li>
        );
      })}
    </ul>
  );
};
