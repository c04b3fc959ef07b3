import { type FitVerdict, VERDICT_SIGNS } from '../../fit/index.js';

/** A verdict as a sign and its word. */
export const Verdict = ({ verdict }: { readonly verdict: FitVerdict }) => (
  <span className={verdict === 'does not make' ? 'verdict beware' : 'verdict'}>
    <span className="sign" aria-hidden="true">{VERDICT_SIGNS[verdict]}</span> {verdict}
  </span>
);
