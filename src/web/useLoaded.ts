import { useCallback, useEffect, useRef, useState } from 'react';

export interface Loaded<T> {
  /** The newest answer, kept while it is asked for again. */
  readonly value: T | null;
  readonly error: Error | null;
  readonly again: () => void;
}

/** Loads when `key` changes and when `again` is called; an answer that comes too late is dropped. */
export const useLoaded = <T,>(key: string, load: (signal: AbortSignal) => Promise<T>): Loaded<T> => {
  const [state, setState] = useState<{ readonly key: string; readonly value: T | null; readonly error: Error | null }>({ key, value: null, error: null });
  const [round, setRound] = useState(0);
  const latest = useRef(load);
  useEffect(() => {
    latest.current = load;
  });
  useEffect(() => {
    const gone = new AbortController();
    latest.current(gone.signal).then(
      (value) => {
        if (!gone.signal.aborted) setState({ key, value, error: null });
      },
      (error: Error) => {
        if (!gone.signal.aborted) setState((before) => ({ key, value: before.key === key ? before.value : null, error }));
      },
    );
    return () => gone.abort();
  }, [key, round]);
  const again = useCallback(() => setRound((n) => n + 1), []);
  return state.key === key ? { value: state.value, error: state.error, again } : { value: null, error: null, again };
};
