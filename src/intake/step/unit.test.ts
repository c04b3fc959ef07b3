import { expect, it } from 'vitest';
import { fileUnit } from './unit.js';

const context = (id: number): string => `#99=(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNIT_ASSIGNED_CONTEXT((#${id},#8,#9))REPRESENTATION_CONTEXT('',''));`;
const MM = '#5=(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.));';

it('reads millimetres', () => {
  expect(fileUnit(MM + context(5))).toEqual({ unit: 'mm', mm: 1 });
});

it('reads the inch, not the millimetre base of its conversion', () => {
  const inch = `#6=LENGTH_MEASURE_WITH_UNIT(LENGTH_MEASURE(25.4),#5);\n#7=(CONVERSION_BASED_UNIT('INCH',#6)LENGTH_UNIT()NAMED_UNIT(#4));`;
  expect(fileUnit(`${MM}\n${inch}\n${context(7)}`)).toEqual({ unit: 'inch', mm: 25.4 });
});

it('reads metres and centimetres, over line breaks', () => {
  expect(fileUnit(`#5 = ( LENGTH_UNIT ( )\n NAMED_UNIT ( * )\n SI_UNIT ( $ , .METRE. ) ) ;${context(5)}`)).toEqual({ unit: 'm', mm: 1000 });
  expect(fileUnit(`#5=(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.CENTI.,.METRE.));${context(5)}`)).toEqual({ unit: 'cm', mm: 10 });
});

it('says when it does not know, with what a unit comes to', () => {
  expect(fileUnit('')).toEqual({ unit: 'mm', mm: 1, doubtful: 'no unit' });
  // a foot is 12 inches of 25.4 mm
  const foot = `${MM}#6=LENGTH_MEASURE_WITH_UNIT(LENGTH_MEASURE(304.8),#5);#7=(CONVERSION_BASED_UNIT('FOOT',#6)LENGTH_UNIT()NAMED_UNIT(#4));${context(7)}`;
  expect(fileUnit(foot)).toEqual({ unit: 'mm', mm: 304.8, doubtful: 'FOOT of 304.8 mm' });
  expect(fileUnit(`#5=(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MICRO.,.METRE.));${context(5)}`)).toEqual({ unit: 'mm', mm: 0.001, doubtful: 'micrometre' });
});

it('goes by the measure of a conversion, whatever its name', () => {
  const called = (name: string, measure: string): string => `${MM}#6=LENGTH_MEASURE_WITH_UNIT(${measure},#5);#7=(CONVERSION_BASED_UNIT('${name}',#6)LENGTH_UNIT()NAMED_UNIT(#4));${context(7)}`;
  expect(fileUnit(called('IN', '25.4'))).toEqual({ unit: 'inch', mm: 25.4 });
  expect(fileUnit(called('INCH', 'LENGTH_MEASURE(2.54E+01)'))).toEqual({ unit: 'inch', mm: 25.4 });
  expect(fileUnit(called('INCH', 'LENGTH_MEASURE(7.)'))).toEqual({ unit: 'mm', mm: 7, doubtful: 'INCH of 7 mm' });
});
