import { useState } from 'react';
import { post, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';

/** Ends a search under way; what it has found so far is kept. */
export const StopJob = ({ id, machine, stopped }: { readonly id: string; readonly machine: string; readonly stopped: () => void }) => {
  const [fault, setFault] = useState<string>();
  const stop = (): void => {
    post(`/api/jobs/${encodeURIComponent(id)}/stop`).then(stopped, (refusal: unknown) => setFault(sentence(refusal)));
  };
  return <><button type="button" aria-label={`Stop the search on ${machine}`} onClick={stop}>Stop</button><Fault sentence={fault} /></>;
};
