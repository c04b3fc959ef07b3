import { useState } from 'react';
import type { ShopRevision } from '../../store/index.js';
import { useAnswer } from '../useAnswer.js';
import { type Draft, useDraft } from './useDraft.js';

export interface Entry extends ShopRevision {
  readonly data: unknown;
  readonly revisions: readonly ShopRevision[];
}

/**
 * An entry of the store as it is typed on: its data, what it follows, and an older revision when that is looked at. `fresh` is what a new one
 * starts from; `name`: what a new one is called as long as it has no path.
 */
export const useEntry = <T extends Entry>(path: string | null, fresh?: unknown, name = path ?? 'new') => {
  const [revision, setRevision] = useState<number>();
  const asked = path === null ? null : revision === undefined ? path : `${path}${path.includes('?') ? '&' : '?'}revision=${revision}`;
  const { value, fault, again } = useAnswer<T>(asked);
  const [draft, setDraft] = useDraft(name);
  const data = draft?.data ?? value?.data ?? fresh;
  const after = draft?.after ?? value?.revisions.at(-1)?.revision ?? 0;
  const latest = value?.revisions.at(-1)?.revision ?? 0;
  return {
    value, fault, data, after, latest, again,
    lastChange: value?.revisions.at(-1)?.change,
    // an old revision that is looked at differs from the latest one, so it may be kept again
    changed: path === null || (draft !== undefined && JSON.stringify(draft.data) !== JSON.stringify(value?.data)) || (value !== undefined && value.revision !== value.revisions.at(-1)?.revision),
    change: (next: unknown): void => setDraft({ after, data: next }),
    forget: draft === undefined ? undefined : (): void => { setDraft(undefined); again(); },
    /** Goes on with what was typed on a later revision, which is fetched. */
    rebase: (next: Draft): void => { setDraft(next); setRevision(undefined); again(); },
    show: (one: number): void => { setDraft(undefined); setRevision(one); },
    kept: (): void => { setDraft(undefined); setRevision(undefined); again(); },
  };
};
