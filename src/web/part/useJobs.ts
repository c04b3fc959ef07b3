import { useCallback, useEffect, useState } from 'react';
import type { JobView } from '../../server/index.js';
import { get } from '../ask.js';

/** The jobs of a part that are under way or have just ended, told by the server as they change. */
export const useJobs = (partId: string, ended: () => void): { readonly jobs: readonly JobView[]; readonly follow: (ids: readonly string[]) => void } => {
  const [ids, setIds] = useState<readonly string[]>([]);
  const [views, setViews] = useState<Readonly<Record<string, JobView>>>({});
  const follow = useCallback((more: readonly string[]) => setIds(more), []);

  useEffect(() => {
    const stop = new AbortController();
    get<{ readonly jobs: readonly JobView[] }>('/api/jobs', stop.signal).then(
      ({ jobs }) => setIds((now) => (now.length > 0 ? now : jobs.filter((job) => job.partId === partId && job.endedAt === null).map(({ id }) => id))),
      () => undefined, // what is wrong with the server, the part's own loading says already
    );
    return () => stop.abort();
  }, [partId]);

  useEffect(() => {
    const streams = ids.map((id) => {
      const stream = new EventSource(`/api/jobs/${encodeURIComponent(id)}/events`);
      stream.onmessage = ({ data }) => {
        const view = JSON.parse(String(data)) as JobView;
        setViews((all) => ({ ...all, [view.id]: view }));
        if (view.endedAt === null) return;
        stream.close();
        ended();
      };
      return stream;
    });
    return () => streams.forEach((stream) => stream.close());
  }, [ids, ended]);

  return { jobs: ids.flatMap((id) => views[id] ?? []), follow };
};
