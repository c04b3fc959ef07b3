import type { Step } from '../../trial/index.js';
import { degrees, mm } from '../words.js';

/** What to measure after the stroke, with boxes to write in on paper. */
export const Measure = ({ step: { measure, bendAngle, includedAngle, crowning, crowningWords } }: { readonly step: Step }) => (
  <section aria-labelledby="measure-title">
    <h2 id="measure-title">Measure after the stroke</h2>
    <p className="measure"><strong>{mm(measure.length)} ± {mm(measure.tolerance)}</strong> {measure.what}</p>
    <p>Bend angle {degrees(bendAngle)}, included angle {degrees(includedAngle)}.</p>
    <p className="small soft">{crowning === null ? crowningWords : `Crowning ${mm(crowning)} at the middle of the bed. ${crowningWords}`}.</p>
  </section>
);
