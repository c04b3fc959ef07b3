import { type FitVerdict, VERDICT_SIGNS } from '../../fit/index.js';

/** A verdict as a sign and its word, and of a plan how many strokes no stop holds. */
export const Verdict = ({ verdict, byEye = 0 }: { readonly verdict: FitVerdict; readonly byEye?: number | undefined }) => (
  <span className={verdict === 'does not make' ? 'verdict beware' : 'verdict'}>
    <span className="sign" aria-hidden="true">{VERDICT_SIGNS[verdict]}</span> {verdict}{byEye > 0 && `, ${byEye} ${byEye === 1 ? 'stroke' : 'strokes'} by eye`}
  </span>
);
