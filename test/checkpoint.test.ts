import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { codeOf, goesOnFrom, openCheckpoint } from '../bench/checkpoint.js';

const folder = mkdtempSync(join(tmpdir(), 'checkpoint-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('goes on from what the same code has done, and counts nothing of other code or of none', () => {
  const file = join(folder, 'out', 'run.jsonl');
  const first = openCheckpoint<{ seed: number }>(file, 'one');
  expect([first.done, first.others, goesOnFrom(first, 'parts', file)]).toEqual([[], 0, '']);
  first.add({ seed: 1 });
  first.add({ seed: 2 });
  writeFileSync(file, '{"seed":7}\n', { flag: 'a' });
  const again = openCheckpoint<{ seed: number }>(file, 'one');
  expect(again.done.map(({ seed }) => seed)).toEqual([1, 2]);
  expect(goesOnFrom(again, 'parts', 'run')).toBe('goes on after 2 parts of an earlier run; 1 lines of other code are not counted (run)');
  expect(openCheckpoint(file, 'other')).toMatchObject({ done: [], others: 3 });
});

it('code is named by what its files hold', () => {
  const code = join(folder, 'code');
  mkdirSync(join(code, 'deep'), { recursive: true });
  writeFileSync(join(code, 'deep', 'a.js'), 'one');
  const before = codeOf(code);
  writeFileSync(join(code, 'note.txt'), 'no code');
  expect(codeOf(code)).toBe(before);
  writeFileSync(join(code, 'deep', 'a.js'), 'two');
  expect(codeOf(code)).not.toBe(before);
});
