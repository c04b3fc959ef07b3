import { describe, expect, it } from 'vitest';
import { type Developed, type Part, profilePart, tabPlate, trayPart } from '../sheet/index.js';
import { strokes } from './strokes.js';

// The count does not depend on the flat lengths as long as they are the bends' own; half a circle's quarter will do.
const flat = (part: Part): Developed => ({ part, allowances: part.bends.map((bend) => (bend.bendAngle / 90) * 3) });

describe('strokes', () => {
  it('is one for each bend of a profile: no two lie on one line', () => {
    const hat = profilePart({ name: 'hat', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [20, 30, 60, 30, 20], turns: [90, -90, -90, 90] });
    if (!hat.ok) throw new Error(hat.failure.sentence);
    expect(strokes(flat(hat.value))).toBe(4);
  });

  it('is one for a row of tabs along an edge', () => {
    const row = { count: 4, width: 20, length: 15, turn: 90 };
    const comb = tabPlate({ name: 'comb', thickness: 1.5, insideRadius: 1.5, base: [200, 100], rows: [row, undefined, row, undefined] });
    if (!comb.ok) throw new Error(comb.failure.sentence);
    expect(comb.value.bends).toHaveLength(8);
    expect(strokes(flat(comb.value))).toBe(2);
  });

  it('keeps tabs on one line apart where they differ in direction, angle or radius', () => {
    const row = { count: 4, width: 20, length: 15, turn: 90 };
    const comb = tabPlate({ name: 'comb', thickness: 1.5, insideRadius: 1.5, base: [200, 100], rows: [row, undefined, undefined, undefined] });
    if (!comb.ok) throw new Error(comb.failure.sentence);
    const changed = comb.value.bends.map((bend, i) =>
      i === 0 ? { ...bend, direction: bend.direction === 'A' ? ('B' as const) : ('A' as const) } : i === 1 ? { ...bend, bendAngle: 60 } : i === 2 ? { ...bend, insideRadius: 3 } : bend,
    );
    // flat lengths as if all were alike, so that only the named difference parts them
    expect(strokes({ part: { ...comb.value, bends: changed }, allowances: changed.map(() => 3) })).toBe(4);
  });

  it('is one for each return of a tray: opposite arms share no line', () => {
    const arm = [{ length: 30, turn: 90 }, { length: 12, turn: 90 }];
    const tray = trayPart({ name: 'tray', thickness: 1.5, insideRadius: 1.5, base: [200, 150], arms: [arm, arm, arm, arm] });
    if (!tray.ok) throw new Error(tray.failure.sentence);
    expect(strokes(flat(tray.value))).toBe(8);
  });
});
