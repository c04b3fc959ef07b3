// npm run build: dist/ from src/, where it changed.
import { ensureCompiled, ensurePages } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';

await ensureInstalled();
await ensureCompiled();
await ensurePages();
