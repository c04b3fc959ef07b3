import { CAUTIONS } from '../cautionWords.js';

export const Cautions = () => (
  <section className="cautions" aria-label="Cautions">
    <h2><span aria-hidden="true">⚠</span> Cautions</h2>
    <ul>{CAUTIONS.map((caution) => <li key={caution}>{caution}</li>)}</ul>
  </section>
);
