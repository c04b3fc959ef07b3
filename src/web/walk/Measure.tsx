import type { Step } from '../../trial/index.js';
import { asSentence, degrees, kilonewtons, mm } from '../wording.js';

/** What to measure after the stroke, with boxes to write in on paper. */
export const Measure = ({ step: { measure, bendAngle, includedAngle, crowning, crowningWords, force, station, punch, die, facing } }: { readonly step: Step }) => (
  <section aria-labelledby="measure-title">
    <h2 id="measure-title">Measure after the stroke</h2>
    <p className="measure"><strong>{mm(measure.length)} ± {mm(measure.tolerance)}</strong> {measure.what}</p>
    <p>Bend angle {degrees(bendAngle)}, included angle {degrees(includedAngle)}.</p>
    <p>Station {station}: punch {punch}, die {die}, punch {facing}. Force {kilonewtons(force)} predicted.</p>
    <p className="small soft">{crowning === null ? '' : `Crowning ${mm(crowning)} at the middle of the bed. `}{asSentence(crowningWords)}</p>
  </section>
);
