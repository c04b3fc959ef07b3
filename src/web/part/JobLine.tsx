import { useState } from 'react';
import type { JobView } from '../../server/index.js';
import { post, sentence } from '../ask.js';
import { to } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { Verdict } from '../sheet/Verdict.js';
import { asSentence, seconds } from '../wording.js';

/** One trial under way: how far, the best plan so far, the bound, and the button that stops it. */
export const JobLine = ({ job, machine }: { readonly job: JobView; readonly machine: string }) => {
  const [fault, setFault] = useState<string>();
  const stop = (): void => {
    post(`/api/jobs/${encodeURIComponent(job.id)}/stop`).catch((refusal: unknown) => setFault(sentence(refusal)));
  };
  const under = job.endedAt === null;
  return (
    <div className="job">
      <p><strong>{machine}</strong> {job.verdict && <Verdict verdict={job.verdict} />}</p>
      {under && <progress aria-label={`Trial on ${machine}`} value={job.share} />}
      <p className="small" aria-live="polite">
        {under ? asSentence(job.what) : job.why ? asSentence(job.why) : job.state === 'done' ? '' : asSentence(job.state)}
        {job.bestSeconds !== null && ` Best so far ${seconds(job.bestSeconds)} a part`}
        {job.bestSeconds !== null && job.bound !== null && `, none can take less than ${seconds(job.bound)}`}
        {job.bestSeconds !== null && '.'}
      </p>
      <Fault sentence={fault} />
      <div className="buttons">
        {under && <button type="button" onClick={stop}>Stop the search</button>}
        {job.trialId && <a className="button next" href={to.trial(job.trialId)}>Open the trial</a>}
      </div>
    </div>
  );
};
