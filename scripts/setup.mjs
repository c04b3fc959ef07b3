// npm run setup: all that start, test and bench need. Each part does nothing where it was done before.
import { ensureCompiled, ensurePages } from './lib/build.mjs';
import { ensureChromium } from './lib/chromium.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { say } from './lib/say.mjs';

await ensureInstalled();
await ensureCompiled();
await ensurePages();
const chromium = await ensureChromium();
say(`Ready.${chromium ? ` Pages are tested in ${chromium}.` : ''}`);
