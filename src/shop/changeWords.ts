import { innerPlace } from './placeWords.js';
import { sameData } from './sameData.js';

/** More changes than these are counted, not told. */
const MOST_TOLD = 4;

const isTree = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);

const WORDS: ReadonlyMap<unknown, string> = new Map<unknown, string>([[undefined, 'nothing'], [null, 'not known'], [true, 'yes'], [false, 'no']]);

const shown = (value: unknown): string => WORDS.get(value) ?? (typeof value === 'string' ? value : JSON.stringify(value));

/** Fields that differ, by their place; entries of a list are named by their id where they have one. */
const differences = (before: unknown, after: unknown, place: string): string[] => {
  if (sameData(before, after)) return [];
  if (isTree(before) && isTree(after)) {
    return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((key) => differences(before[key], after[key], innerPlace(place, key)));
  }
  if (Array.isArray(before) && Array.isArray(after)) {
    const [was, is] = [byId(before), byId(after)];
    if (was && is) {
      return [...new Set([...was.keys(), ...is.keys()])].flatMap((id) =>
        !was.has(id) ? [`${id} added`] : !is.has(id) ? [`${id} taken out`] : differences(was.get(id), is.get(id), id));
    }
    return [`${place} changed`];
  }
  const long = shown(before).length + shown(after).length > 60;
  return [long ? `${place} changed` : `${place} ${shown(before)} to ${shown(after)}`];
};

const byId = (list: readonly unknown[]): ReadonlyMap<string, unknown> | null => {
  const named = list.map((entry) => [isTree(entry) ? entry['id'] : undefined, entry] as const);
  return named.every((pair): pair is readonly [string, unknown] => typeof pair[0] === 'string') ? new Map(named) : null;
};

/** What differs between two versions of a machine, a rack or a record, in words; empty when nothing does. */
export const changeWords = (before: unknown, after: unknown): string => {
  const all = differences(before, after, '');
  return [...all.slice(0, MOST_TOLD), ...(all.length > MOST_TOLD ? [`and ${all.length - MOST_TOLD} more`] : [])].join('; ');
};
