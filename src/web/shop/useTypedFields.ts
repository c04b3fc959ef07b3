import { useDraft } from './useDraft.js';

type Fields = Readonly<Record<string, string>>;

/** Those fields of what a tab held that are writing: another version of the program may have left something else there. */
export const fieldsHeld = (data: unknown): Fields =>
  typeof data === 'object' && data !== null ? Object.fromEntries(Object.entries(data).filter((entry): entry is [string, string] => typeof entry[1] === 'string')) : {};

/**
 * The fields of a form by name, begun with `first`: what is typed is held in this tab under the form's name, so that a reload or another page loses
 * nothing; with null for a name it is held on the page alone. Then the change of some of them, and the way back to the beginning.
 */
export const useTypedFields = <F extends Fields>(name: string | null, first: F): readonly [F & Fields, (change: Fields) => void, () => void] => {
  const [draft, setDraft] = useDraft(name);
  const fields = { ...first, ...fieldsHeld(draft?.data) };
  return [fields, (change) => setDraft({ after: 0, data: { ...fields, ...change } }), () => setDraft(undefined)];
};
