import type { Row, SqliteFile } from './database.js';
import type { AuditEvent } from './records.js';

/** Called inside the transaction of the change that it records. */
export function addEvent(
  db: SqliteFile, at: string, by: string, what: string, subject: string, detail: AuditEvent['detail'] = {},
): void {
  db.run('insert into events (at, by, what, subject, detail_json) values (?, ?, ?, ?, ?)',
    [at, by, what, subject, JSON.stringify(detail)]);
}

export function events(db: SqliteFile, after: number, limit: number): readonly AuditEvent[] {
  return db.all('select * from events where number > ? order by number limit ?', [after, limit]).map(eventOf);
}

function eventOf(row: Row): AuditEvent {
  return {
    number: Number(row['number']), at: String(row['at']), by: String(row['by']), what: String(row['what']),
    subject: String(row['subject']), detail: JSON.parse(String(row['detail_json'])) as AuditEvent['detail'],
  };
}
