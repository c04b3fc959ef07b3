import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import type { Purge } from './records.js';

/** Removes all that was kept of a part, in one transaction, and leaves the record that it was done. */
export function purgePart(db: SqliteFile, partId: string, by: string): Purge | undefined {
  const at = new Date().toISOString();
  const purge = db.write(() => {
    const revisions = count(db, 'part_revisions', partId);
    if (revisions === 0) return undefined;
    const trials = count(db, 'trials', partId);
    const files = db.all('select distinct file_sha256 from part_revisions where part_id = ? and file_sha256 is not null', [partId]);
    const shared = files.filter((file) =>
      db.get('select 1 from part_revisions where file_sha256 = ? and part_id <> ?', [file['file_sha256']!, partId]) !== undefined);
    const removed = files.length - shared.length;

    db.run(`insert into purges (part_id, revisions, trials, files_removed, files_kept, at, by) values (?, ?, ?, ?, ?, ?, ?)`,
      [partId, revisions, trials, removed, shared.length, at, by]);
    const made = count(db, 'pieces', partId);
    db.run('delete from pieces where part_id = ?', [partId]);
    db.run('delete from cells where part_id = ?', [partId]);
    db.run('delete from fits where id in (select fit_id from fit_parts where part_id = ?)', [partId]);
    db.run('delete from defects where trial_id in (select id from trials where part_id = ?)', [partId]);
    db.run('delete from trials where part_id = ?', [partId]);
    db.run('delete from part_revisions where part_id = ?', [partId]);
    for (const file of files) {
      if (!shared.includes(file)) db.run('delete from files where sha256 = ?', [file['file_sha256']!]);
    }
    // A job's sentence may name the part.
    db.run('update jobs set why = null where part_id = ?', [partId]);
    addEvent(db, at, by, 'part purged', partId, { revisions, trials, pieces: made, filesRemoved: removed, filesKept: shared.length });
    return purgeOf(db.get('select * from purges where part_id = ?', [partId])!);
  });
  if (purge !== undefined) db.emptyLog();
  return purge;
}

export function purgeRecord(db: SqliteFile, partId: string): Purge | undefined {
  const row = db.get('select * from purges where part_id = ?', [partId]);
  return row === undefined ? undefined : purgeOf(row);
}

function count(db: SqliteFile, table: 'part_revisions' | 'trials' | 'pieces', partId: string): number {
  return Number(db.get(`select count(*) n from ${table} where part_id = ?`, [partId])!['n']);
}

function purgeOf(row: Row): Purge {
  return {
    partId: String(row['part_id']), revisions: Number(row['revisions']), trials: Number(row['trials']),
    filesRemoved: Number(row['files_removed']), filesKept: Number(row['files_kept']), at: String(row['at']), by: String(row['by']),
  };
}
