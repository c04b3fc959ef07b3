import { useEffect, useState } from 'react';
import type { FitSummary, FitView } from '../../server/index.js';
import { type Answer, useAnswer } from '../useAnswer.js';

/** ms between two looks at the cells while they come in. */
const LOOK = 1500;

/** A fit with its cells, and how far it is, told by the server as it goes on. */
export const useFit = (id: string): Answer<FitView> & { readonly progress: FitSummary | undefined } => {
  const path = `/api/fits/${encodeURIComponent(id)}`;
  const answer = useAnswer<FitView>(path);
  const { again } = answer;
  const [progress, setProgress] = useState<FitSummary>();
  useEffect(() => {
    let last = 0;
    const stream = new EventSource(`${path}/events`);
    stream.onmessage = ({ data }) => {
      const summary = JSON.parse(String(data)) as FitSummary;
      setProgress(summary);
      if (summary.endedAt !== null) stream.close();
      if (summary.endedAt === null && Date.now() - last < LOOK) return;
      last = Date.now();
      again();
    };
    // an address that is none: the fit's own loading says so
    stream.onerror = () => stream.readyState === EventSource.CLOSED && stream.close();
    return () => stream.close();
  }, [path, again]);
  return { ...answer, progress };
};
