import { strokesByEye, toldTogether } from '../../fit/index.js';
import type { TrialView } from '../../server/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Drawing } from '../sheet/Drawing.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { Verdict } from '../sheet/Verdict.js';
import { useAnswer } from '../useAnswer.js';
import { asSentence, seconds } from '../wording.js';
import { FormingFigures } from './FormingFigures.js';
import { MadeSection } from '../pieces/MadeSection.js';
import { ProofLine } from './ProofLine.js';
import { Reasons } from './Reasons.js';
import { StepsTable } from './StepsTable.js';
import { TimeTable } from './TimeTable.js';
import { trialBlock } from './trialBlock.js';

/** A trial: the verdict, the unfolding as one path, the steps, the bed, and why not where it does not make. */
export const TrialPage = ({ id }: { readonly id: string }) => {
  const here = `/api/trials/${encodeURIComponent(id)}`;
  const { value, fault, again } = useAnswer<TrialView>(here);
  if (!value) {
    return <Sheet title="Trial" trail={[['Parts', to.parts]]} block={[['Sheet', 'Trial']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what="Fetching the trial" />}</div></Sheet>;
  }
  const { trial } = value;
  // as on paper: a plan that is not to be bent is not shown as one
  const planned = trial.verdict === 'makes' && trial.steps.length > 0;
  return (
    <Sheet
      title={`${value.partName} on ${value.machineName}`}
      trail={[['Parts', to.parts], [value.partName, to.part(value.partId)]]}
      block={trialBlock(value)}
      notes={<Cautions trial={trial} />}
    >
      <div className="body">
        <section className="section answer" aria-label="Verdict">
          <p className="big-verdict"><Verdict verdict={value.verdict} byEye={strokesByEye(value.trial)} /></p>
          {value.standsStill.map((words) => <Warning key={words} word="Beware.">{words}</Warning>)}
          {planned && (
            <p>
              {trial.steps.length === 1 ? '1 step' : `${trial.steps.length} steps`} at {trial.stations.length === 1 ? '1 station' : `${trial.stations.length} stations`},
              {' '}predicted <strong>{seconds(trial.seconds)}</strong> a part, set-up shared over {trial.quantity}.
              {' '}{trial.proven ? 'No plan of the stated model takes less.' : trial.bound > 0 ? `No plan of the stated model can take less than ${seconds(trial.bound)}; that this is the best is not shown.` : 'That this is the best is not shown.'}
            </p>
          )}
          {!planned && trial.steps.length > 0 && (
            <Warning word="Not to be bent.">A plan of {trial.steps.length === 1 ? '1 step' : `${trial.steps.length} steps`} was worked out, but is not shown to hold, for the reason given under “Why not”; its steps are not shown.</Warning>
          )}
          <div className="buttons no-print">
            {planned && <a className="button next" href={to.walk(id, 1)}>Walk through the steps</a>}
            <a className="button" href={`${here}/setup-sheet.pdf`} target="_blank" rel="noreferrer">{planned ? 'Set-up sheet (PDF)' : 'Report (PDF)'}</a>
            {planned && <a className="button" href={to.pieces(id)}>Pieces made</a>}
            {value.summary.defect && <a className="button" href={`${here}/defect.json`} download>Defect file</a>}
          </div>
        </section>
        <Reasons here={here} trial={trial} />
        {planned && (
          <>
            <section className="section" aria-labelledby="path-title">
              <h2 id="path-title">From blank to finished piece</h2>
              <div className="scroll" tabIndex={0} role="group" aria-label="The unfolding path"><Drawing path={`${here}/path.svg`} className="wide-drawing" /></div>
            </section>
            <StepsTable id={id} trial={trial} />
            <MadeSection id={id} />
            <FormingFigures trial={trial} />
            <section className="section" aria-labelledby="bed-title">
              <h2 id="bed-title">Along the bed</h2>
              <div className="scroll" tabIndex={0} role="group" aria-label="The layout along the bed"><Drawing path={`${here}/layout.svg`} className="wide-drawing" /></div>
            </section>
          </>
        )}
        <div className="columns section">
          <section aria-labelledby="checked-title" className="stack">
            <h2 id="checked-title">Checked and assumed</h2>
            <ProofLine proof={trial.proof} />
            {toldTogether(trial.warnings.filter((words) => !value.standsStill.includes(words))).map((words) => <Warning key={words} word="Beware.">{asSentence(words)}</Warning>)}
            {planned && <p className="small"><strong>Model.</strong> {asSentence(trial.model)}</p>}
            {trial.assumptions.length > 0 && <ul className="small dots">{trial.assumptions.map((words) => <li key={words}>{asSentence(words)}</li>)}</ul>}
          </section>
          {planned && <TimeTable trial={trial} />}
        </div>
      </div>
    </Sheet>
  );
};
