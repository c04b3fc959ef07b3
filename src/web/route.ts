import { useSyncExternalStore } from 'react';

/** A page with what it is about. The address keeps it after '#', so that any page can be reloaded, bookmarked and gone back to. */
export type Route =
  | { readonly page: 'parts' }
  | { readonly page: 'part'; readonly id: string }
  | { readonly page: 'board'; readonly partId: string | null }
  | { readonly page: 'trial'; readonly id: string }
  | { readonly page: 'walk'; readonly id: string; readonly step: number };

export const href = (route: Route): string => {
  switch (route.page) {
    case 'parts':
      return '#/';
    case 'part':
      return `#/part/${encodeURIComponent(route.id)}`;
    case 'board':
      return route.partId === null ? '#/board' : `#/board/${encodeURIComponent(route.partId)}`;
    case 'trial':
      return `#/trial/${encodeURIComponent(route.id)}`;
    case 'walk':
      return `#/trial/${encodeURIComponent(route.id)}/step/${route.step}`;
  }
};

/** A part of the address as it was meant; null when it is not well written. */
const decoded = (text: string): string | null => {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
};

/** The route that an address names; null when it names none. */
export const routeOf = (hash: string): Route | null => {
  const [first, rawId, third, number, ...more] = hash.replace(/^#?\/?/, '').split('/');
  if (first === '' || first === undefined) return { page: 'parts' };
  if (more.length > 0) return null;
  const id = rawId === undefined || rawId === '' ? null : decoded(rawId);
  if (first === 'board' && third === undefined) return { page: 'board', partId: id };
  if (id === null) return null;
  if (first === 'part' && third === undefined) return { page: 'part', id };
  if (first === 'trial' && third === undefined) return { page: 'trial', id };
  if (first === 'trial' && third === 'step' && /^[1-9]\d{0,4}$/.test(number ?? '')) return { page: 'walk', id, step: Number(number) };
  return null;
};

export const goTo = (route: Route): void => {
  window.location.hash = href(route);
};

const listen = (changed: () => void): (() => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};

export const useHash = (): string => useSyncExternalStore(listen, () => window.location.hash);
