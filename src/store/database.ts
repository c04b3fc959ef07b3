import { closeSync, fsyncSync, openSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import sqlite from 'node-sqlite3-wasm';
import { migrations } from './migrations.js';

export type Value = string | number | null | Uint8Array;
export type Row = Readonly<Record<string, Value>>;

/** WAL is folded into the main file when it has grown to about this many pages of 4 KiB. */
const checkpointPages = 1000;

/**
 * SQLite in one file. The WebAssembly build's own file lock is a folder beside the file; after kill -9 it stays, and in
 * rollback mode its presence also hides the journal that should undo the torn change (measured: docs/store.md). So the
 * database runs in WAL mode, held exclusively, under our own lock, and the left-over folder is removed before opening.
 */
export class SqliteFile {
  private readonly db: sqlite.Database;

  /** The caller holds the store's lock. */
  constructor(private readonly path: string) {
    rmSync(`${path}.lock`, { recursive: true, force: true });
    this.db = new sqlite.Database(path);
    for (const pragma of [
      'locking_mode = exclusive', 'journal_mode = wal', 'synchronous = full', 'foreign_keys = on', 'secure_delete = on',
      `wal_autocheckpoint = ${checkpointPages}`,
    ]) this.db.exec(`pragma ${pragma}`);
    const mode = this.get('pragma journal_mode')?.['journal_mode'];
    if (mode !== 'wal') throw new Error(`the database opened in journal mode ${String(mode)}, not wal`);
  }

  version(): number {
    return Number(this.get('pragma user_version')?.['user_version']);
  }

  /** Runs the migrations that are still missing, each whole or not at all, then makes the files' names durable. */
  migrate(): void {
    for (let version = this.version(); version < migrations.length; version++) {
      this.write(() => {
        this.db.exec(migrations[version]!);
        this.db.exec(`pragma user_version = ${version + 1}`);
      });
    }
  }

  /** The build does not flush the folder after creating a file in it; without that a power cut could lose the file. */
  flushFolder(): void {
    if (process.platform === 'win32') return; // Windows has no handle to a folder that could be flushed.
    const folder = openSync(dirname(this.path), 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  }

  /** All of `change` or nothing; when it returns, the change is on the disk. */
  write<T>(change: () => T): T {
    this.db.exec('begin immediate');
    try {
      const result = change();
      this.db.exec('commit');
      return result;
    } catch (error) {
      if (this.db.inTransaction) this.db.exec('rollback');
      throw error;
    }
  }

  run(sql: string, values: readonly Value[]): number {
    return this.db.run(sql, [...values]).changes;
  }

  get(sql: string, values: readonly Value[] = []): Row | undefined {
    return (this.db.get(sql, [...values]) as Row | null) ?? undefined;
  }

  all(sql: string, values: readonly Value[] = []): readonly Row[] {
    return this.db.all(sql, [...values]) as Row[];
  }

  /** Folds the log into the main file and empties it, so that nothing removed is left in the log. */
  emptyLog(): void {
    this.db.get('pragma wal_checkpoint(truncate)');
  }

  intact(): string {
    return this.all('pragma integrity_check').map((row) => String(Object.values(row)[0])).join('; ');
  }

  close(): void {
    this.db.close();
  }
}
