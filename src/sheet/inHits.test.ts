import { describe, expect, it } from 'vitest';
import { apply } from '../geometry/index.js';
import { fold } from './fold.js';
import { facetHeight, inHits } from './inHits.js';
import type { Part } from './part.js';
import { profilePart } from './profilePart.js';

const rolled = (insideRadius: number, turn: number): Part => {
  const made = profilePart({ name: 'wrap', thickness: 2, insideRadius, width: 100, flanges: [80, 90], turns: [turn], measure: 'flat' });
  if (!made.ok) throw new Error(made.failure.sentence);
  return { ...made.value, bends: made.value.bends.map((b) => ({ ...b, kind: 'rolled' as const })) };
};

const hits = (part: Part, count: number, corner: number): Part => {
  const made = inHits(part, 0, count, corner);
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};

describe('a bend of large radius in hits', () => {
  it.each([[90, 6], [-120, 8], [40, 2]])('%s degrees in %s: the far flange stands where the arc would have put it', (turn, count) => {
    const part = rolled(40, turn);
    const divided = hits(part, count, 1);
    expect(divided.bends.map((b) => b.id)).toEqual(Array.from({ length: count }, (_, k) => `b1.${k + 1}`));
    // any lengths of the arcs will do: a finished bend has the radius drawn, whatever flat length it took
    const whole = fold({ part, allowances: [61] }, part.bends.map((b) => b.bendAngle));
    const inPieces = fold({ part: divided, allowances: divided.bends.map(() => 0.7) }, divided.bends.map((b) => b.bendAngle));
    // the far flange's own frame begins on its tangent line; that of the hits begins half a facet before it
    const half = 39 * Math.tan((Math.abs(turn) / count / 2) * (Math.PI / 180));
    const there = (poses: typeof whole.poses, y: number, z: number): readonly number[] => apply(poses[1]!, [30, y, z]);
    for (const [y, z] of [[20, 1], [80, -1]] as const) {
      there(inPieces.poses, y, z).forEach((c, k) => expect(c).toBeCloseTo(there(whole.poses, y, z)[k]!, 6));
    }
    const ys = divided.plates[1]!.outline.map((v) => v.y);
    expect(Math.min(...ys)).toBeCloseTo(-half, 6);
    expect(Math.max(...divided.plates[0]!.outline.map((v) => v.y))).toBeCloseTo(80 + half, 6);
  });

  it('facets touch the arc in their middles, corners stand out by (R - r)(1/cos - 1)', () => {
    const [count, corner] = [5, 2];
    const part = rolled(30, 90);
    const divided = hits(part, count, corner);
    const { poses } = fold({ part: divided, allowances: divided.bends.map(() => 0.6) }, divided.bends.map((b) => b.bendAngle));
    // profile part: plate 0 ends at y = 80, the bend's centre lies there, 30 + 1 over the middle plane on the A side
    const width = 2 * (30 - corner) * Math.tan((9 * Math.PI) / 180);
    for (let k = 0; k < count - 1; k++) {
      const [, y, z] = apply(poses[2 + k]!, [50, width / 2, 1]);
      expect(Math.hypot(y - 80, z - 31)).toBeCloseTo(30, 6);
      // the facet's end, where the corner's own arc of radius r begins
      const [, b, c] = apply(poses[2 + k]!, [50, width, 1]);
      expect(Math.hypot(b - 80, c - 31)).toBeCloseTo(Math.hypot(30, width / 2), 6);
    }
    // its apex: the small arc's centre lies (R - r)/cos(9 deg) out, the metal r further
    expect(facetHeight(30, corner, 18)).toBeCloseTo((30 - 2) / Math.cos((9 * Math.PI) / 180) + 2 - 30, 9);
  });

  it('keeps a picked corner on the flange it was picked on, and refuses an arc with a hole in it', () => {
    const part: Part = { ...rolled(40, 90), dimensions: [{ id: 'd1', between: [{ kind: 'corner', plate: 0, bend: 0 }, { kind: 'corner', plate: 1, bend: 0 }] }] };
    expect(hits(part, 4, 1).dimensions![0]!.between).toEqual([{ kind: 'corner', plate: 0, bend: 0 }, { kind: 'corner', plate: 1, bend: 3 }]);
    const pierced: Part = { ...part, bends: part.bends.map((b) => ({ ...b, zone: [...b.zone, [{ x: 40, y: 0.4, bulge: 0 }, { x: 40, y: 0.6, bulge: 0 }, { x: 60, y: 0.5, bulge: 0 }]] })) };
    expect(inHits(pierced, 0, 4, 1)).toMatchObject({ ok: false, failure: { bends: ['b1'] } });
  });
});
