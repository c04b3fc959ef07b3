import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// The compiled program as a user runs it.
const program = resolve('dist/cli/main.js');

let folder = '';
const json = (name: string, data: unknown): void => writeFileSync(join(folder, name), JSON.stringify(data));
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'brakewright-own-metal-'));
  json('angle.json', { profile: { name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] } });
  json('soft.json', { name: 'Coil 17', like: 'dc01', test: { yield: 170, tensile: 290, uniformElongation: 23 } });
  json('strong.json', { name: 'Coil 18', like: 'dc01', test: { yield: 340, tensile: 580, uniformElongation: 23 } });
  // as the store keeps it, in the revision that the API shows
  json('kept.json', { kind: 'metal', revision: 2, data: { id: 'own-coil-17', name: 'Coil 17', like: 'dc01', by: 'tensile test', test: { yield: 170, tensile: 290, uniformElongation: 23 } } });
  json('wrong.json', { name: 'Coil 19', test: { yield: 170 } });
  json('unlike.json', { name: 'Coil 20', like: 'cheese', test: { yield: 170, tensile: 290, uniformElongation: 23 } });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [program, ...args], { maxBuffer: 1e8, cwd: folder }, (fault, out, err) => {
      done({ code: fault === null ? 0 : typeof fault.code === 'number' ? fault.code : -1, out, err });
    });
  });
const said = async (...args: readonly string[]): Promise<never> => {
  const { code, out, err } = await run(...args, '--json');
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out) as never;
};

describe('--metal FILE.json: a metal of the shop\'s own', { timeout: 240_000 }, () => {
  const tools = ['--thickness', '2', '--length', '1000', '--v', '16', '--die-angle', '84', '--shoulder', '2', '--tip', '1', '--angle', '90'];

  it('is to `bend` what its tensile test typed is, as it is asked for and as it is kept', async () => {
    const figures = ({ depth, springback, peakForcePerLength }: Readonly<Record<string, number>>) => ({ depth, springback, peakForcePerLength });
    const typed: Record<string, number> = await said('bend', ...tools, '--metal', 'dc01', '--tensile', '170,290,23');
    for (const file of ['soft.json', 'kept.json']) expect(figures(await said('bend', ...tools, '--metal', file))).toEqual(figures(typed));
    // yield and strength doubled at the same elongation double every stress of Swift's curve; the elastic part, and so the way, is a little longer
    const strong: Record<string, number> = await said('bend', ...tools, '--metal', 'strong.json');
    expect(strong['peakForcePerLength']! / typed['peakForcePerLength']!).toBeGreaterThan(1.95);
    expect(strong['peakForcePerLength']! / typed['peakForcePerLength']!).toBeLessThan(2.05);
  });

  it('is taken by trial and dayplan', async () => {
    interface Told { readonly metal: { readonly id: string; readonly name: string }; readonly steps: readonly [{ readonly force: number }] }
    const [strong, soft] = [await said('trial', 'angle.json', '--machine', 'general', '--metal', 'strong.json'), await said('trial', 'angle.json', '--machine', 'general', '--metal', 'soft.json')] as readonly [Told, Told];
    expect([strong.metal, soft.metal]).toMatchObject([{ id: 'own-coil-18', name: 'Coil 18' }, { id: 'own-coil-17', name: 'Coil 17' }]);
    expect(strong.steps[0].force / soft.steps[0].force).toBeGreaterThan(1.9);
    expect((await run('dayplan', 'angle.json', '--machine', 'general', '--metal', 'soft.json', '--json')).out).toContain('Coil 17');
  });

  it('is taken by report and fit, whose board comes out as a table too', async () => {
    const asked = ['angle.json', '--machines', 'general', '--no-options', '--seconds', '10', '--metal', 'soft.json'];
    const report: { readonly metal: { readonly name: string } } = await said('report', ...asked);
    expect(report.metal.name).toBe('Coil 17');
    const { code, out } = await run('fit', ...asked, '--csv');
    const [head, row, ...more] = out.trimEnd().split('\n');
    expect([code, head?.startsWith('part,"thickness, mm",bends,machine,'), row?.startsWith('angle,1.5,1,'), row?.includes(',ours,makes,'), more]).toEqual([0, true, true, true, []]);
  });

  it('what is wrong with the file is said in one sentence', async () => {
    for (const [file, says] of [['wrong.json', /wrong\.json: .*name, like .* and test/], ['unlike.json', /like 'cheese', which is no metal/], ['none.json', /none\.json: there is no such file/]] as const) {
      const { code, out, err } = await run('trial', 'angle.json', '--machine', 'general', '--metal', file);
      expect(err).toMatch(says);
      expect([code, out, err.trimEnd().split('\n').length]).toEqual([2, '', 1]);
    }
  });
});
