import type { FitView } from '../../server/index.js';
import { to } from '../place.js';

/** From the board to what is handed out: the buyer's report, and a day's plan on each machine that makes something of it. */
export const HandoutLinks = ({ fit }: { readonly fit: FitView }) => {
  const days = fit.machines.flatMap((machine, c) => {
    const of = (made: boolean): string[] => [...new Set(fit.cells.flatMap((row) => (row[c] && row[c].trialId !== null && (row[c].verdict === 'makes') === made ? [row[c].trialId] : [])))];
    const made = of(true);
    // what is not made goes along: the day's page tells what would make it
    return machine.whose === 'ours' && made.length > 0 ? [{ machine, made: made.length, trials: [...made, ...of(false)].slice(0, 16) }] : [];
  });
  return (
    <section className="section no-print" aria-labelledby="handout-title">
      <h2 id="handout-title">To hand out and to prepare</h2>
      <div className="buttons">
        <a className="button next" href={to.report(fit.id)}>Buyer’s report</a>
        {days.map(({ machine, made, trials }) => <a key={machine.id} className="button" href={to.day(trials)}>Day plan: {machine.name}, {made === 1 ? '1 part' : `${made} parts`}</a>)}
        <a className="button" href={`/api/fits/${encodeURIComponent(fit.id)}/board.csv`} download>Board as CSV</a>
        <a className="button" href={`/api/fits/${encodeURIComponent(fit.id)}`} download={`fit board ${fit.id}.json`}>Board as JSON</a>
      </div>
    </section>
  );
};
