import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDamagedDxf } from '../../bench/damagedDxf.js';

/** s of computing: what a reading may take. The long form is npm run bench -- fuzzDxf. */
const SOON = 10;

describe('damaged and hostile drawings end in a part or a sentence', () => {
  it('seeds 1 to 60 without the slow traps: bytes flipped, cut, extreme numbers, countless points', () => {
    const ends = new Set<string>();
    let flat = 0;
    for (let seed = 1; seed <= 60; seed++) {
      // the traps that take the reader seconds are in the long form
      if (seed % 5 === 0 && ![15, 20, 25].includes(seed)) continue;
      const { end, sentence } = readDamagedDxf(seed, () => process.cpuUsage().user / 1000);
      // a file that was read has a blank, or a sentence says why it has none
      if (end !== 'read' || sentence !== '') expect(sentence, `seed ${seed}`).toMatch(/^[A-Z][^]{8,}\.$/);
      if (end === 'read' && sentence === '') flat++;
      ends.add(end);
    }
    // not all of them may die at the door
    expect(ends.has('read')).toBe(true);
    expect(flat).toBeGreaterThan(2);
    expect(ends.size).toBeGreaterThan(2);
  });

  it('once found: a bend line over a row of holes among thousands', () => {
    const { seed, end } = JSON.parse(readFileSync(new URL('../../test/repro/intake/dxf-seed-45.json', import.meta.url), 'utf8')) as { readonly seed: number; readonly end: string };
    const read = readDamagedDxf(seed, () => process.cpuUsage().user / 1000);
    expect(read.end).toBe(end);
    expect(read.seconds).toBeLessThan(SOON);
  });

  it('nothing takes longer than it may', () => {
    for (const seed of [15, 20, 25]) expect(readDamagedDxf(seed, () => process.cpuUsage().user / 1000).seconds, `seed ${seed}`).toBeLessThan(SOON);
  });
});
