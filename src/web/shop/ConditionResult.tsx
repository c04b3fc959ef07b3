import { type ConditionFigures, nothingSet, placeInWords, settingInWords } from '../../shop/index.js';
import { Warning } from '../sheet/Fault.js';
import { MINUS, degrees, figure, mm } from '../wording.js';

const pm = (value: number | null | undefined): string => (value === null || value === undefined ? 'not known' : `± ${mm(value, 3)}`);

/** What follows from the record: what everybody who plans on the machine is told; corrected, avoided, left; and what was not measured. */
export const ConditionResult = ({ figures: f, beware }: { readonly figures: ConditionFigures; readonly beware: readonly string[] }) => {
  const setting = settingInWords(f);
  return (
  <section className="section" aria-labelledby="result-title">
    <h2 id="result-title">What follows, {f.asOf}</h2>
    {beware.map((words) => <Warning key={words} word="Beware.">{words}</Warning>)}
    <div className="scroll" tabIndex={0} role="group" aria-label="What follows from the record"><table className="follows">
      <thead><tr><th scope="col">Of the depth along a bend</th><th scope="col" className="number">As it is</th><th scope="col" className="number">After setting</th><th scope="col">How</th></tr></thead>
      <tbody>
        <tr><td>Over all of the bed that was measured</td><td className="number">{pm(f.corrected?.asIs)}</td><td className="number">{pm(f.corrected?.left)}</td>
          <td>{f.corrected ? (setting === null ? nothingSet(f) : `${setting}: what is corrected bounds no promise`) : 'no wear map'}</td></tr>
        <tr><td>{figure(f.length, 0)} mm in the middle of the bed</td><td className="number">{pm(f.inTheMiddle?.asIs)}</td><td className="number">{pm(f.inTheMiddle?.left)}</td><td>{f.inTheMiddle ? 'where the stations stand when nothing speaks against it' : 'not all of it was measured'}</td></tr>
        <tr><td>{figure(f.length, 0)} mm where it meets least wear</td><td className="number">{pm(f.elsewhere?.fit.asIs)}</td><td className="number"><strong>{pm(f.elsewhere?.fit.left)}</strong></td>
          <td>{f.elsewhere ? `${placeInWords(f)!.replace(/-(?=\d)/g, MINUS)}; what is left bounds the promise` : 'no place of this length was measured'}</td></tr>
        <tr><td>The ram come back to one place</td><td className="number">{pm(f.scatter)}</td><td className="number"><strong>{pm(f.scatter)}</strong></td><td>scatter: no setting takes it away, it bounds the promise</td></tr>
        <tr><td>The ram at rest</td><td className="number">{f.driftPerSecond === null ? 'not known' : `sinks ${mm(f.driftPerSecond, 3)} in 1 s`}</td><td /><td>a hold in the stroke goes that much deeper</td></tr>
      </tbody>
    </table></div>
    <p className="small soft">Level, tilt and crowning are fitted so that the largest distance left is least (minimax); between readings the seats are taken as straight; crowning as a parabola between the side frames that only lifts. Tilt and crowning count only where they were found to work.</p>
    {f.testBends.length > 0 && <ul className="dots">{f.testBends.map((b, i) => <li key={i}>Test bend, {b.load} load: {b.spread === null ? 'not known' : `${degrees(b.spread)} of included angle between left, middle and right; the middle is ${degrees(Math.abs(b.middleOpen!))} more ${b.middleOpen! >= 0 ? 'open' : 'closed'} than the ends`}.</li>)}</ul>}
    {f.notMeasured.length > 0 && <><h3>Not known, so not promised</h3><ul className="plain">{f.notMeasured.map(({ what, so }) => <li key={what}><span aria-hidden="true">?</span> <strong>{what}</strong>: {so}.</li>)}</ul></>}
    {f.uncalibrated.map((what) => <Warning key={what} word="Not calibrated.">{what}: no day of calibration is stated; its readings are only as good as it is.</Warning>)}
  </section>
  );
};
