import { CAUTIONS, LIFT_CAUTION, liftWords } from '../../stroke/index.js';
import type { Trial } from '../../trial/index.js';

/** The cautions of every plan; with a trial, that about lifting only where its sheet asks for it. */
export const Cautions = ({ trial }: { readonly trial?: Trial }) => {
  const words = [...CAUTIONS, ...(trial ? liftWords(trial) : [LIFT_CAUTION])];
  return (
    <section className="cautions" aria-label="Cautions">
      <h2><span aria-hidden="true">⚠</span> Cautions</h2>
      <ul>{words.map((caution) => <li key={caution}>{caution}</li>)}</ul>
    </section>
  );
};
