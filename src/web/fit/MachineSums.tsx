import { money } from '../../fit/index.js';
import type { FitView } from '../../server/index.js';
import { mostFirst } from './mostFirst.js';
import { Beware } from '../sheet/Beware.js';

/** Parts named as far as they are few. */
const NAMED = 8;

/** Machine by machine, the one that makes most first: how many parts, why not the others, what would change it. */
export const MachineSums = ({ fit, under = false }: { readonly fit: Pick<FitView, 'parts' | 'machines' | 'sums'>; readonly under?: boolean }) => {
  const all = fit.parts.length;
  // names hold commas of their own
  const names = (parts: readonly number[]): string => parts.map((p) => fit.parts[p]!.name).join('; ');
  const of = (parts: readonly number[]): string =>
    `${parts.length === 1 ? '1 part' : `${parts.length} parts`}${parts.length > NAMED ? '' : `: ${names(parts)}`}`;
  const rows = mostFirst(fit.sums).map((c) => ({ machine: fit.machines[c]!, sum: fit.sums[c]! }));
  return (
    <section className="section" aria-labelledby="sums-title">
      <h2 id="sums-title">Machine by machine, the one that makes most first</h2>
      <p className="small soft">Prices as entered; those of demo machines and tools are invented.</p>
      <div className="scroll" tabIndex={0} role="group" aria-label="Machine by machine">
        <table className="machine-sums">
          <thead><tr><th scope="col">Machine</th><th scope="col">Makes, as it stands</th><th scope="col">Why not the other parts</th><th scope="col">What would change it (for each part the change that asks least)</th></tr></thead>
          <tbody>
            {rows.map(({ machine, sum }) => (
              <tr key={machine.id}>
                <th scope="row">{machine.name}{machine.whose !== 'ours' && <span className="tag">{machine.whose}</span>}{machine.whose !== 'the buyer\'s' && <span className="small soft">{money(machine.price, machine.currency)}</span>}<Beware of={machine.standsStill} /></th>
                <td>
                  <span className="share"><strong>{sum.makes} of {all}</strong></span>
                  <meter min={0} max={Math.max(1, all)} value={sum.makes} aria-label={`${machine.name} makes ${sum.makes} of ${all} parts`} />
                  {sum.levels.filter(({ more }) => more > 0).map(({ words, made }) => <span key={words} className="small">{words}: {made} of {all}</span>)}
                  {sum.changed['other machine'] > 0 && <span className="small">{sum.changed['other machine']} more if it were another machine, as named</span>}
                  {sum.no > 0 && <span className="small">{sum.no} not made{sum.cut.length > 0 && `, for ${sum.cut.length} of them what helps not settled`}</span>}
                  {sum.open > 0 && <span className="small">{sum.open} {under ? 'to come, or not decided' : 'still open'}</span>}
                </td>
                <td>{sum.makes === all ? 'makes all' : sum.why.length === 0 ? '–' : <ul className="dots">{sum.why.map(({ words, parts }) => <li key={words}>{words} <span className="soft">({of(parts)})</span></li>)}</ul>}</td>
                <td>
                  {sum.makes === all ? machine.standsStill ? 'nothing, once it may run' : 'nothing needed' : (
                    <ul className="dots">
                      {sum.changes.map(({ words, cost, terms, parts }) => (
                        <li key={words}>{words} ({[...(cost !== '' ? [`to buy: ${cost}`] : terms === '' ? ['nothing to buy'] : []), ...(terms !== '' ? [terms] : [])].join('; ')}) <span className="soft">({of(parts)})</span></li>
                      ))}
                      {sum.byEye.length > 0 && <li>only by eye to a scribed line, which counts as not made <span className="soft">({of(sum.byEye)})</span></li>}
                      {sum.noHelp.length > 0 && <li>nothing that was looked at helps <span className="soft">({of(sum.noHelp)})</span></li>}
                      {sum.cut.length > 0 && <li>what {sum.cut.some((p) => sum.byEye.includes(p)) ? 'else ' : ''}helps was not looked for to the end <span className="soft">({of(sum.cut)})</span></li>}
                    </ul>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
};
