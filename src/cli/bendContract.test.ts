import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// `./brakewright bend` as a user calls it, in a process of its own: the flags and keys of its contract.

const program = resolve('dist/cli/main.js');
/** What the shell calls: it sees to the compiled program first. */
const entry = resolve('brakewright');
let folder = '';
beforeAll(() => { folder = mkdtempSync(join(tmpdir(), 'brakewright-bend-')); });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [args.includes('6.3') ? entry : program, ...args], { cwd: folder }, (fault, out, err) => done({ code: fault === null ? 0 : typeof fault.code === 'number' ? fault.code : -1, out, err }));
  });
const bend = async (...args: readonly string[]): Promise<Record<string, number>> => {
  const { code, out, err } = await run('bend', ...args, '--json');
  // the shell's entry may say that it compiles first
  expect(err.replace('Compiling ...\n', '')).toBe('');
  expect(code).toBe(0);
  return JSON.parse(out) as Record<string, number>;
};

/** The contract's flags; figures of the run h63 of CHECKS 12. */
const tools = ['--thickness', '2', '--length', '1000', '--v', '16', '--v-convention', 'sharp', '--die-angle', '84', '--shoulder', '2', '--tip', '1'];
const swift = ['--curve', 'swift:620,0.18,0.0108', '--modulus', '210000', '--poisson', '0.3', '--friction', '0.1'];
const KEYS = [
  'depth', 'includedAngleUnderLoad', 'includedAngleReleased', 'bendAngleReleased', 'springback', 'insideRadius', 'peakForcePerLength',
  'forcePerLength', 'allowance', 'deduction', 'minFlange',
] as const;

