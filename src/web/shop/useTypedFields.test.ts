import { expect, it } from 'vitest';
import { fieldsHeld } from './useTypedFields.js';

it('takes of what a tab held the fields that are writing, and nothing of anything else', () => {
  expect(fieldsHeld({ serial: 'P-1', figures: { d1: '40' }, count: 3 })).toEqual({ serial: 'P-1' });
  for (const other of [undefined, null, 'P-1', 7]) expect(fieldsHeld(other)).toEqual({});
});
