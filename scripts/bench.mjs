// npm run bench, npm run bench:full: compiles bench/ with src/ and runs bench/main.ts, or the one named first
// (npm run bench -- kill 20). Further words are passed on.
import { existsSync } from 'node:fs';
import { ensureCompiled } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { at } from './lib/paths.mjs';
import { tool } from './lib/run.mjs';
import { stop } from './lib/say.mjs';

const [first = '', ...others] = process.argv.slice(2);
const named = /^\w+$/.test(first) && existsSync(at('bench', `${first}.ts`));
const name = named ? first : 'main';

await ensureInstalled();
await ensureCompiled();
if (!existsSync(at('bench', `${name}.ts`))) stop(`There is no bench/${name}.ts.`, 2);
const { code, output } = await tool(at('node_modules', 'typescript', 'bin', 'tsc'), ['-p', 'tsconfig.bench.json'], { quiet: true });
if (code !== 0) stop(`${output}\nThe benchmarks do not compile.`);
process.exitCode = (await tool(at('dist', 'bench', 'bench', `${name}.js`), named ? others : process.argv.slice(2))).code;
