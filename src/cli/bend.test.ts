import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bendCommand } from './bend.js';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bend-'));
  process.exitCode = 0;
});
afterEach(() => {
  rmSync(folder, { recursive: true });
  process.exitCode = 0;
});

const run = async (...args: readonly string[]): Promise<string> => {
  const file = join(folder, 'out');
  await bendCommand().exitOverride().configureOutput({ writeErr: () => undefined }).parseAsync([...args, '-o', file], { from: 'user' });
  return readFileSync(file, 'utf8');
};

/** The run h63 of CHECKS 12. */
const h63 = [
  '--thickness', '2', '--length', '1000', '--v', '16', '--die-angle', '84', '--shoulder', '2', '--tip', '1', '--curve', 'swift:620,0.18,0.0108',
  '--modulus', '210000', '--poisson', '0.3',
];

describe('brakewright bend', () => {
  it('answers the contract as JSON: run h63 by its depth', async () => {
    const answer = JSON.parse(await run(...h63, '--friction', '0.1', '--depth', '6.3', '--json')) as Record<string, unknown>;
    for (const key of [
      'depth', 'includedAngleUnderLoad', 'includedAngleReleased', 'bendAngleReleased', 'springback', 'insideRadius', 'peakForcePerLength',
      'forcePerLength', 'allowance', 'deduction', 'minFlange',
    ]) expect(answer[key], key).toBeTypeOf('number');
    expect(answer['warnings']).toEqual([]);
    expect(answer['depth']).toBeCloseTo(6.3, 6);
    expect(Math.abs((answer['includedAngleUnderLoad'] as number) - 90.63)).toBeLessThan(0.7);
    expect(answer['peakForce']).toBeCloseTo(1000 * (answer['peakForcePerLength'] as number), 6);
  });
  it('goes from the angle to the depth, in both conventions of V', async () => {
    const sharp = JSON.parse(await run(...h63, '--angle', '90', '--json')) as Record<string, number>;
    expect(sharp['bendAngleReleased']).toBeCloseTo(90, 6);
    const tangent = JSON.parse(await run(...h63, '--v', String(sharp['vTangent']), '--v-convention', 'tangent', '--angle', '90', '--json')) as Record<string, number>;
    expect(tangent['depth']).toBeCloseTo(sharp['depth']!, 6);
  });
  it('says bottoming, not a number (run f70)', async () => {
    const answer = JSON.parse(await run(...h63, '--depth', '7', '--json')) as Record<string, unknown>;
    expect(answer['refused']).toBe('bottoming');
    expect(answer['depth']).toBeUndefined();
    expect(process.exitCode).toBe(3);
  });
  it.each(['180', '100', '96.5'])('names bottoming for a bend angle of %s: a hem, past the die, and past it before springback', async (angle) => {
    // the die of 84 degrees included bends 96 in air; what springs back comes off that
    const answer = JSON.parse(await run(...h63, '--angle', angle, '--json')) as Record<string, unknown>;
    expect(answer['refused']).toBe('bottoming');
    expect((answer['warnings'] as string[])[0]).toContain('that is bottoming');
    expect(process.exitCode).toBe(3);
  });
  it('tells a person which angle is which, the rules by their sources, and the stock at the ends of its range', async () => {
    const words = await run(...h63.slice(0, 12), '--metal', 'dc01', '--angle', '90', '--range');
    expect(words).toContain('bend angle under load / released');
    expect(words).toContain('included angle under load / released');
    expect(words).toContain('DIN 6935');
    expect(words).toContain('Stock at the ends of its range');
    expect(words).not.toMatch(/\bsafe\b|guarantee/i);
  });
  it.each([
    [['--metal', 'unobtainium', '--angle', '90'], 'no such metal'],
    [['--metal', 'dc01'], '--angle and --depth'],
    [['--curve', 'swift:620', '--modulus', '210000', '--poisson', '0.3', '--angle', '90'], 'swift:K,n,e0'],
    [['--curve', 'swift:620,0.18,0.01', '--angle', '90'], '--modulus'],
    [['--metal', 'dc01', '--angle', '200'], 'bend angle'],
  ])('refuses %j with a sentence', async (args, words) => {
    await expect(run(...h63.slice(0, 12), ...args)).rejects.toThrow(words);
  });
});
