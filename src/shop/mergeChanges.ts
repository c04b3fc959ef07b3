import { innerPlace } from './placeWords.js';
import { sameData } from './sameData.js';

/** A place that was set in both versions, each otherwise, in words. */
export interface SetInBoth {
  readonly place: string;
  readonly theirs: unknown;
  readonly mine: unknown;
}

interface Merged {
  readonly data: unknown;
  readonly both: readonly SetInBoth[];
}

type Tree = Readonly<Record<string, unknown>>;
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Fields that say which other fields a piece of data has: where they differ, it is one thing or the other, never a mixture. */
const TAGS = ['drive', 'source', 'shape', 'kind'];

const named = (list: readonly unknown[]): ReadonlyMap<string, unknown> | undefined =>
  list.every((entry) => isTree(entry) && typeof entry['id'] === 'string') ? new Map(list.map((entry) => [String((entry as Tree)['id']), entry])) : undefined;

/** Lists whose entries have ids, entry by entry, in their order and then what is new in mine; undefined where they have none. */
const mergedById = (base: readonly unknown[], theirs: readonly unknown[], mine: readonly unknown[], place: string): Merged | undefined => {
  const [b, t, m] = [named(base), named(theirs), named(mine)];
  if (!b || !t || !m) return undefined;
  const parts = [...new Set([...t.keys(), ...m.keys()])].map((id) => mergeChanges(b.get(id), t.get(id), m.get(id), place === '' ? id : `${place}, ${id}`));
  return { data: parts.flatMap(({ data }) => (data === undefined ? [] : [data])), both: parts.flatMap(({ both }) => both) };
};

/**
 * What two made of the same thing, put together: `theirs` with all that `mine` changes of `base`. What both set otherwise stays as `mine` has it and
 * is named in `both`, so that it can be said. Undefined is what is not there; the outcome is for the parser to check.
 * @example mergeChanges({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 1, b: 3 }) // { data: { a: 2, b: 3 }, both: [] }
 */
export const mergeChanges = (base: unknown, theirs: unknown, mine: unknown, place = ''): Merged => {
  if (sameData(mine, base) || sameData(mine, theirs)) return { data: theirs, both: [] };
  if (sameData(theirs, base)) return { data: mine, both: [] };
  if (isTree(base) && isTree(theirs) && isTree(mine) && TAGS.every((tag) => base[tag] === theirs[tag] && base[tag] === mine[tag])) {
    const parts = [...new Set([...Object.keys(theirs), ...Object.keys(mine)])].map((key) => [key, mergeChanges(base[key], theirs[key], mine[key], innerPlace(place, key))] as const);
    return { data: Object.fromEntries(parts.flatMap(([key, { data }]) => (data === undefined ? [] : [[key, data]]))), both: parts.flatMap(([, { both }]) => both) };
  }
  if (Array.isArray(base) && Array.isArray(theirs) && Array.isArray(mine)) {
    const byId = mergedById(base, theirs, mine, place);
    if (byId) return byId;
    if (base.length === theirs.length && base.length === mine.length) {
      const parts = mine.map((value, i) => mergeChanges(base[i], theirs[i], value, innerPlace(place, i)));
      return { data: parts.map(({ data }) => data), both: parts.flatMap(({ both }) => both) };
    }
  }
  return { data: mine, both: [{ place, theirs, mine }] };
};
