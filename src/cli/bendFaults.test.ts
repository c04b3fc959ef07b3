import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bendCommand } from './bend.js';

let folder = '';
beforeEach(() => { folder = mkdtempSync(join(tmpdir(), 'bend-faults-')); });
afterEach(() => {
  rmSync(folder, { recursive: true });
  process.exitCode = 0;
});

/** A bend that is answered as it stands. */
const good = { thickness: '2', length: '1000', v: '16', 'die-angle': '84', shoulder: '2', tip: '1', metal: 'dc01', angle: '90' };
type Typed = Readonly<Partial<Record<keyof typeof good | 'depth' | 'gauge' | 'friction' | 'v-convention' | 'curve', string | null>>>;

/** The one sentence that a bend is refused with. */
const refusal = async (typed: Typed): Promise<string> => {
  const out = join(folder, 'out.json');
  const args = Object.entries({ ...good, ...typed }).flatMap(([name, value]) => (value === null ? [] : [`--${name}=${value}`]));
  try {
    await bendCommand().exitOverride().configureOutput({ writeErr: () => undefined }).parseAsync([...args, '--json', '-o', out], { from: 'user' });
  } catch (fault) {
    return (fault as Error).message;
  }
  const { refused, warnings } = JSON.parse(readFileSync(out, 'utf8')) as { readonly refused?: string; readonly warnings: readonly string[] };
  return refused === undefined ? 'answered' : warnings.join('\n');
};

describe('what cannot be bent is refused in one sentence that names the thing and the measure', () => {
  it.each<readonly [Typed, readonly string[]]>([
    [{ thickness: '0' }, ['--thickness 0', 'mm', '0.01 to 100']],
    [{ thickness: '-2' }, ['--thickness -2', '0.01 to 100']],
    [{ thickness: 'NaN' }, ['--thickness NaN', '0.01 to 100']],
    [{ thickness: '2mm' }, ['--thickness 2mm', 'without its unit']],
    [{ thickness: '2,5' }, ['--thickness 2,5', 'decimal point']],
    [{ thickness: '500' }, ['--thickness 500', '0.01 to 100']],
    [{ thickness: '0.01' }, ['V 16 (sharp) is 1600 times the thickness of 0.01 mm', 'springs back']],
    [{ thickness: null }, ['--thickness and --gauge: give one of the two']],
    [{ thickness: null, gauge: '99' }, ['--gauge 99', 'manufacturers standard', '3, 4, 5']],
    [{ length: '-5' }, ['--length -5', 'mm', '0.1 to 100000']],
    [{ length: '1e12' }, ['--length 1e12', '0.1 to 100000']],
    // narrower than the sheet is thick, and just too narrow
    [{ v: '1.5' }, ['V 1.5 (sharp', 'under 4 times the thickness of 2 mm']],
    [{ v: '6' }, ['V 6 (sharp', 'under 4 times the thickness of 2 mm']],
    [{ v: '1e9' }, ['--v 1e9', '0.01 to 3000']],
    [{ tip: '20' }, ['tip of 20 mm is too big for V 16']],
    [{ tip: '0' }, ['--tip 0', '0.01 to 3000']],
    [{ shoulder: '50' }, ["shoulders' radius of 50 mm is too big for V 16"]],
    // a die's wall flatter than the bend; and flatter than nothing
    [{ 'die-angle': '95' }, ['bend angle of 90 degrees', 'die of 95 degrees included', 'bottoming']],
    [{ 'die-angle': '200' }, ['--die-angle 200', '1 to 179']],
    [{ angle: '200' }, ['--angle 200', 'degrees', '1 to 180']],
    [{ angle: '180' }, ['bend angle of 180 degrees', 'die of 84 degrees', 'bottoming']],
    [{ angle: null, depth: '20' }, ['depth of 20 mm', 'die of 84 degrees', 'bottoming']],
    [{ angle: null, depth: '-1' }, ['--depth -1', 'mm', '0.001 to 3000']],
    [{ depth: '5' }, ['--angle and --depth: give one of the two']],
    [{ metal: 'unobtainium' }, ['--metal unobtainium: no such metal', 'dc01']],
    [{ curve: 'swift:620,0.18,0.0108' }, ['--metal and --curve: give one of the two']],
    [{ friction: '2' }, ['Friction', '0 and 1', '2']],
    [{ 'v-convention': 'inner' }, ['inner', 'sharp, tangent']],
  ])('%j', async (typed, says) => {
    const sentence = await refusal(typed);
    for (const words of says) expect(sentence).toContain(words);
    expect(sentence).toMatch(/^[^\n]*\.$/);
  });

  it('the bend without a fault is answered', async () => {
    expect(await refusal({})).toBe('answered');
  });
});
