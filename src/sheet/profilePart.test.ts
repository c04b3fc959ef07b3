import { describe, expect, it } from 'vitest';
import { bounds } from '../geometry/index.js';
import { type Profile, profilePart } from './index.js';

const spec: Profile = { name: 'p', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] };

/** The flat of each plate between its tangent lines, mm. */
const flats = (profile: Profile): number[] => {
  const built = profilePart(profile);
  if (!built.ok) throw new Error(built.failure.sentence);
  return built.value.plates.map((plate) => bounds([plate.outline])[1][1]);
};

const all = (got: readonly number[], expected: readonly number[]): void => {
  expect(got).toHaveLength(expected.length);
  got.forEach((x, i) => expect(x).toBeCloseTo(expected[i]!, 9));
};

describe('profilePart', () => {
  it('takes outside lengths to the mould lines up to 90 degrees, to the outer tangent beyond', () => {
    all(flats(spec), [35, 55]); // 5 tan 45
    all(flats({ ...spec, turns: [-60] }), [40 - 5 * Math.tan(Math.PI / 6), 60 - 5 * Math.tan(Math.PI / 6)]);
    all(flats({ ...spec, turns: [135] }), [35, 55]); // outer radius 5, not 5 tan 67.5
    all(flats({ ...spec, turns: [{ turn: 180, insideRadius: 0.5 }] }), [37.5, 57.5]);
    all(flats({ ...spec, flanges: [20, 50, 20], turns: [90, -90] }), [15, 40, 15]);
  });

  it('takes inside lengths', () => {
    all(flats({ ...spec, measure: 'inside' }), [37, 57]); // 3 tan 45
  });

  it('names what cannot be', () => {
    expect(profilePart({ ...spec, flanges: [40] })).toMatchObject({ ok: false, failure: { code: 'wrong measure' } });
    expect(profilePart({ ...spec, width: 0 })).toMatchObject({ ok: false, failure: { code: 'wrong measure' } });
    expect(profilePart({ ...spec, turns: [190] })).toMatchObject({ ok: false, failure: { code: 'wrong measure' } });
    expect(profilePart({ ...spec, turns: [120], measure: 'inside' })).toMatchObject({ ok: false, failure: { code: 'wrong measure' } });
    // 8 between two bends that take 5 each
    expect(profilePart({ ...spec, flanges: [20, 8, 20], turns: [90, 90] })).toMatchObject({
      ok: false,
      failure: { code: 'flange too short', plates: [1] },
    });
  });

  it('gives each bend a line in both plates that runs the same way', () => {
    const built = profilePart({ ...spec, flanges: [20, 50, 20], turns: [90, -90] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const [b1, b2] = built.value.bends;
    expect(b1!.sides).toEqual([
      { plate: 0, line: { from: [0, 15], to: [100, 15] } },
      { plate: 1, line: { from: [0, 0], to: [100, 0] } },
    ]);
    expect([b1!.direction, b2!.direction, b1!.kind]).toEqual(['A', 'B', 'bend']);
  });
});
