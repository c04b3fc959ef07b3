import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

export const at = (...parts) => join(root, ...parts);

/** What set-up remembers. It lies in node_modules so that `npm ci` forgets it together with what it speaks of. */
export const stamps = at('node_modules', '.brakewright');
