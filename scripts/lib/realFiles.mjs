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

/** The published part files that tests name, and which of them are not there. */
export const realFiles = () => {
  const wanted = new Set(
    ['src', 'test'].flatMap((folder) => testFiles(at(folder))).flatMap((path) => readFileSync(path, 'utf8').match(named) ?? []),
  );
  const missing = [...wanted].filter((name) => !existsSync(join(shared, name)));
  return { wanted: wanted.size, found: wanted.size - missing.length, missing };
};
