// npm run bench, npm run bench:full: compiles bench/ with src/ and runs it. Further words are passed on.
import { ensureCompiled } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { at } from './lib/paths.mjs';
import { tool } from './lib/run.mjs';
import { stop } from './lib/say.mjs';

await ensureInstalled();
await ensureCompiled();
const { code, output } = await tool(at('node_modules', 'typescript', 'bin', 'tsc'), ['-p', 'tsconfig.bench.json'], { quiet: true });
if (code !== 0) stop(`${output}\nThe benchmarks do not compile.`);
process.exitCode = (await tool(at('dist', 'bench', 'bench', 'main.js'), process.argv.slice(2))).code;
