import { describe, expect, it } from 'vitest';
import { figureWithin } from './figureWithin.js';

const THICKNESS = { what: 'thickness', least: 0, most: 50, unit: 'mm', above: true } as const;
const QUANTITY = { what: 'quantity', least: 1, most: 1000, whole: true } as const;

describe('a figure within what its field may hold', () => {
  it.each([['1.5', 1.5], ['1,5', 1.5], ['50', 50]])('reads %s', (text, value) => expect(figureWithin(text, THICKNESS)).toEqual({ ok: true, value }));
  it.each([
    ['-1', 'Thickness must be more than 0 and at most 50 mm, not \u22121.'],
    ['0', 'Thickness must be more than 0 and at most 50 mm, not 0.'],
    ['99999', 'Thickness must be more than 0 and at most 50 mm, not 99999.'],
    ['1.5 mm', 'Thickness must be more than 0 and at most 50 mm; “1.5 mm” is no figure.'],
    ['1,250', '1,250 may mean 1250 or, with a decimal comma, 1.250: write the one that is meant, without a comma.'],
    ['', 'Thickness is missing: it must be more than 0 and at most 50 mm.'],
  ])('says of %j what is wrong with it', (text, sentence) => expect(figureWithin(text, THICKNESS)).toEqual({ ok: false, sentence }));
  it('asks for a whole number where pieces are counted', () => {
    expect(figureWithin('25', QUANTITY)).toEqual({ ok: true, value: 25 });
    expect(figureWithin('2,5', QUANTITY)).toEqual({ ok: false, sentence: 'Quantity must be a whole number from 1 to 1000, not 2.5.' });
  });
  it('lets a field stay empty that may', () => expect(figureWithin(' ', { ...THICKNESS, mayStayOut: true })).toEqual({ ok: true, value: undefined }));
});
