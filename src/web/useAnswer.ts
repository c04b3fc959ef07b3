import { useCallback, useEffect, useState } from 'react';
import { SILENT, get, sentence } from './ask.js';

export interface Answer<T> {
  readonly value?: T;
  /** The server's sentence when it refused, or that it does not answer. */
  readonly fault?: string;
  readonly again: () => void;
}

/** What the server has at `path`; null asks for nothing. The last value stays while it is asked for anew, and when nobody answers. */
export const useAnswer = <T>(path: string | null): Answer<T> => {
  const [state, setState] = useState<{ readonly path: string | null; readonly value?: T; readonly fault?: string }>({ path: null });
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    if (path === null) return;
    const stop = new AbortController();
    get<T>(path, stop.signal).then(
      (value) => setState({ path, value }),
      (wrong: unknown) => {
        if (stop.signal.aborted) return;
        const fault = sentence(wrong);
        // a server that is not there has not taken back what it said
        setState((before) => (fault === SILENT && before.path === path && before.value !== undefined ? { path, value: before.value, fault } : { path, fault }));
      },
    );
    return () => stop.abort();
  }, [path, turn]);
  const again = useCallback(() => {
    setState((before) => (before.fault === undefined ? before : { path: before.path, ...(before.value === undefined ? {} : { value: before.value }) }));
    setTurn((n) => n + 1);
  }, []);
  return state.path === path ? { ...state, again } : { again };
};
