import type { TrialRecord } from '../../store/index.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { Verdict } from '../sheet/Verdict.js';
import { day, seconds } from '../wording.js';

/** The trials of a part so far, newest first. */
export const TrialsTable = ({ trials, fault, again, partId }: { readonly trials: readonly TrialRecord[]; readonly fault: string | undefined; readonly again: () => void; readonly partId: string }) => (
  <section className="section" aria-labelledby="trials-title">
    <h2 id="trials-title">Trials so far</h2>
    <Fault sentence={fault} again={again} />
    {trials.length === 0 && !fault && <p className="soft">None yet. Choose a metal and a machine above and try it.</p>}
    {trials.length > 0 && (
      <>
        <ul className="trials">
          {trials.map((trial) => (
            <li key={trial.id}>
              <a href={to.trial(trial.id)}>
                <Verdict verdict={trial.verdict} byEye={trial.summary.byEye} />
                <span>{trial.verdict === 'makes' && trial.summary.steps > 0 ? `${seconds(trial.summary.seconds)} a part` : ''}</span>
                <span className="trial-on">{trial.machineName} <span className="small soft">{trial.metalName}, quantity {trial.quantity}, {day(trial.createdAt)}</span></span>
              </a>
            </li>
          ))}
        </ul>
        <p><a href={to.board(partId)} className="touch">See them machine by machine</a></p>
      </>
    )}
  </section>
);
