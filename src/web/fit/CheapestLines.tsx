import { type Cheapest, leavesDrawings, nothingCostsLess } from '../../fit/index.js';
import type { FitView } from '../../server/index.js';

const money = (n: number, currency: string): string => `${n.toLocaleString('en-GB')} ${currency}`;

interface LineProps {
  readonly what: string;
  readonly cheapest: Cheapest;
  readonly parts: FitView['parts'];
  /** Is a part not decided on some machine of this line? */
  readonly open: (part: number) => boolean;
  /** What is said where the set is proven the cheapest. */
  readonly proven: string;
}

const Line = ({ what, cheapest, parts, open, proven }: LineProps) => {
  const names = (of: readonly number[]): string => of.map((p) => parts[p]!.name).join('; ');
  const [undecided, not] = [cheapest.cannot.filter(open), cheapest.cannot.filter((p) => !open(p))];
  const bought = [...cheapest.machines, ...cheapest.options, ...cheapest.tools];
  const none = cheapest.cannot.length === parts.length;
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>{none ? 'nothing looked at is shown to make any of these parts' : bought.length === 0 ? 'nothing to buy' : bought.map((b) => `${b.name} (${money(b.price, cheapest.currency)})`).join('; ')}</td>
      <td className="number">{none ? '' : money(cheapest.price, cheapest.currency)}</td>
      <td>{none ? '' : cheapest.proven ? proven : `at least ${money(cheapest.bound, cheapest.currency)}; that this is the cheapest is not shown`}</td>
      <td>
        {cheapest.cannot.length === 0 ? `all ${parts.length}` : `${parts.length - cheapest.cannot.length} of ${parts.length}${not.length > 0 ? `; not ${names(not)}` : ''}${undecided.length > 0 ? `; not decided: ${names(undecided)}` : ''}`}
        {cheapest.asked.map(({ part, what }) => <span key={part} className="small only-with">{parts[part]!.name} only with: {what}, if the drawing allows it</span>)}
      </td>
    </tr>
  );
};

const isOpen = (cell: FitView['cells'][number][number]): boolean => cell === null || cell.verdict === 'not decided' || cell.verdict === 'not tried';

/** The cheapest that makes all the parts, over all machines and on each alone. */
export const CheapestLines = ({ fit }: { readonly fit: FitView }) => fit.cheapest === null ? null : (
  <section className="section" aria-labelledby="cheapest-title">
    <h2 id="cheapest-title">The cheapest that makes the most of them</h2>
    <div className="scroll" tabIndex={0} role="group" aria-label="The cheapest sets">
      <table className="cheapest-lines">
        <thead><tr><th scope="col">With</th><th scope="col">Machines, options and tools</th><th scope="col" className="number">Price</th><th scope="col">Proof</th><th scope="col">Makes</th></tr></thead>
        <tbody>
          <Line what={leavesDrawings(fit) ? 'any of these machines, changing drawings least' : 'any of these machines'} proven={nothingCostsLess(fit)} cheapest={fit.cheapest} parts={fit.parts} open={(p) => fit.cells[p]!.some(isOpen)} />
          {fit.alone.map((alone, c) => alone && <Line key={fit.machines[c]!.id} what={`${fit.machines[c]!.name} alone${fit.machines[c]!.whose === 'ours' ? '' : ` (${fit.machines[c]!.whose})`}`} cheapest={alone} parts={fit.parts} open={(p) => isOpen(fit.cells[p]![c]!)} proven={nothingCostsLess()} />)}
        </tbody>
      </table>
    </div>
    <p className="small soft">{fit.cheapest.model}</p>
  </section>
);
