import type { Trial } from '../../trial/index.js';
import { figure, seconds } from '../wording.js';

/** The predicted making time, piece by piece; how long the computer took is told apart from it. */
export const TimeTable = ({ trial }: { readonly trial: Trial }) => (
  <section aria-labelledby="time-title">
    <h2 id="time-title">Predicted making time of one part</h2>
    <table>
      <thead><tr><th scope="col">Piece</th><th scope="col" className="number">s</th></tr></thead>
      <tbody>
        {trial.timeModel.map(({ what, seconds: s }) => <tr key={what}><td>{what}</td><td className="number">{figure(s, 1)}</td></tr>)}
      </tbody>
      <tfoot><tr><th scope="row">Together</th><td className="number"><strong>{figure(trial.seconds, 1)}</strong></td></tr></tfoot>
    </table>
    <p className="small soft">Working this out took the computer {seconds(trial.computeSeconds)}.</p>
  </section>
);
