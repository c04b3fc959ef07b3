import { describe, expect, it } from 'vitest';
import { type Part, bendKind, partFromLine, tabPlate, trayPart } from './index.js';

const must = <T>(made: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (!made.ok) throw new Error('refused');
  return made.value;
};
const kinds = (part: Part): readonly string[] => part.bends.map(({ kind }) => kind);

describe('how a bend is made, by its angle and its radius over the thickness', () => {
  it.each([[90, 20, 'bend'], [90, 20.1, 'rolled'], [169, 2, 'bend'], [170, 2, 'hem'], [180, 60, 'rolled']] as const)('%d degrees, radius %d on 2 mm: %s', (angle, radius, kind) => {
    expect(bendKind(angle, radius, 2)).toBe(kind);
  });

  it('the same for a typed line, a tray and a plate with tabs, and said', () => {
    const typed = must(partFromLine('100 ^90r60 100 v90 30 ^closed 12 t2 w300', 'p'));
    expect(kinds(typed)).toEqual(['rolled', 'bend', 'hem']);
    expect(typed.assumptions.filter(({ code }) => code === 'rolled')).toEqual([expect.objectContaining({ bends: ['b1'], sentence: 'Bend b1 has inside radius 60.00 mm, 30 times the thickness: it is rolled or bent in many hits.' })]);
    const arm = [{ length: 100, turn: { turn: 90, insideRadius: 60 } }];
    expect(kinds(must(trayPart({ name: 't', thickness: 2, insideRadius: 2, base: [300, 200], arms: [arm, [{ length: 30, turn: 90 }], [], []] })))).toEqual(['rolled', 'bend']);
    const row = { count: 1, width: 50, length: 100, turn: { turn: 90, insideRadius: 60 } };
    expect(kinds(must(tabPlate({ name: 't', thickness: 2, insideRadius: 2, base: [300, 200], rows: [row, undefined, undefined, undefined] })))).toEqual(['rolled']);
  });
});
