import { useCallback, useEffect, useRef, useSyncExternalStore } from 'react';

/** Where in the pages somebody is; kept in the address after the #, so that it can be sent on and gone back to. */
export type Route =
  | { readonly page: 'parts' }
  | { readonly page: 'profile' }
  | { readonly page: 'part'; readonly id: string }
  | { readonly page: 'board'; readonly partId: string }
  | { readonly page: 'trial'; readonly id: string }
  | { readonly page: 'walk'; readonly id: string; readonly step: number }
  | { readonly page: 'bend' }
  | { readonly page: 'fits' }
  | { readonly page: 'fit'; readonly id: string }
  | { readonly page: 'floor' }
  | { readonly page: 'machine'; readonly id: string }
  | { readonly page: 'condition'; readonly id: string }
  | { readonly page: 'racks' }
  | { readonly page: 'deductions' }
  | { readonly page: 'metals' }
  | { readonly page: 'rack'; readonly id: string }
  | { readonly page: 'tool'; readonly rack: string; readonly id: string }
  | { readonly page: 'report'; readonly id: string }
  | { readonly page: 'day'; readonly trials: readonly string[] }
  | { readonly page: 'pieces'; readonly id: string }
  | { readonly page: 'nowhere'; readonly address: string };

/** Undefined where it is no encoding of anything, as a lone '%'. */
const decoded = (part: string): string | undefined => {
  try {
    return decodeURIComponent(part);
  } catch {
    return undefined;
  }
};

/** The place that a hash names; 'nowhere', with the address as it stands, where it names none. @example routeOf('#/trials/t-1/steps/2') // { page: 'walk', id: 't-1', step: 2 } */
export const routeOf = (hash: string): Route => {
  const address = hash.replace(/^#\/?/, '');
  const parts = address.split('/').map(decoded);
  const [room, id, below, number, ...more] = parts;
  // only a step of a walk lies as deep as its number
  const deep = [...(room === 'trials' && below === 'steps' ? [] : [number]), ...more];
  if (parts.includes(undefined) || deep.some(Boolean)) return { page: 'nowhere', address };
  if (!room || (room === 'parts' && !id)) return { page: 'parts' };
  if (room === 'profile' && !id) return { page: 'profile' };
  if (room === 'bend' && !id) return { page: 'bend' };
  if (room === 'fit' && !below) return id ? { page: 'fit', id } : { page: 'fits' };
  if (room === 'floor' && !id) return { page: 'floor' };
  if (room === 'floor' && id && !below) return { page: 'machine', id };
  if (room === 'floor' && id && below === 'condition') return { page: 'condition', id };
  if (room === 'deductions' && !id) return { page: 'deductions' };
  if (room === 'metals' && !id) return { page: 'metals' };
  if (room === 'racks' && !id) return { page: 'racks' };
  if (room === 'racks' && id && !below) return { page: 'rack', id };
  if (room === 'racks' && id && below) return { page: 'tool', rack: id, id: below };
  if (room === 'fit' && id && below === 'report') return { page: 'report', id };
  if (room === 'day' && id && !below) return { page: 'day', trials: id.split(',') };
  if (room === 'trials' && id && below === 'pieces') return { page: 'pieces', id };
  if (room === 'parts' && id && !below) return { page: 'part', id };
  if (room === 'parts' && id && below === 'board') return { page: 'board', partId: id };
  if (room === 'trials' && id && !below) return { page: 'trial', id };
  if (room === 'trials' && id && below === 'steps' && /^[1-9]\d*$/.test(number ?? '')) return { page: 'walk', id, step: Number(number) };
  return { page: 'nowhere', address };
};

export const to = {
  parts: '#/parts',
  profile: '#/profile',
  bend: '#/bend',
  fits: '#/fit',
  fit: (id: string): string => `#/fit/${encodeURIComponent(id)}`,
  floor: '#/floor',
  machine: (id: string): string => `#/floor/${encodeURIComponent(id)}`,
  condition: (id: string): string => `#/floor/${encodeURIComponent(id)}/condition`,
  racks: '#/racks',
  deductions: '#/deductions',
  metals: '#/metals',
  rack: (id: string): string => `#/racks/${encodeURIComponent(id)}`,
  tool: (rack: string, id: string): string => `#/racks/${encodeURIComponent(rack)}/${encodeURIComponent(id)}`,
  part: (id: string): string => `#/parts/${encodeURIComponent(id)}`,
  board: (partId: string): string => `#/parts/${encodeURIComponent(partId)}/board`,
  trial: (id: string): string => `#/trials/${encodeURIComponent(id)}`,
  report: (fitId: string): string => `#/fit/${encodeURIComponent(fitId)}/report`,
  day: (trials: readonly string[]): string => `#/day/${trials.map(encodeURIComponent).join(',')}`,
  pieces: (id: string): string => `#/trials/${encodeURIComponent(id)}/pieces`,
  walk: (id: string, step: number): string => `#/trials/${encodeURIComponent(id)}/steps/${step}`,
};

export const go = (hash: string): void => {
  location.hash = hash;
};

/**
 * Goes on to another place once something that takes long is done, if the page that asked for it is still the one that is open: who has moved on
 * stays there.
 */
export const useGo = (): ((hash: string) => void) => {
  const open = useRef(false);
  useEffect(() => {
    open.current = true;
    return () => { open.current = false; };
  }, []);
  return useCallback((hash) => { if (open.current) go(hash); }, []);
};

const watch = (changed: () => void): (() => void) => {
  addEventListener('hashchange', changed);
  return () => removeEventListener('hashchange', changed);
};

export const useHash = (): string => useSyncExternalStore(watch, () => location.hash);
