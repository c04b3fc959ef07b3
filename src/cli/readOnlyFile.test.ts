import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Fault } from './fault.js';
import { readOnlyFile } from './readParts.js';

it('does not pass over what is told of a flat where the file is none', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'flat-')), 'angle.step');
  writeFileSync(file, 'ISO-10303-21;');
  for (const [told, option] of [[{ thickness: '2' }, '--thickness'], [{ layer: ['Bending=bend'] }, '--layer'], [{ gap: '0.1' }, '--gap']] as const) {
    const asked = readOnlyFile(file, told);
    await expect(asked).rejects.toThrow(Fault);
    await expect(asked).rejects.toThrow(`${option} tells something of a flat as .dxf; angle.step is none and says it itself.`);
  }
});
