import { describe, expect, it } from 'vitest';
import { demoFloor, demoRack } from './demo.js';

describe('demo data', () => {
  it('holds five machines and a rack, all marked demo, all accepted by the parser', () => {
    expect(demoFloor().map((m) => m.id)).toEqual(['small-fast', 'general', 'long-fixed-r', 'deep-throat', 'worn']);
    expect(demoFloor().every((m) => m.demo)).toBe(true);
    const rack = demoRack();
    expect([...rack.punches, ...rack.dies].every((t) => t.demo && t.price !== undefined)).toBe(true);
  });
});
