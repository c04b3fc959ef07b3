import type { SqliteFile } from './database.js';
import type { NewFit } from './store.js';

/** Keeps a fit as it now stands; the row changes until the fit has ended. One of whose parts was purged meanwhile is not kept. */
export function keepFit(db: SqliteFile, { id, partIds, summary, json, createdAt }: NewFit): void {
  db.write(() => {
    if (partIds.some((part) => db.get('select 1 from part_revisions where part_id = ?', [part]) === undefined)) return;
    db.run(`insert into fits (id, summary_json, fit_json, created_at) values (?, ?, ?, ?)
      on conflict (id) do update set summary_json = excluded.summary_json, fit_json = excluded.fit_json`, [id, summary, json, createdAt]);
    for (const part of partIds) db.run('insert or ignore into fit_parts (fit_id, part_id) values (?, ?)', [id, part]);
  });
}

export function fitJson(db: SqliteFile, id: string): string | undefined {
  const row = db.get('select fit_json from fits where id = ?', [id]);
  return row === undefined ? undefined : String(row['fit_json']);
}

/** Newest first. */
export function fitSummaries(db: SqliteFile, limit: number): readonly string[] {
  return db.all('select summary_json from fits order by created_at desc, rowid desc limit ?', [limit]).map((row) => String(row['summary_json']));
}
