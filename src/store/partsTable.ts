import { createHash } from 'node:crypto';
import type { Part } from '../sheet/index.js';
import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import { newId } from './newId.js';
import type { PartRevision, RefusedRecord, StoredPart } from './records.js';
import type { Reading } from './store.js';

const columns = `r.part_id, r.revision, r.name, r.thickness, r.bends, r.file_name, r.file_sha256, r.change, r.created_at, r.by,
  p.demo, f.size from part_revisions r join parts p on p.id = r.part_id left join files f on f.sha256 = r.file_sha256`;
const latest = 'r.revision = (select max(revision) from part_revisions where part_id = r.part_id)';

interface NewRevision {
  readonly id: string;
  readonly revision: number;
  readonly part: Part;
  readonly fileName: string | null;
  readonly sha256: string | null;
  readonly refused: readonly RefusedRecord[];
  readonly change: string;
}

export function addReading(db: SqliteFile, reading: Reading, by: string): readonly PartRevision[] {
  const sha256 = createHash('sha256').update(reading.file.bytes).digest('hex');
  const at = new Date().toISOString();
  return db.write(() => {
    db.run('insert into files (sha256, size, bytes, created_at) values (?, ?, ?, ?) on conflict do nothing',
      [sha256, reading.file.bytes.length, reading.file.bytes, at]);
    return reading.parts.map((part) => {
      const id = addPartRow(db, newId('p'), false, at);
      insertRevision(db, at, by, {
        id, revision: 1, part, fileName: reading.file.name, sha256, refused: reading.refused, change: 'read from the file',
      });
      addEvent(db, at, by, 'part read', id, { revision: 1, sha256, size: reading.file.bytes.length });
      return latestOf(db, id)!;
    });
  });
}

export function addPart(db: SqliteFile, part: Part, by: string, demo?: { readonly id: string }): PartRevision {
  const at = new Date().toISOString();
  return db.write(() => {
    const id = addPartRow(db, demo?.id ?? newId('p'), demo !== undefined, at);
    const change = demo === undefined ? 'entered' : 'demonstration part';
    insertRevision(db, at, by, { id, revision: 1, part, fileName: null, sha256: null, refused: [], change });
    addEvent(db, at, by, 'part added', id, { revision: 1, demo: demo !== undefined });
    return latestOf(db, id)!;
  });
}

export function addRevision(db: SqliteFile, partId: string, part: Part, change: string, by: string, after?: number): PartRevision | undefined {
  const at = new Date().toISOString();
  return db.write(() => {
    const before = storedPart(db, partId);
    if (before === undefined || (after !== undefined && before.revision !== after)) return undefined;
    const revision = before.revision + 1;
    insertRevision(db, at, by, {
      id: partId, revision, part, change, refused: before.refused,
      fileName: before.source?.fileName ?? null, sha256: before.source?.sha256 ?? null,
    });
    addEvent(db, at, by, 'part revised', partId, { revision });
    return latestOf(db, partId);
  });
}

export function latestParts(db: SqliteFile): readonly PartRevision[] {
  return db.all(`select ${columns} where ${latest} order by p.created_at desc, p.rowid desc`).map(revisionOf);
}

export function revisions(db: SqliteFile, partId: string): readonly PartRevision[] {
  return db.all(`select ${columns} where r.part_id = ? order by r.revision`, [partId]).map(revisionOf);
}

export function storedPart(db: SqliteFile, partId: string, revision?: number): StoredPart | undefined {
  const which = revision === undefined ? latest : 'r.revision = ?';
  const row = db.get(`select r.part_json, r.refused_json, ${columns} where r.part_id = ? and ${which}`,
    revision === undefined ? [partId] : [partId, revision]);
  if (row === undefined) return undefined;
  return {
    ...revisionOf(row),
    part: JSON.parse(String(row['part_json'])) as Part,
    refused: JSON.parse(String(row['refused_json'])) as RefusedRecord[],
  };
}

export function originalFile(db: SqliteFile, partId: string): { readonly name: string; readonly bytes: Uint8Array } | undefined {
  const row = db.get(`select r.file_name, f.bytes from part_revisions r join files f on f.sha256 = r.file_sha256
    where r.part_id = ? order by r.revision limit 1`, [partId]);
  return row === undefined ? undefined : { name: String(row['file_name']), bytes: row['bytes'] as Uint8Array };
}

export function siblings(db: SqliteFile, partId: string): readonly string[] {
  return db.all(`select distinct part_id from part_revisions where part_id = ?1 or file_sha256 in
    (select file_sha256 from part_revisions where part_id = ?1) order by part_id`, [partId]).map((row) => String(row['part_id']));
}

function addPartRow(db: SqliteFile, id: string, demo: boolean, at: string): string {
  db.run('insert into parts (id, demo, created_at) values (?, ?, ?)', [id, demo ? 1 : 0, at]);
  return id;
}

function insertRevision(db: SqliteFile, at: string, by: string, r: NewRevision): void {
  db.run(`insert into part_revisions (part_id, revision, name, thickness, bends, file_name, file_sha256, part_json,
      refused_json, change, created_at, by) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  [r.id, r.revision, r.part.name, r.part.thickness, r.part.bends.length, r.fileName, r.sha256, JSON.stringify(r.part),
    JSON.stringify(r.refused), r.change, at, by]);
}

function latestOf(db: SqliteFile, partId: string): PartRevision | undefined {
  const row = db.get(`select ${columns} where r.part_id = ? and ${latest}`, [partId]);
  return row === undefined ? undefined : revisionOf(row);
}

function revisionOf(row: Row): PartRevision {
  return {
    id: String(row['part_id']), revision: Number(row['revision']), name: String(row['name']), demo: row['demo'] === 1,
    thickness: Number(row['thickness']), bends: Number(row['bends']),
    source: row['file_sha256'] === null ? null
      : { fileName: String(row['file_name']), sha256: String(row['file_sha256']), size: Number(row['size']) },
    change: String(row['change']), createdAt: String(row['created_at']), by: String(row['by']),
  };
}
