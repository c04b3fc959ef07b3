import { describe, expect, it } from 'vitest';
import { bodyNames } from './bodyNames.js';
import type { Brep } from './brep.js';
import { nameText } from './nameText.js';
import { solidsInText } from './solidsInText.js';

/** A body of so many faces and so much volume: names are given by no more than that. */
const body = (faces: number, volume: number): Brep => ({ faces: Array.from({ length: faces }, () => ({ surface: { kind: 'other', name: 'none' }, area: 1, loops: [] })), edges: [], volume, solid: true });

/** A product with solids of its own, written as ISO 10303-21 by hand: records #n00 to #n40 and one solid for each number of faces. */
const product = (n: number, name: string, ...faces: readonly number[]): string =>
  [
    `#${n}00=PRODUCT('id ${n}','${name}','',(#1));`,
    `#${n}10=PRODUCT_DEFINITION_FORMATION('','',#${n}00);`,
    `#${n}20=PRODUCT_DEFINITION('design','',#${n}10,#2);`,
    `#${n}30=PRODUCT_DEFINITION_SHAPE('','',#${n}20);`,
    `#${n}31=SHAPE_DEFINITION_REPRESENTATION(#${n}30,#${n}40);`,
    `#${n}40=SHAPE_REPRESENTATION('',(#3${faces.map((_, i) => `,#${n}5${i}`).join('')}),#4);`,
    ...faces.map((count, i) => `#${n}5${i}=MANIFOLD_SOLID_BREP('',#${n}6${i});#${n}6${i}=CLOSED_SHELL('',(${Array.from({ length: count }, (_, k) => `#${9000 + k}`).join(',')}));`),
  ].join('\n');
const uses = (id: number, of: number, what: number): string => `#${id}=NEXT_ASSEMBLY_USAGE_OCCURRENCE('','','',#${of}20,#${what}20,$);`;
const assembly = [product(1, 'whole'), product(2, 'lid', 6), product(3, 'base', 8), uses(71, 1, 2), uses(72, 1, 3), uses(73, 1, 2)].join('\n');

describe('the names of bodies', () => {
  it('are those of the products of an assembly, two of the same told apart by number', () => {
    expect(bodyNames(assembly, [body(6, 10), body(8, 20), body(6, 10)], 'box')).toEqual(['lid 1', 'base', 'lid 2']);
  });
  it('are the file name and a number where the structure does not give the bodies one by one', () => {
    const numbered = ['box 1', 'box 2', 'box 3'];
    expect(bodyNames(assembly, [body(6, 10), body(7, 20), body(6, 10)], 'box')).toEqual(numbered);
    // the second use of the lid is no lid
    expect(bodyNames(assembly, [body(6, 10), body(8, 20), body(6, 30)], 'box')).toEqual(numbered);
    expect(bodyNames(assembly, [body(6, 10), body(8, 20)], 'box')).toEqual(['box 1', 'box 2']);
    expect(bodyNames('', [body(6, 10), body(8, 20), body(6, 10)], 'box')).toEqual(numbered);
  });
  it('are the file name alone for the only body, and with a number where one product has them all', () => {
    expect(bodyNames(product(1, 'lid', 6), [body(6, 10)], 'box')).toEqual(['box']);
    expect(bodyNames(product(1, 'lid', 6, 8), [body(6, 10), body(8, 20)], 'box')).toEqual(['box 1', 'box 2']);
  });
  it('fall back on the product id, then on the file, where a name is none', () => {
    expect(bodyNames(assembly.replace("'lid'", "'None'"), [body(6, 10), body(8, 20), body(6, 10)], 'box')).toEqual(['id 2 1', 'base', 'id 2 2']);
    expect(bodyNames(assembly.replace("'id 2','lid'", "'','--'"), [body(6, 10), body(8, 20), body(6, 10)], 'box')).toEqual(['box 1', 'base', 'box 3']);
  });
  it('never make two alike', () => {
    const text = [product(1, 'whole'), product(2, 'lid', 6), product(3, 'lid 1', 8), uses(71, 1, 2), uses(72, 1, 3), uses(73, 1, 2)].join('\n');
    expect(bodyNames(text, [body(6, 10), body(8, 20), body(6, 10)], 'box')).toEqual(['lid 2', 'lid 1', 'lid 3']);
  });
  it('follow a representation beside the product’s own, and one that is mapped', () => {
    const beside = assembly.replace('#240=SHAPE_REPRESENTATION', '#240=SHAPE_REPRESENTATION(\'\',(#3),#4);#81=SHAPE_REPRESENTATION_RELATIONSHIP(\'\',\'\',#240,#241);#241=ADVANCED_BREP_SHAPE_REPRESENTATION');
    expect(solidsInText(beside, 3)?.map(({ product: of }) => of)).toEqual([200, 300, 200]);
    const mapped = assembly.replace('#240=SHAPE_REPRESENTATION', '#240=SHAPE_REPRESENTATION(\'\',(#82,#83),#4);#82=MAPPED_ITEM(\'\',#84,#3);#83=MAPPED_ITEM(\'\',#84,#3);#84=REPRESENTATION_MAP(#3,#241);#241=SHAPE_REPRESENTATION');
    expect(solidsInText(mapped, 5)?.map(({ product: of }) => of)).toEqual([200, 200, 300, 200, 200]);
  });
  it('are given up, not waited for, in a file that uses nothing a billion times', () => {
    const levels = Array.from({ length: 40 }, (_, i) => product(i + 1, `level ${i}`) + uses(9100 + 2 * i, i + 1, i + 2) + uses(9101 + 2 * i, i + 1, i + 2)).join('');
    const began = performance.now();
    expect(solidsInText(levels + product(41, 'leaf', 6), 3)).toBeUndefined();
    expect(performance.now() - began).toBeLessThan(2000);
    expect(solidsInText(product(1, 'self', 6) + uses(71, 1, 1), 1)).toBeUndefined();
  });
});

describe('a name as a file writes it', () => {
  it('has the escapes of ISO 10303-21 undone', () => {
    expect(nameText(String.raw`Tr\X2\00E4\X0\ger`)).toBe('Träger');
    expect(nameText(String.raw`\X\C4rmel \S\d`)).toBe('Ärmel ä');
    expect(nameText(String.raw`\X4\0001F527\X0\ 5`)).toBe('🔧 5');
    expect(nameText(String.raw`a\\b`)).toBe(String.raw`a\b`);
    // bytes of UTF-8 as they stand
    expect(nameText('M\u00c3\u00bctze')).toBe('Mütze');
    expect(nameText('M\u00fctze')).toBe('Mütze');
  });
  it('steers nothing and is not long', () => {
    expect(nameText('a\u001b[31m\u0000b\r\nc')).toBe('a [31m b c');
    expect(nameText(String.raw`left\X2\202E2066\X0\right`)).toBe('left right');
    expect(nameText('x'.repeat(5_000_000))).toBe('x'.repeat(80));
  });
  it('is none where nobody gave one', () => {
    for (const none of ['', '   ', '--', 'NONE', 'Unnamed', 'SOLID', 'Kernel STEP translator 7.5 1']) expect(nameText(none)).toBeUndefined();
  });
});
