import { expect, it } from 'vitest';
import { z } from 'zod';
import { checked } from './checked.js';

const schema = z.strictObject({
  measured: z.array(z.strictObject({ value: z.number().min(0).max(20) })).min(1), machineIds: z.union([z.literal('all'), z.array(z.string())]).optional(),
  whole: z.int().optional(), angle: z.number().gt(0).optional(), name: z.string().min(1).optional(), kind: z.enum(['piece', 'strip']).optional(), own: z.number({ error: 'must be a length' }).optional(),
});
const said = (input: object): string => {
  try {
    checked(schema, { measured: [{ value: 1 }], ...input });
    return 'taken';
  } catch (fault) {
    return (fault as Error).message;
  }
};

it('what was sent and cannot be taken is said where and how it must be, in words of no program', () => {
  expect(said({})).toBe('taken');
  expect(said({ measured: [{ value: 1 }, { value: -5 }] })).toBe("'measured, number 2, value' must be 0 or more, not -5.");
  expect(said({ measured: [{ value: 21 }] })).toBe("'measured, number 1, value' must be 20 or less, not 21.");
  expect(said({ measured: [{}] })).toBe("'measured, number 1, value' is missing.");
  expect(said({ measured: [] })).toBe("'measured' must name 1 or more.");
  expect(said({ angle: 0 })).toBe("'angle' must be more than 0, not 0.");
  expect(said({ whole: 1.5 })).toBe("'whole' must be a whole number, not 1.5.");
  expect(said({ name: '' })).toBe('\'name\' must have 1 character or more, not "".');
  expect(said({ kind: 'rod' })).toBe('\'kind\' must be piece or strip, not "rod".');
  expect(said({ kinds: 1 })).toBe('The request has a field that is not known: kinds.');
  expect(said({ own: 'x' })).toBe("'own' is not as it should be: must be a length.");
});
