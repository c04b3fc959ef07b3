import type { z } from 'zod';
import { innerPlace } from '../shop/index.js';

type Issue = z.core.$ZodIssue;

const KINDS: Readonly<Record<string, string>> = { number: 'a number', int: 'a whole number', string: 'words', boolean: 'yes or no', array: 'a list', object: 'a set of fields' };

/** Begins what the library says where a schema has no words of its own. */
const ITS_OWN = /^(?:Too (?:small|big)|Invalid |Unrecognized )/;

const given = (input: unknown): string => (typeof input === 'number' || (typeof input === 'string' && input.length <= 40) ? `, not ${JSON.stringify(input)}` : '');

const bound = ({ origin, inclusive }: { readonly origin: string; readonly inclusive?: boolean | undefined }, limit: string, way: 'more' | 'less'): string => {
  if (origin === 'string') return `must have ${limit} ${limit === '1' ? 'character' : 'characters'} or ${way}`;
  if (origin === 'array') return `must name ${limit} or ${way}`;
  return inclusive === false ? `must be ${way} than ${limit}` : `must be ${limit} or ${way}`;
};

/** What must be of the place that an issue names, as the end of a sentence; null where only the library's own words tell it. */
const must = (issue: Issue): string | null => {
  switch (issue.code) {
    case 'too_small':
      return `${bound(issue, String(issue.minimum), 'more')}${given(issue.input)}`;
    case 'too_big':
      return `${bound(issue, String(issue.maximum), 'less')}${given(issue.input)}`;
    case 'invalid_type':
      return issue.input === undefined ? 'is missing' : `must be ${KINDS[issue.expected] ?? `of the kind ${issue.expected}`}${given(issue.input)}`;
    case 'invalid_value':
      return issue.input === undefined ? 'is missing' : `must be ${issue.values.map(String).join(' or ')}${given(issue.input)}`;
    case 'unrecognized_keys':
      return `has a field that is not known: ${issue.keys.join(', ')}`;
    default:
      return null;
  }
};

/** The first thing that is wrong with what was sent, in one sentence: where, a number in a list counting from 1, and what it must be. */
export const issueWords = (issue: Issue): string => {
  const place = issue.path.reduce<string>((before, key) => innerPlace(before, typeof key === 'number' ? key : String(key)), '');
  const words = ITS_OWN.test(issue.message) ? must(issue) : null;
  return `${place === '' ? 'The request' : `'${place}'`} ${words ?? `is not as it should be: ${issue.message}`}.`;
};
