import { describe, expect, test } from 'vitest';
import { askedServer } from '../../test/askedServer.js';

const { post } = askedServer('bend');

describe('one bend', () => {
  test('pairs ranked, the best worked out with its curve; another by name; a fault in one sentence', async () => {
    const asked = { metalId: 'dc01', thickness: 2, length: 1000, bendAngle: 90 };
    const { status, body } = await post('/api/bend', asked);
    expect(status).toBe(200);
    const { ranked, words, chosen } = body as { ranked: { suits: boolean; die: string; punch: string }[]; words: string[]; chosen: { force: number; curve: { points: { depth: number }[] }; choice: { v: number; bend: { peakForcePerLength: number } } } };
    expect(ranked[0]!.suits).toBe(true);
    // the trade's 8 t for 2 mm
    expect(chosen.choice.v).toBe(16);
    expect(words[0]).toContain('V 16');
    expect(chosen.force).toBeCloseTo(1000 * chosen.choice.bend.peakForcePerLength, 6);
    expect(chosen.curve.points.length).toBeGreaterThan(20);
    // stock as bought: EN 10131 for 2 mm up to 1500 wide is 0.11 mm either way (CHECKS 9), DC01 270 to 410 MPa (CHECKS 7)
    const { range, strip } = chosen as unknown as { range: { words: string; bendAngleReleased: { min: number; max: number } }; strip: { along: number } };
    expect(range.words).toContain('-0.11 to +0.11 mm');
    expect(range.bendAngleReleased.min).toBeLessThan(90);
    expect(range.bendAngleReleased.max).toBeGreaterThan(90);
    expect(strip.along).toBe(100);
    const other = ranked.find((c) => c.die !== ranked[0]!.die)!;
    expect((await post('/api/bend', { ...asked, punchId: other.punch, dieId: other.die })).body).toMatchObject({ chosen: { choice: { die: other.die } } });
    expect((await post('/api/bend', { ...asked, bendAngle: 200 })).status).toBe(400);
    expect((await post('/api/bend', { ...asked, metalId: 'x' })).status).toBe(404);
  });
});
