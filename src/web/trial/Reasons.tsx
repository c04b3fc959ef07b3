import { costInAll, reasonsTold } from '../../fit/index.js';
import type { Trial } from '../../trial/index.js';
import { Drawing } from '../sheet/Drawing.js';

/** Why it does not make, with a picture where there is a conflict to be seen, and what would lift it. */
export const Reasons = ({ here, trial: { reasons, remedies, inVain } }: { readonly here: string; readonly trial: Trial }) => {
  if (reasons.length === 0 && remedies.length === 0) return null;
  return (
    <section className="section reasons" aria-label="Reasons and remedies">
      {reasons.length > 0 && (
        <div>
          <h2>Why not</h2>
          <ol>
            {reasonsTold(reasons).map(({ sentence, reason: i }) => ({ sentence, i, reason: reasons[i]! })).map(({ sentence, i, reason }) => (
              <li key={sentence}>
                <p>{sentence}</p>
                {reason.made !== undefined && reason.unmade !== undefined && reason.bends.length > 0 && <Drawing path={`${here}/reasons/${i + 1}/picture.svg`} className="reason-drawing" />}
              </li>
            ))}
          </ol>
        </div>
      )}
      {remedies.length > 0 && (
        <div>
          <h2>What would lift it</h2>
          <ol>
            {remedies.map((remedy) => (
              <li key={remedy.sentence}>
                {remedy.sentence} <span className="tag">{remedy.confirmed ? '✓ confirmed by planning again' : '? not confirmed'}</span>
                {costInAll(remedy.items) !== '' && <span className="soft"> in all {costInAll(remedy.items)}</span>}
              </li>
            ))}
          </ol>
        </div>
      )}
      {inVain !== undefined && <div><h2>What was tried to lift it</h2><p>{inVain}</p></div>}
    </section>
  );
};
