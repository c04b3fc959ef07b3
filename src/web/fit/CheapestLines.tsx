import { type Cheapest, NONE_MADE, SEVERAL_CURRENCIES, cheapestTold, leavesDrawings, nothingCostsLess } from '../../fit/index.js';
import { mostFirst } from './mostFirst.js';
import type { FitView } from '../../server/index.js';

interface LineProps {
  readonly what: string;
  readonly cheapest: Cheapest;
  readonly parts: FitView['parts'];
  readonly machines: FitView['machines'];
  /** Is a part not decided on some machine of this line? */
  readonly open: (part: number) => boolean;
  /** What is said where the set is proven the cheapest. */
  readonly proven: string;
}

const Line = ({ what, cheapest, parts, machines, open, proven }: LineProps) => {
  const names = (of: readonly number[]): string => of.map((p) => parts[p]!.name).join('; ');
  const told = cheapestTold(cheapest, { parts, machines }, proven);
  const [undecided, not] = [told.not.filter(open), told.not.filter((p) => !open(p))];
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>{told.bought === null ? NONE_MADE : told.bought.length === 0 ? 'nothing to buy' : told.bought.join('; ')}</td>
      <td className="number">{told.bought && told.price}</td>
      <td>{told.bought && told.proof}</td>
      <td>
        {cheapest.cannot.length === 0 ? `all ${parts.length}` : `${parts.length - cheapest.cannot.length} of ${parts.length}${not.length > 0 ? `; not ${names(not)}` : ''}${undecided.length > 0 ? `; not decided: ${names(undecided)}` : ''}`}
        {[...told.unpriced, ...told.asked].map((words) => <span key={words} className="small only-with">{words}</span>)}
      </td>
    </tr>
  );
};

const NotReckoned = ({ what }: { readonly what: string }) => <tr><th scope="row">{what}</th><td colSpan={4}>{SEVERAL_CURRENCIES}</td></tr>;

const aloneWords = ({ name, whose }: FitView['machines'][number]): string => `${name} alone${whose === 'ours' ? '' : ` (${whose})`}`;

const isOpen = (cell: FitView['cells'][number][number]): boolean => cell === null || cell.verdict === 'not decided' || cell.verdict === 'not tried';

/** The cheapest that makes all the parts, over all machines and on each alone. */
export const CheapestLines = ({ fit }: { readonly fit: FitView }) => fit.alone.length === 0 ? null : (
  <section className="section" aria-labelledby="cheapest-title">
    <h2 id="cheapest-title">The cheapest that makes the most of them</h2>
    <div className="scroll" tabIndex={0} role="group" aria-label="The cheapest sets">
      <table className="cheapest-lines">
        <thead><tr><th scope="col">With</th><th scope="col">Machines, options and tools</th><th scope="col" className="number">Price</th><th scope="col">Proof</th><th scope="col">Makes</th></tr></thead>
        <tbody>
          {fit.cheapest === null ? <NotReckoned what="any of these machines" /> : <Line what={leavesDrawings(fit) ? 'any of these machines, changing drawings least' : 'any of these machines'} proven={nothingCostsLess(fit)} cheapest={fit.cheapest} parts={fit.parts} machines={fit.machines} open={(p) => fit.cells[p]!.some(isOpen)} />}
          {fit.drawingsFree && <Line what="any of these machines, changing drawings wherever it saves money" proven={nothingCostsLess()} cheapest={fit.drawingsFree} parts={fit.parts} machines={fit.machines} open={(p) => fit.cells[p]!.some(isOpen)} />}
          {mostFirst(fit.sums).map((c) => [fit.alone[c]!, c] as const).map(([alone, c]) => alone === null ? <NotReckoned key={fit.machines[c]!.id} what={aloneWords(fit.machines[c]!)} /> : <Line key={fit.machines[c]!.id} what={aloneWords(fit.machines[c]!)} cheapest={alone} parts={fit.parts} machines={fit.machines} open={(p) => isOpen(fit.cells[p]![c]!)} proven={nothingCostsLess()} />)}
        </tbody>
      </table>
    </div>
    <p className="small soft">
      {(fit.cheapest ?? fit.alone.find((alone) => alone !== null))?.model}
      {fit.drawingsFree && ' The row that changes drawings wherever it saves money takes these for any part, at no price.'}
    </p>
  </section>
);
