import type { PieceDifference } from '../../fit/index.js';
import { figure } from '../wording.js';

export const amount = (value: number, unit: PieceDifference['unit']): string => `${figure(value, 2)}${unit === 'mm' ? ' mm' : '°'}`;
export const signed = (value: number, unit: PieceDifference['unit']): string => `${value > 0 ? '+' : ''}${amount(value, unit)}`;

/** Measured less predicted, figure by figure. */
export const Differences = ({ differences }: { readonly differences: readonly PieceDifference[] }) => (
  <div className="scroll" tabIndex={0} role="group" aria-label="Measured less predicted">
    <table className="differences">
      <thead><tr><th scope="col">Figure</th><th scope="col" className="number">Predicted</th><th scope="col" className="number">Tolerance</th><th scope="col" className="number">Pieces</th><th scope="col" className="number">Mean difference</th><th scope="col" className="number">Spread</th><th scope="col" className="number">Within</th></tr></thead>
      <tbody>
        {differences.map((d) => (
          <tr key={d.id}>
            <th scope="row">{d.what}</th><td className="number">{amount(d.predicted, d.unit)}</td><td className="number">{d.tolerance === null ? 'none asked' : `${d.drawn === undefined ? '' : `drawn ${figure(d.drawn, 2)} `}± ${amount(d.tolerance, d.unit)}`}</td>
            <td className="number">{d.count}</td><td className="number">{signed(d.mean, d.unit)}</td><td className="number">{d.deviation === null ? 'one piece' : amount(d.deviation, d.unit)}</td>
            <td className={d.within !== null && d.within < d.count ? 'number verdict beware' : 'number'}>{d.within === null ? '–' : `${d.within < d.count ? '⚠ ' : ''}${d.within} of ${d.count}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <p className="small soft">Difference is measured less predicted; spread is the standard deviation of the sample. Entries that a later one corrects are not counted.</p>
  </div>
);
