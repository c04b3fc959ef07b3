import { DemoTag } from '../sheet/DemoTag.js';
import { mm } from '../wording.js';
import type { Day } from './day.js';

/** What is checked beforehand, and the tools and risers that are laid out, against those at hand. */
export const DayKit = ({ plan: { checks, kit } }: { readonly plan: Day }) => (
  <div className="columns section">
    <section aria-labelledby="check-title"><h2 id="check-title">To check beforehand</h2><ul className="dots">{checks.map((words) => <li key={words}>{words}</li>)}</ul></section>
    <section aria-labelledby="kit-title"><h2 id="kit-title">To lay out</h2>
      <table>
        <thead><tr><th scope="col">Tool</th><th scope="col" className="number">Length</th><th scope="col" className="number">Needed</th><th scope="col" className="number">At hand</th></tr></thead>
        <tbody>{kit.map((it) => (it.kind === 'riser' ? (
          <tr key={`riser ${it.height} ${it.seat}`}><th scope="row">risers: {mm(it.height, 1)} high, {it.seat}</th><td className="number">–</td><td className="number">{mm(it.needed, 0)} of bed at once</td><td className="number">{it.needed > it.atHand ? `⚠ ${mm(it.atHand, 0)}` : mm(it.atHand, 0)}</td></tr>
        ) : (
          <tr key={`${it.id} ${it.length} ${it.ear ?? ''}`}><th scope="row">{it.kind}: {it.name}{it.ear ? `, ear ${it.ear}` : ''}<DemoTag of={it} /></th><td className="number">{mm(it.length, 0)}</td><td className="number">{it.needed}</td><td className="number">{it.needed > it.atHand ? `⚠ ${it.atHand}` : it.atHand}</td></tr>
        )))}</tbody>
      </table>
    </section>
  </div>
);
