import { useState } from 'react';

/** What is typed and not kept yet, and the revision that it was typed on. */
export interface Draft {
  readonly after: number;
  readonly data: unknown;
}

const held = (key: string | null): Draft | undefined => {
  if (key === null) return undefined;
  try {
    return (JSON.parse(sessionStorage.getItem(key) ?? 'null') as Draft | null) ?? undefined;
  } catch {
    return undefined;
  }
};

/** What is typed on a page, held in this tab until it is kept or forgotten: another page or a reload loses nothing. Without a name it is held on the page alone. */
export const useDraft = (name: string | null): readonly [Draft | undefined, (draft: Draft | undefined) => void] => {
  const key = name === null ? null : `brakewright.typed ${name}`;
  const [draft, setDraft] = useState(() => held(key));
  return [draft, (next) => {
    setDraft(next);
    if (key === null) return;
    try {
      if (next === undefined) sessionStorage.removeItem(key);
      else sessionStorage.setItem(key, JSON.stringify(next));
    } catch {
      // a tab without room for it still has it on the page
    }
  }];
};
