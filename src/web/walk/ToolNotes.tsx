import { dieOf, punchOf } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { asSentence, kilonewtons, mm } from '../wording.js';

/** What stands at the station and what the stroke asks of the machine; what to set and to measure is told in the large figures. */
export const ToolNotes = ({ trial, step }: { readonly trial: Trial; readonly step: Step }) => {
  const { kind, station, facing, force, crowning } = step;
  return (
    <section aria-labelledby="tools-title">
      <h2 id="tools-title">Tools and force</h2>
      <p>Station {station}, punch {facing}: {punchOf(trial, step.punch).name}, over {dieOf(trial, step.die).name}.</p>
      <p>{kind === 'hem close' ? 'Force to close' : 'Force'} {kilonewtons(force)} predicted.</p>
      <p className="small soft">{crowning !== null ? `Crowning ${mm(crowning)} at the middle of the bed. ` : ''}{asSentence(step.crowningWords)}</p>
    </section>
  );
};
