import type { ProofSummary } from '../../trial/index.js';
import { Warning } from '../sheet/Fault.js';
import { asSentence, mm } from '../wording.js';

/** What the second engine found. */
export const ProofLine = ({ proof }: { readonly proof: ProofSummary }) => {
  if (!proof.checked) return <p><strong><span aria-hidden="true">?</span> Not checked</strong> by the independent engine.</p>;
  if (!proof.passed) return <>{proof.findings.map((words) => <Warning key={words} word="The independent check rejects it.">{asSentence(words)}</Warning>)}</>;
  return (
    <p>
      <strong><span aria-hidden="true">✓</span> Confirmed by the independent check.</strong>
      {proof.smallestClearance !== null && ` Smallest clearance ${mm(proof.smallestClearance)}${proof.where ? ` (${proof.where})` : ''}.`}
      {proof.largestMotion !== null && ` No point moved further than ${mm(proof.largestMotion, 1)} between two checked poses.`}
    </p>
  );
};
