// npm start: set up, then serve the pages; one line says where. PORT, HOST and BRAKEWRIGHT_DATA change the defaults,
// and so do the options of `serve` after two dashes: npm start -- --port 4681.
import { ensureCompiled, ensurePages } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';

await ensureInstalled();
await ensureCompiled();
await ensurePages();

const { PORT: port, HOST: host } = process.env;
process.argv.splice(2, 0, 'serve', ...(port ? ['--port', port] : []), ...(host ? ['--host', host] : []));
await import('../dist/cli/main.js');
