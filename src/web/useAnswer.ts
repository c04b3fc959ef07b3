import { useCallback, useEffect, useState } from 'react';
import { get, sentence } from './ask.js';

export interface Answer<T> {
  readonly value?: T;
  /** The server's sentence when it refused. */
  readonly fault?: string;
  readonly again: () => void;
}

/** What the server has at `path`; null asks for nothing. The last value stays while it is asked for anew. */
export const useAnswer = <T>(path: string | null): Answer<T> => {
  const [state, setState] = useState<{ readonly path: string | null; readonly value?: T; readonly fault?: string }>({ path: null });
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    if (path === null) return;
    const stop = new AbortController();
    get<T>(path, stop.signal).then(
      (value) => setState({ path, value }),
      (fault: unknown) => !stop.signal.aborted && setState({ path, fault: sentence(fault) }),
    );
    return () => stop.abort();
  }, [path, turn]);
  const again = useCallback(() => setTurn((n) => n + 1), []);
  return state.path === path ? { ...state, again } : { again };
};
