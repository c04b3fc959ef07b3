import { execFile } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { closeStepReader, readStep } from './reader.js';

// These run the compiled worker from dist/: build first.
const FILE = resolve('../shared/parts/system76__thelio/Main-Brace_V1.step');
const present = existsSync(FILE);
console.log(`real files: ${present ? 1 : 0} found, ${present ? 0 : 1} skipped`);

afterAll(closeStepReader);

const code = async (bytes: Uint8Array, options = {}): Promise<string[]> => {
  const { parts, refused } = await readStep(bytes, 'file.step', options);
  expect(parts).toEqual([]);
  for (const r of refused) expect(r.sentence).toContain('file.step');
  return refused.map((r) => `${r.index} ${r.code}`);
};
const text = (s: string): Uint8Array => new TextEncoder().encode(s);

describe('input that is no part', () => {
  it('is refused, whatever it is', async () => {
    expect(await code(new Uint8Array(0))).toEqual(['0 empty file']);
    expect(await code(text('hello'))).toEqual(['0 unreadable file']);
    expect(await code(Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 256))).toEqual(['0 unreadable file']);
    const header = "ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('','',(''),(''),'','','');FILE_SCHEMA(('AUTOMOTIVE_DESIGN'));ENDSEC;";
    expect(await code(text(`${header}DATA;ENDSEC;END-ISO-10303-21;`))).toHaveLength(1);
  });

  it.skipIf(!present)('is refused when it breaks off in the middle', async () => {
    const bytes = readFileSync(FILE);
    expect(await code(bytes.subarray(0, bytes.length / 2))).toEqual(['0 unreadable file']);
  });
});

describe.skipIf(!present)('a real file', () => {
  it('is read twice alike by the warm worker, and leaves the caller its bytes', async () => {
    const bytes = new Uint8Array(readFileSync(FILE));
    const length = bytes.length;
    const first = await readStep(bytes, 'brace.step');
    const second = await readStep(bytes, 'brace.step');
    expect(first.parts.map(({ index, part }) => [index, part.name, part.unit, part.bends.length])).toEqual([[0, 'brace', 'mm', 4]]);
    expect(second).toEqual(first);
    expect(bytes.length).toBe(length);
  });

  it('is given up at the time limit, and the next file is read all the same', async () => {
    expect(await code(readFileSync(FILE), { seconds: 0.001 })).toEqual(['0 time limit']);
    expect((await readStep(readFileSync(FILE), 'brace.step')).parts).toHaveLength(1);
  });

  it('is given up when cancelled, before and while reading', async () => {
    expect(await code(readFileSync(FILE), { signal: AbortSignal.abort() })).toEqual(['0 cancelled']);
    const control = new AbortController();
    const reading = code(readFileSync(FILE), { signal: control.signal });
    setTimeout(() => control.abort(), 5);
    expect(await reading).toEqual(['0 cancelled']);
  });

  it('does not keep the process alive', async () => {
    const script = `import { readStep } from './dist/intake/index.js'; import { readFileSync } from 'node:fs';
      const { parts } = await readStep(readFileSync(process.argv[1]), 'x.step'); console.log(parts.length);`;
    // ends by itself: execFile rejects when it has to be killed after 50 s
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', script, FILE], { timeout: 50_000 });
    expect(stdout.trim()).toBe('1');
  });
});
