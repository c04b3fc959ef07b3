import { useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { useAnswer } from '../useAnswer.js';

export interface Entry extends ShopRevision {
  readonly data: unknown;
  readonly revisions: readonly ShopRevision[];
}

/** An entry of the store as it is typed on: its data, what it follows, and an older revision when that is looked at. `fresh` is what a new one starts from. */
export const useEntry = <T extends Entry>(path: string | null, fresh?: unknown) => {
  const [revision, setRevision] = useState<number>();
  const asked = path === null ? null : revision === undefined ? path : `${path}${path.includes('?') ? '&' : '?'}revision=${revision}`;
  const { value, fault, again } = useAnswer<T>(asked);
  const [typed, setTyped] = useState<unknown>();
  const data = typed ?? value?.data ?? fresh;
  return {
    value, fault, data,
    after: value?.revisions.at(-1)?.revision ?? 0,
    // an old revision that is looked at differs from the latest one, so it may be kept again
    changed: path === null || (typed !== undefined && JSON.stringify(typed) !== JSON.stringify(value?.data)) || (value !== undefined && value.revision !== value.revisions.at(-1)?.revision),
    change: (next: unknown): void => setTyped(next),
    show: (one: number): void => { setTyped(undefined); setRevision(one); },
    kept: (): void => { setTyped(undefined); setRevision(undefined); again(); },
  };
};
