import type { ClosedForm, ReliefHole, StockRange, TestStripPlan } from '../../forming/index.js';
import { degrees, figure, kilonewtons, mm } from '../wording.js';

interface Props {
  readonly byRule: readonly ClosedForm[];
  readonly range: Extract<StockRange, { ok: true }>['value'] | { readonly sentence: string } | null;
  readonly strip: TestStripPlan | null;
  readonly reliefHole: ReliefHole | null;
  /** mm of bend. */
  readonly length: number;
}

const signed = (value: number): string => `${value > 0 ? '+' : ''}${figure(value, 2)}`;

/** What stands beside the figures: stock at the ends of its range, the rules by their sources, the test strip. */
export const Beside = ({ byRule, range, strip, reliefHole, length }: Props) => (
  <div className="columns section bend-beside">
    <section aria-labelledby="stock-title">
      <h2 id="stock-title">Stock as bought</h2>
      {range && 'sentence' in range && <p>{range.sentence}</p>}
      {range && !('sentence' in range) && (
        <>
          <table><tbody>
            <tr><td>Bend angle released</td><td className="number">{degrees(range.bendAngleReleased.min)} to {degrees(range.bendAngleReleased.max)}</td></tr>
            <tr><td>Peak force</td><td className="number">{kilonewtons(range.peakForcePerLength.min * length)} to {kilonewtons(range.peakForcePerLength.max * length)}</td></tr>
            <tr><td>Flange, outside, with the stop held</td><td className="number">{signed(range.flangeChange.min)} to {signed(range.flangeChange.max)} mm</td></tr>
          </tbody></table>
          <p className="source">{range.words} Thickness by {range.thicknessSource}; strength by {range.strengthSource}.</p>
        </>
      )}
      {reliefHole && (
        <>
          <h2>Relief hole</h2>
          <p>Where two such bends meet in a corner: {mm(reliefHole.diameter)} or more, reaching {figure(reliefHole.pastTangents[0], 1)} to {mm(reliefHole.pastTangents[1])} past the inner tangent lines.</p>
          <p className="source">{reliefHole.source}.</p>
        </>
      )}
      {strip && (
        <>
          <h2>Test strip</h2>
          <p>Two strips of the same sheet, each {strip.along} mm along the bend and {strip.across} mm across it.</p>
          <ul>{strip.measure.map((words) => <li key={words}>{words}</li>)}</ul>
        </>
      )}
    </section>
    <section aria-labelledby="rules-title">
      <h2 id="rules-title">By the published rules</h2>
      <table>
        <thead><tr><th scope="col">Rule</th><th scope="col" className="number">Gives</th></tr></thead>
        <tbody>
          {byRule.map((c) => (
            <tr key={`${c.what} ${c.source}`}><td>{c.what}<br /><span className="source">{c.source} [{c.mark}]</span></td><td className="number">{c.unit === 'mm' ? mm(c.value) : `${figure(c.value, 2)} ${c.unit}`}</td></tr>
          ))}
        </tbody>
      </table>
    </section>
  </div>
);
