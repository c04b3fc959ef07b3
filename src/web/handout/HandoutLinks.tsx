import { MOST_PARTS } from '../../fit/index.js';
import type { FitView } from '../../server/index.js';
import { to } from '../place.js';
import { dayLists } from './dayLists.js';

/** From the board to what is handed out: the buyer's report, and the days' plans on each machine that makes something of it. */
export const HandoutLinks = ({ fit }: { readonly fit: FitView }) => {
  const days = fit.machines.flatMap((machine, c) => {
    const of = (made: boolean): string[] => [...new Set(fit.cells.flatMap((row) => (row[c] && row[c].trialId !== null && (row[c].verdict === 'makes') === made ? [row[c].trialId] : [])))];
    return machine.whose === 'ours' ? dayLists(of(true), of(false)).map((day, i, all) => ({ ...day, machine, number: i + 1, of: all.length })) : [];
  });
  return (
    <section className="section no-print" aria-labelledby="handout-title">
      <h2 id="handout-title">To hand out and to prepare</h2>
      <div className="buttons">
        <a className="button next" href={to.report(fit.id)}>Buyer’s report</a>
        {days.map(({ machine, made, trials, number, of }) => (
          <a key={`${machine.id} ${number}`} className="button" href={to.day(trials)}>Day plan{of > 1 && ` ${number} of ${of}`}: {machine.name}, {made === 1 ? '1 part' : `${made} parts`}</a>
        ))}
        <a className="button" href={`/api/fits/${encodeURIComponent(fit.id)}/board.csv`} download>Board as CSV</a>
        <a className="button" href={`/api/fits/${encodeURIComponent(fit.id)}`} download={`fit board ${fit.id}.json`}>Board as JSON</a>
      </div>
      {days.some(({ of }) => of > 1) && <p className="small soft">The order of a day is exact up to {MOST_PARTS} parts: where a machine makes more, there is a plan for each share of them.</p>}
    </section>
  );
};
