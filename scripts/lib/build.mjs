import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fingerprint, stamp, stamped } from './fingerprint.mjs';
import { pureRooms } from '../lint/rooms.js';
import { at } from './paths.mjs';
import { tool } from './run.mjs';
import { say, stop } from './say.mjs';

const tsc = at('node_modules', 'typescript', 'bin', 'tsc');
const vite = at('node_modules', 'vite', 'bin', 'vite.js');
const lock = at('package-lock.json');

/** Compiled files whose source is gone: tsc leaves them behind, and a worker or an import could still find them. */
const removeOrphans = (folder = at('dist')) => {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (path !== at('dist', 'web') && path !== at('dist', 'bench')) removeOrphans(path);
      continue;
    }
    const source = /^(.*)\.js(\.map)?$/.exec(relative(at('dist'), path))?.[1];
    if (source && !existsSync(at('src', `${source}.ts`)) && !existsSync(at('src', `${source}.tsx`))) rmSync(path, { force: true });
  }
};

/** Compiles src to dist where the sources changed since the last time. Stops with the compiler's words when it fails. */
export const ensureCompiled = async () => {
  const sources = fingerprint([at('src'), at('tsconfig.json'), at('tsconfig.build.json'), lock]);
  if (existsSync(at('dist', 'cli', 'main.js')) && stamped('compile', sources)) return;
  say('Compiling ...');
  const { code, output } = await tool(tsc, ['-p', 'tsconfig.build.json'], { quiet: true });
  if (code !== 0) stop(`${output}\nThe sources do not compile.`);
  removeOrphans();
  stamp('compile', sources);
};

/** The pages are built from their own room and the pure ones; of the server they know types only. */
const pageRooms = [...pureRooms, 'web'].map((room) => at('src', room));

/** Builds the pages to dist/web where their sources changed since the last time. */
export const ensurePages = async () => {
  if (!existsSync(at('src', 'web', 'index.html'))) return;
  const sources = fingerprint([...pageRooms, at('vite.config.ts'), at('tsconfig.json'), lock]);
  if (existsSync(at('dist', 'web', 'index.html')) && stamped('pages', sources)) return;
  say('Building the pages ...');
  const { code, output } = await tool(vite, ['build'], { quiet: true });
  if (code !== 0) stop(`${output}\nThe pages do not build.`);
  stamp('pages', sources);
};
