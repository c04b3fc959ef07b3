import { z } from 'zod';
import type { Result } from './result.js';

/** Why a floor or a rack was refused: the first thing found wrong. */
export interface DataFault {
  /** 'shape' a field missing, unknown, of the wrong kind or out of its range; 'sense' fields that contradict each other. */
  readonly code: 'shape' | 'sense';
  /** The id of the machine or tool, or its place in the list when it has none. */
  readonly entry: string;
  /** The field, as a path in the data. */
  readonly field: string;
  /** One sentence that names entry, field and what is allowed. */
  readonly sentence: string;
  /** What else was found wrong with single fields: for a form that tells all at once. */
  readonly others?: readonly DataFault[];
}

export type Refused = { readonly ok: false; readonly fault: DataFault };

export const refuse = (code: DataFault['code'], entry: string, field: string, what: string): Refused => ({
  ok: false,
  fault: { code, entry, field, sentence: `${entry}: ${field} ${what}.` },
});

/** A number in a stated range; the message is the end of a sentence. */
export const within = (least: number, most: number, unit: string) => {
  const error = `must be a number from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}`;
  return z.number({ error }).min(least, { error }).max(most, { error });
};

/** A whole number in a stated range. */
export const whole = (least: number, most: number) => {
  const error = `must be a whole number from ${least} to ${most}`;
  return z.int({ error }).min(least, { error }).max(most, { error });
};

export const words = (what: string) => {
  const error = `must be ${what}`;
  return z.string({ error }).trim().min(1, { error }).max(200, { error });
};

export const yesNo = z.boolean({ error: 'must be true or false' });

export const oneOf = <const T extends readonly string[]>(values: T) =>
  z.enum(values, { error: `must be one of: ${values.join(', ')}` });

export const list = <T extends z.ZodType>(of: T, least: number, what: string) =>
  z.array(of, { error: `must be a list of ${what}` }).min(least, { error: `must list at least ${least} of: ${what}` });

const at = (json: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), json);

const shown = (value: unknown): string =>
  value === undefined ? 'it is missing' : value === '' ? 'nothing was given' : `${JSON.stringify(value)?.slice(0, 60) ?? typeof value} was given`;

/**
 * The data in the schema's shape, or the first fault. `depth` is the length of the path that leads to an entry
 * (1 in a list of machines, 2 in a rack's lists).
 */
export const readShape = <S extends z.ZodType>(
  schema: S,
  json: unknown,
  what: string,
  depth: number,
): Result<z.output<S>, DataFault> => {
  const read = schema.safeParse(json);
  if (read.success) return { ok: true, value: read.data };
  const [first, ...rest] = read.error.issues.map((issue) => faultOf(issue, json, what, depth));
  return { ok: false, fault: { ...first!, ...(rest.length > 0 ? { others: rest } : {}) } };
};

const faultOf = (issue: z.core.$ZodIssue, json: unknown, what: string, depth: number): DataFault => {
  const inEntry = issue.path.length >= depth && typeof issue.path[depth - 1] === 'number';
  const head = inEntry ? issue.path.slice(0, depth) : [];
  const id = at(json, [...head, 'id']);
  const place = head.length > 0 ? `${head.slice(0, -1).join(' ')} number ${Number(head.at(-1)) + 1}`.trim() : what;
  const entry = typeof id === 'string' && id !== '' ? id : place;
  const rest = issue.path.slice(head.length).map(String).join('.');
  const field = rest === '' ? 'the whole' : rest;
  if (issue.code === 'unrecognized_keys') {
    const named = [...(rest === '' ? [] : [rest]), issue.keys[0]].join('.');
    return refuse('shape', entry, named, 'is not a known field').fault;
  }
  // a field without words of its own is one that holds others
  const must = issue.code === 'invalid_type' && issue.expected === 'object' ? 'must be fields in braces { }' : issue.message;
  return refuse('shape', entry, field, `${must} (${shown(at(json, issue.path))})`).fault;
};
