import { expect, it } from 'vitest';
import { fileUnit } from './unit.js';

const context = (id: number): string => `#99=(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNIT_ASSIGNED_CONTEXT((#${id},#8,#9))REPRESENTATION_CONTEXT('',''));`;
const MM = '#5=(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.));';

it('reads millimetres', () => {
  expect(fileUnit(MM + context(5))).toEqual({ unit: 'mm' });
});

it('reads the inch, not the millimetre base of its conversion', () => {
  const inch = `#6=LENGTH_MEASURE_WITH_UNIT(LENGTH_MEASURE(25.4),#5);\n#7=(CONVERSION_BASED_UNIT('INCH',#6)LENGTH_UNIT()NAMED_UNIT(#4));`;
  expect(fileUnit(`${MM}\n${inch}\n${context(7)}`)).toEqual({ unit: 'inch' });
});

it('reads metres and centimetres, over line breaks', () => {
  expect(fileUnit(`#5 = ( LENGTH_UNIT ( )\n NAMED_UNIT ( * )\n SI_UNIT ( $ , .METRE. ) ) ;${context(5)}`)).toEqual({ unit: 'm' });
  expect(fileUnit(`#5=(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.CENTI.,.METRE.));${context(5)}`)).toEqual({ unit: 'cm' });
});

it('says when it does not know', () => {
  expect(fileUnit('')).toEqual({ unit: 'mm', doubtful: 'no unit' });
  expect(fileUnit(`#7=(CONVERSION_BASED_UNIT('FOOT',#6)LENGTH_UNIT()NAMED_UNIT(#4));${context(7)}`)).toEqual({ unit: 'mm', doubtful: 'FOOT' });
});
