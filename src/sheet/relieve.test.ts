import { describe, expect, it } from 'vitest';
import { profilePart } from './profilePart.js';
import { relieve } from './relieve.js';

const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;
const lengthOf = ({ from, to }: { readonly from: readonly [number, number]; readonly to: readonly [number, number] }): number => Math.hypot(to[0] - from[0], to[1] - from[1]);
const area = (plate: number, of = part): number => {
  const { outline } = of.plates[plate]!;
  return outline.reduce((sum, v, i) => sum + (v.x * outline[(i + 1) % outline.length]!.y - outline[(i + 1) % outline.length]!.x * v.y) / 2, 0);
};

describe('a relief at both ends of a flange', () => {
  it('takes 4 mm off each end of the flange and of its bend, and leaves the other plate', () => {
    const after = relieve(part, 1, 4)!;
    // 100 long before, 92 after
    expect(lengthOf(after.bends[0]!.sides[0].line)).toBeCloseTo(92, 9);
    expect(area(1, after)).toBeCloseTo(area(1) * 0.92, 6);
    expect(area(0, after)).toBe(area(0));
  });

  it('is none where nothing would be left, and none of a plate that more than one bend holds', () => {
    expect(relieve(part, 1, 50)).toBeNull();
    const channel = profilePart({ name: 'channel', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60, 40], turns: [90, 90] });
    if (!channel.ok) throw new Error(channel.failure.sentence);
    expect(relieve(channel.value, 1, 4)).toBeNull();
  });
});