describe.skipIf(!existsSync('dist/cli/main.js'))('the contract of `bend --json`', { timeout: 120_000 }, () => {
  it('--depth with --curve: every key a finite number in mm, N/mm, degrees; warnings a list', async () => {
    const answer = await bend(...tools, ...swift, '--depth', '6.3');
    for (const key of KEYS) expect(Number.isFinite(answer[key]), key).toBe(true);
    expect(Array.isArray(answer['warnings'])).toBe(true);
    // the finite elements' h63, within the issue's aim
    expect(Math.abs(answer['includedAngleUnderLoad']! - 90.63)).toBeLessThan(0.7);
    expect(Math.abs(answer['includedAngleReleased']! - 92.72)).toBeLessThan(0.7);
    expect(Math.abs(answer['peakForcePerLength']! / 130.1 - 1)).toBeLessThan(0.015);
    // what must hold between the keys by what they mean
    expect(answer['depth']).toBeCloseTo(6.3, 6);
    expect(answer['bendAngleReleased']! + answer['includedAngleReleased']!).toBeCloseTo(180, 9);
    expect(answer['includedAngleReleased']! - answer['includedAngleUnderLoad']!).toBeCloseTo(answer['springback']!, 9);
    // deduction = 2 (R + t) tan(A/2) - allowance up to 90 degrees (CHECKS 1.1)
    const setback = 2 * (answer['insideRadius']! + 2) * Math.tan((answer['bendAngleReleased']! * Math.PI) / 360);
    expect(answer['deduction']).toBeCloseTo(setback - answer['allowance']!, 9);
  });

  it('--angle there and --depth back, in both conventions of V, with a metal of the list', async () => {
    const there = await bend(...tools, '--metal', 'dc01', '--angle', '90');
    expect(there['bendAngleReleased']).toBeCloseTo(90, 6);
    const back = await bend(...tools, '--metal', 'dc01', '--depth', String(there['depth']));
    expect(back['bendAngleReleased']).toBeCloseTo(90, 4);
    // CHECKS 5: c = V/2 + rd tan(45 - die angle/4); 16 sharp is 17.7809 between tangent points
    const tangent = 16 + 2 * 2 * Math.tan(((45 - 84 / 4) * Math.PI) / 180);
    expect(there['vTangent']).toBeCloseTo(tangent, 9);
    const same = await bend(...tools, '--v', String(tangent), '--v-convention', 'tangent', '--metal', 'dc01', '--angle', '90');
    expect(same['depth']).toBeCloseTo(there['depth']!, 6);
    const other = await bend(...tools, '--v-convention', 'tangent', '--metal', 'dc01', '--angle', '90');
    expect(other['depth']!).toBeLessThan(there['depth']! - 0.3);
  });

  it.each([
    [[...tools, ...swift], /--angle and --depth/],
    [[...tools, ...swift, '--angle', '90', '--depth', '6'], /--angle and --depth/],
    [[...tools, '--angle', '90'], /--metal and --curve/],
    [[...tools, '--thickness', '-2', ...swift, '--angle', '90'], /--thickness -2/],
    [[...tools, '--v', 'wide', ...swift, '--angle', '90'], /--v wide/],
    [[...tools, '--v-convention', 'loose', ...swift, '--angle', '90'], /v-convention.*sharp, tangent/],
    [[...tools, ...swift, '--friction', '2', '--angle', '90'], /Friction.*2/],
    [[...tools, ...swift, '--poisson', '0.7', '--angle', '90'], /--poisson 0\.7/],
    [[...tools.slice(2), ...swift, '--angle', '90'], /--thickness and --gauge/],
    [[...tools.slice(0, 2), ...tools.slice(4), ...swift, '--angle', '90'], /--length/],
  ] as const)('bad input %#: code 2 and one sentence that names the thing', async (args, words) => {
    const { code, out, err } = await run('bend', ...args, '--json');
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toMatch(words);
  });

  it('an order that no air bend fulfils: code 3, the measure, no number in its place', async () => {
    const { code, out } = await run('bend', ...tools, ...swift, '--depth', '7', '--json');
    expect(code).toBe(3);
    const answer = JSON.parse(out) as { refused: string; reason: { sentence: string; by: number }; depth?: number };
    expect(answer.refused).toBe('bottoming');
    expect(answer.reason.sentence).toMatch(/7 mm is [\d.]+ mm past/);
    expect(answer.depth).toBeUndefined();
  });

  it('two measured strips: strength, depth zero, rows that `deductions` and `bend` take', async () => {
    const setup = [...tools.slice(0, 2), ...tools.slice(4), '--metal', 'dc01'];
    const plan = await run('strip', ...setup);
    expect(plan.out).toMatch(/Two strips of this sheet, each 100\.00 mm along the bend and 100\.00 mm across/);
    // the "shop's" sheet: DC01 12 % stronger (K by the same factor), worked out by its curve; legs from the deduction
    const { out } = await run('metals', '--json');
    const dc01 = (JSON.parse(out) as { metals: { id: string; curve: { k: number; n: number; e0: number } }[] }).metals.find((m) => m.id === 'dc01')!;
    const strong = ['--curve', `swift:${dc01.curve.k * 1.12},${dc01.curve.n},${dc01.curve.e0}`, '--modulus', '210000', '--poisson', '0.3'];
    const measured = await Promise.all(['90', '60'].map(async (angle) => {
      const real = await bend(...tools, ...strong, '--angle', angle);
      const legs = (100 + real['deduction']!) / 2;
      return `depth=${real['depth']},bend=${angle},leg1=${legs},leg2=${legs},cut=100,load=${180 - real['includedAngleUnderLoad']!},force=${real['peakForcePerLength']}`;
    }));
    const told = JSON.parse((await run('strip', ...setup, '--measured', ...measured, '--json')).out) as { fitted: { strength: number; strengthError: number }; rows: { deduction: number }[]; k: { k: number; min: number; max: number } };
    expect(Math.abs(told.fitted.strength - 1.12)).toBeLessThan(told.fitted.strengthError);
    expect(told.k.min).toBeLessThanOrEqual(told.k.k);
    expect(told.rows).toHaveLength(2);
    await run('strip', ...setup, '--measured', ...measured, '--csv', '-o', 'new.csv');
    await run('deductions', 'table.csv', '--add', 'new.csv', '-o', 'table.csv');
    await run('deductions', 'table.csv', '--add', 'new.csv', '-o', 'table.csv');
    // the same file once more says nothing new: its rows give way to themselves
    expect(readFileSync(join(folder, 'table.csv'), 'utf8').trim().split('\n')).toHaveLength(3);
    expect((await run('deductions', 'table.csv')).out).toMatch(/0\.4\d\d \(0\.4\d\d to 0\.4\d\d, 2 rows\)/);
    const own = await bend(...tools, '--metal', 'dc01', '--angle', '90', '--deductions', 'table.csv');
    expect(own['deduction']).toBeCloseTo(told.rows[0]!.deduction, 6);
    const wrong = await run('strip', ...setup, '--measured', 'depth=6,bent=90', '--json');
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain("'bent' is not one of");
  });

  it('a metal from a tensile test', async () => {
    const answer = await bend(...tools, '--metal', 'dc01', '--tensile', '200,290,21', '--angle', '90');
    const typical = await bend(...tools, '--metal', 'dc01', '--angle', '90');
    // 290 against the list's 335 MPa: force by strength, within 3 %; were the test not heard, 15 % off
    expect(Math.abs(answer['peakForcePerLength']! / typical['peakForcePerLength']! / (290 / 335) - 1)).toBeLessThan(0.03);
    expect((await run('bend', ...tools, '--metal', 'dc01', '--tensile', '345,340,21', '--angle', '90')).err).toContain('--tensile');
  });
});
