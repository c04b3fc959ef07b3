// npm start: set up, then serve the pages; one line says where. PORT, HOST and BRAKEWRIGHT_DATA change the defaults.
import { ensureCompiled, ensurePages } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { at } from './lib/paths.mjs';

await ensureInstalled();
await ensureCompiled();
await ensurePages();

const { serveUntilStopped } = await import('../dist/cli/serve.js');
await serveUntilStopped({
  ...(process.env.PORT ? { port: Number(process.env.PORT) } : {}),
  ...(process.env.HOST ? { host: process.env.HOST } : {}),
  dataDir: process.env.BRAKEWRIGHT_DATA ?? at('data-store'),
});
