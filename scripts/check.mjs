// npm run typecheck, npm run lint, npm run deadcode: one check by itself, its words printed as they come.
import { checks } from './lib/checks.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { stop } from './lib/say.mjs';

const wanted = process.argv.slice(2).join(' ');
const check = checks.find(({ name }) => name === wanted);
if (!check) stop(`check: '${wanted}' is none of ${checks.map(({ name }) => name).join(', ')}.`, 2);
await ensureInstalled();
process.exitCode = (await check.command({})).code;
