import { expect, it } from 'vitest';
import { disposition } from './disposition.js';

it('encodes any name, halves of surrogate pairs as a mark', () => {
  expect(disposition('inline', 'Träger 2.pdf')).toBe("inline; filename*=UTF-8''Tr%C3%A4ger%202.pdf");
  expect(disposition('attachment', 'a\ud800 \u{1f600}')).toBe("attachment; filename*=UTF-8''a%EF%BF%BD%20%F0%9F%98%80");
});
