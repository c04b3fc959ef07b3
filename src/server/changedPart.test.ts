import { describe, expect, it } from 'vitest';
import { partFromLine, profilePart, type Part } from '../sheet/index.js';
import { changeSchema, changedPart } from './changedPart.js';

const drawn = (): Part => {
  const made = profilePart({ name: 'shell', thickness: 1, insideRadius: 25, width: 100, flanges: [80, 80], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const square = [[10, 10], [20, 10], [20, 20], [10, 20]].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 }));
  const stud = { plate: 0, kind: 'boss' as const, side: 'A' as const, outline: square, height: 8 };
  return { ...made.value, formed: [stud, { ...stud, plate: 1 }] };
};
const change = (asked: unknown) => changedPart(drawn(), changeSchema.parse(asked), [], { drawing: () => Promise.reject(new Error('nothing is read again')), solid: () => Promise.reject(new Error('nothing is read again')) });

describe('what a user sets otherwise of a solid that was read', () => {
  it('how a bend of large radius is made', async () => {
    const before = drawn().bends[0]!.kind;
    const to = before === 'rolled' ? 'bend' : 'rolled';
    const { part, words } = await change({ kinds: { b1: to } });
    expect([part.bends[0]!.kind, words]).toEqual([to, `b1 ${to === 'rolled' ? 'rolled' : 'bent in one stroke'}`]);
  });
  it('another radius may be another way to make the bend, and says so', async () => {
    expect(drawn().bends[0]!.kind).toBe('rolled');
    const { part } = await change({ radii: { b1: 5 } });
    expect([part.bends[0]!.kind, part.assumptions.some(({ code }) => code === 'rolled')]).toEqual(['bend', false]);
    const again = await change({ radii: { b1: 30 } });
    expect(again.part.bends[0]!.kind).toBe('rolled');
    expect(again.part.assumptions.filter(({ code }) => code === 'rolled').map(({ sentence }) => sentence)).toEqual(['Bend b1 has inside radius 30.00 mm, 30 times the thickness: it is rolled or bent in many hits.']);
  });
  it('the height of what stands on a plate', async () => {
    const { part, words } = await change({ heights: { 1: 12.5 } });
    expect(part.formed!.map(({ height }) => height)).toEqual([8, 12.5]);
    expect(words).toBe('boss on plate 2 12.5 mm high');
  });
  it('and says what there is not', async () => {
    await expect(change({ kinds: { b7: 'bend' } })).rejects.toThrow("The part has no bend 'b7'.");
    await expect(change({ heights: { 2: 5 } })).rejects.toThrow('The part has no formed feature 2: it has 2, the first is 0.');
    await expect(change({ heights: { 0: 8 } })).rejects.toThrow('Nothing changes');
    expect(changeSchema.safeParse({ heights: { 0: -1 } }).success).toBe(false);
  });

  it('the thickness where the faces of the solid vary, outside lengths kept; nowhere else', async () => {
    const varied: Part = { ...drawn(), assumptions: [{ code: 'thickness varies', sentence: 'Faces of plate 1 lie 0.98 mm apart.', plates: [0], bends: [] }] };
    const { part, words } = await changedPart(varied, changeSchema.parse({ thickness: 1.2 }), [], { drawing: () => Promise.reject(new Error('nothing is read again')), solid: () => Promise.reject(new Error('nothing is read again')) });
    expect([part.thickness, words, part.bends[0]!.insideRadius]).toEqual([1.2, 'thickness 1.2 mm', 25]);
    // 80 outside less an outer radius of 25 + 1.2: the flat ends at 53.8
    expect(part.bends[0]!.sides[0].line.from[1]).toBeCloseTo(53.8, 9);
    await expect(change({ thickness: 1.2 })).rejects.toThrow('its thickness was read, not assumed');
  });
});

describe('a profile typed anew', () => {
  const typed = (line: string, dimensions: NonNullable<Part['dimensions']>): Part => {
    const made = partFromLine(line, 'channel');
    if (!made.ok) throw new Error(made.fault.sentence);
    return { ...made.value, dimensions };
  };
  const web = { id: 'd1', between: [{ kind: 'face', plate: 0, side: 'B' }, { kind: 'face', plate: 2, side: 'B' }], tolerance: 0.1 } as const;
  const sheet = { id: 'd2', between: [{ kind: 'face', plate: 1, side: 'A' }, { kind: 'face', plate: 1, side: 'B' }], class: 'f' } as const;
  const anew = (part: Part, asked: object) => changedPart(part, changeSchema.parse(asked), [], { drawing: () => Promise.reject(new Error('nothing is read again')), solid: () => Promise.reject(new Error('nothing is read again')) });
  const part = typed('30 ^90 60 ^90 30 t2 w100', [web, sheet]);

  it('keeps the dimensions that can still be read, and names the dropped ones', async () => {
    const longer = await anew(part, { line: '30 ^90 70 ^90 30 t2 w100' });
    expect([longer.part.dimensions, longer.words]).toEqual([[web, sheet], 'typed anew: 30 ^90 70 ^90 30 t2 w100']);
    // its legs no longer stand parallel
    const open = await anew(part, { line: '30 ^90 60 ^60 30 t2 w100' });
    expect(open.part.dimensions).toEqual([sheet]);
    expect(open.words).toMatch(/^typed anew: .*, dimension dropped, not to be read on the part any longer: d1 \(B face of .* to B face of .*, plus and minus 0.1 mm\)$/);
    // plate 3 is another one where there is a bend more
    expect((await anew(part, { line: '30 ^90 30 ^90 30 ^90 30 t2 w100' })).part.dimensions).toBeUndefined();
  });

  it('takes those that are told with it in their place', async () => {
    const { part: now, words } = await anew(part, { line: '30 ^90 60 ^60 30 t2 w100', dimensions: [{ between: sheet.between }] });
    expect([now.dimensions?.length, words]).toEqual([1, expect.not.stringContaining('dropped')]);
  });
});
