import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { SqliteFile } from './database.js';
import { takeLock } from './lock.js';
import { migrations } from './migrations.js';
import { sqliteStore } from './sqliteStore.js';
import type { Store } from './store.js';

export type Opened =
  | { readonly ok: true; readonly store: Store }
  | { readonly ok: false; readonly code: 'in use' | 'newer' | 'damaged'; readonly sentence: string };

/** The database's file in the store's folder. */
export const databaseName = 'brakewright.db';

/**
 * Opens the store in a folder, making both where they are missing, and brings its schema up to date. Returns a refusal
 * with one sentence when another program has it open, a newer program wrote it, or the file is no database.
 */
export function openStore(dir: string): Opened {
  mkdirSync(dir, { recursive: true });
  const lock = takeLock(dir);
  if (!lock.ok) return { ok: false, code: 'in use', sentence: lock.sentence };
  let db: SqliteFile | undefined;
  try {
    db = new SqliteFile(join(dir, databaseName));
    const version = db.version();
    if (version > migrations.length) {
      db.close();
      lock.release();
      const sentence = `The store in ${dir} was written by a newer version of the program (schema ${version}, this one knows ${migrations.length}).`;
      return { ok: false, code: 'newer', sentence };
    }
    db.migrate();
    db.flushFolder();
  } catch (error) {
    try {
      db?.close();
    } catch {
      // The first error is the one to tell.
    }
    lock.release();
    return { ok: false, code: 'damaged', sentence: `The store in ${dir} cannot be opened: ${(error as Error).message}.` };
  }
  return { ok: true, store: sqliteStore(db, lock.release) };
}
