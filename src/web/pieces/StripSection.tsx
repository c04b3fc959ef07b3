import { type MeasuredDeduction, spreadOf } from '../../forming/index.js';
import type { PieceRecord } from '../../fit/index.js';
import type { Trial } from '../../trial/index.js';
import { degrees, figure, mm } from '../wording.js';
import { KeepMeasured } from './KeepMeasured.js';
import { KeepMetal } from './KeepMetal.js';
import { StripForm } from './StripForm.js';

const spreadWords = (row: MeasuredDeduction): string => {
  const spread = spreadOf(row);
  return spread === null ? 'one strip, spread not known' : `± ${figure(spread, 2)} mm on ${row.pieces === 1 ? '1 strip' : `${row.pieces} strips`}`;
};

interface StripSectionProps {
  readonly here: string;
  readonly trialId: string;
  readonly trial: Trial;
  readonly deductions: readonly MeasuredDeduction[];
  /** Undefined where nothing is written down by the trial. */
  readonly kept: ((record: PieceRecord) => void) | undefined;
}

/** Test strips: the form for another, and the deductions and the metal that those written down tell. */
export const StripSection = ({ here, trialId, trial, deductions, kept }: StripSectionProps) => (
  <details className="section">
    <summary>Test strips and the deduction they tell</summary>
    {kept && <StripForm here={here} trial={trial} kept={kept} />}
    {deductions.length > 0 && (
      <>
        <ul className="dots">{deductions.map((d) => <li key={`${d.v} ${d.tipRadius} ${d.bendAngle}`}>V {d.v} mm, tip radius {d.tipRadius} mm, bend angle {degrees(d.bendAngle)}: deduction {mm(d.deduction)} ({spreadWords(d)})</li>)}</ul>
        <div className="buttons"><a className="button" href={`${here}/deductions.csv`} download>Table of measured deductions (CSV)</a></div>
        <KeepMeasured trialId={trialId} />
        <KeepMetal trialId={trialId} />
      </>
    )}
  </details>
);
