import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root, stamps } from './paths.mjs';

const isTest = (name) => /\.test\.tsx?$/.test(name);

const filesUnder = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });

/**
 * A hash of the contents of files and folders (tests left out), so that a stamp holds whatever a checkout did to the
 * files' times. `salt` names anything else that the result depends on.
 */
export const fingerprint = (paths, salt = '') => {
  const hash = createHash('sha256').update(salt);
  const all = paths
    .filter((path) => existsSync(path))
    .flatMap((path) => (statSync(path).isDirectory() ? filesUnder(path) : [path]))
    .filter((path) => !isTest(path))
    .sort();
  for (const path of all) hash.update(relative(root, path)).update('\0').update(readFileSync(path)).update('\0');
  return hash.digest('hex');
};

const stampFile = (name) => join(stamps, `${name}.stamp`);

export const stamped = (name, value) => {
  try {
    return readFileSync(stampFile(name), 'utf8') === value;
  } catch {
    return false;
  }
};

export const stamp = (name, value) => {
  mkdirSync(stamps, { recursive: true });
  writeFileSync(stampFile(name), value);
};
