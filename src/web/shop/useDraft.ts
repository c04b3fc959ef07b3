import { useState } from 'react';

/** What is typed and not kept yet, and the revision that it was typed on. */
export interface Draft {
  readonly after: number;
  readonly data: unknown;
}

const held = (key: string): Draft | undefined => {
  try {
    return (JSON.parse(sessionStorage.getItem(key) ?? 'null') as Draft | null) ?? undefined;
  } catch {
    return undefined;
  }
};

/** What is typed on a page, held in this tab until it is kept or forgotten: another page or a reload loses nothing. */
export const useDraft = (name: string): readonly [Draft | undefined, (draft: Draft | undefined) => void] => {
  const key = `brakewright.typed ${name}`;
  const [draft, setDraft] = useState(() => held(key));
  return [draft, (next) => {
    setDraft(next);
    try {
      if (next === undefined) sessionStorage.removeItem(key);
      else sessionStorage.setItem(key, JSON.stringify(next));
    } catch {
      // a tab without room for it still has it on the page
    }
  }];
};
