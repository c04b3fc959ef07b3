import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { at } from './paths.mjs';

/** Parts published by others, beside the project; some tests read them. */
const shared = at('..', 'shared', 'parts');
const named = /[\w-]+__[\w-]+\/[^'"`\n]+?\.(?:step|stp|dxf)\b/gi;

const testFiles = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return testFiles(path);
    return entry.name.endsWith('.test.ts') ? [path] : [];
  });

/** The files that the parts' own list names. */
const listed = () => {
  const list = join(shared, 'MANIFEST.tsv');
  if (!existsSync(list)) return null;
  return readFileSync(list, 'utf8').trim().split('\n').slice(1).map((line) => line.split('\t')[0]);
};

/** The published part files that their list or a test names, and which of them are not there. */
export const realFiles = () => {
  const inTests = ['src', 'test'].flatMap((folder) => testFiles(at(folder))).flatMap((path) => readFileSync(path, 'utf8').match(named) ?? []);
  const list = listed();
  const wanted = new Set([...(list ?? []), ...inTests]);
  const missing = [...wanted].filter((name) => !existsSync(join(shared, name)));
  return { wanted: wanted.size, found: wanted.size - missing.length, missing, list: list !== null };
};
