import { money } from '../../fit/index.js';
import type { FitView } from '../../server/index.js';
import { figure } from '../wording.js';

/** What each option of the machines buys for these parts, and which buy nothing. */
export const OptionLines = ({ fit }: { readonly fit: Pick<FitView, 'options' | 'machines'> }) => fit.options.length === 0 ? null : (
  <section className="section" aria-labelledby="options-title">
    <h2 id="options-title">What each option buys for these parts</h2>
    <div className="scroll" tabIndex={0} role="group" aria-label="What each option buys">
      <table>
        <thead><tr><th scope="col">Machine</th><th scope="col">Option</th><th scope="col" className="number">Price</th><th scope="col">Makes possible</th><th scope="col" className="number">Saves over a batch of each</th><th scope="col">Tolerance gained</th></tr></thead>
        <tbody>
          {fit.options.map((o) => (
            <tr key={`${o.machine} ${o.id}`}>
              <td>{fit.machines.find((m) => m.id === o.machine)?.name}</td>
              <th scope="row">{o.name}</th>
              <td className="number">{money(o.price, o.currency)}</td>
              {o.nothing ? <td colSpan={3}>nothing for these parts{o.notDecided.length > 0 && <span className="small soft">; not decided: {o.notDecided.join(', ')}</span>}</td> : (
                <>
                  <td>{o.makes.length > 0 ? o.makes.join(', ') : 'no part more'}{o.notDecided.length > 0 && <span className="small soft">; not decided: {o.notDecided.join(', ')}</span>}</td>
                  <td className="number">{o.minutesPerBatch > 0 ? `${figure(o.minutesPerBatch, 1)} min` : 'none'}</td>
                  <td>{o.tolerance ? `± ${figure(o.tolerance.with, 2)} mm in place of ± ${figure(o.tolerance.without, 2)} mm (${o.tolerance.part}, ${o.tolerance.dimension})` : 'none'}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
    <p className="small soft">Every part was planned once more with each option that changes the machine's data; minutes are predicted, an option that is not used costs none.</p>
  </section>
);
