import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import type { ShopKind, ShopRevision, StoredShopEntry } from './records.js';
import type { NewShopRevision } from './store.js';

const columns = 'kind, id, revision, name, demo, change, created_at, by';
const latest = 'r.revision = (select max(revision) from shop_revisions where kind = r.kind and id = r.id)';

/** The next revisions of these entries, all or none; undefined when the `after` of one is no longer its latest. */
export function addShopRevisions(db: SqliteFile, entries: readonly NewShopRevision[], by: string): readonly ShopRevision[] | undefined {
  const at = new Date().toISOString();
  const last = ({ kind, id }: NewShopRevision): number => Number(db.get('select max(revision) n from shop_revisions where kind = ? and id = ?', [kind, id])?.['n'] ?? 0);
  return db.write(() => {
    if (entries.some((entry) => last(entry) !== entry.after)) return undefined;
    return entries.map(({ kind, id, name, demo, data, change, after }) => {
      db.run(`insert into shop_revisions (${columns}, data_json) values (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
        [kind, id, after + 1, name, demo ? 1 : 0, change, at, by, data === null ? null : JSON.stringify(data)]);
      addEvent(db, at, by, data === null ? `${kind} taken off` : `${kind} kept`, id, { revision: after + 1 });
      return revisionOf(db.get(`select ${columns}, data_json from shop_revisions where kind = ? and id = ? and revision = ?`, [kind, id, after + 1])!);
    });
  });
}

/** The latest revision of every entry of a kind, in the order in which they first came; those taken off are left out. */
export function shopEntries(db: SqliteFile, kind: ShopKind): readonly StoredShopEntry[] {
  return db.all(
    `select r.* from shop_revisions r where r.kind = ? and ${latest} and r.data_json is not null
     order by (select min(rowid) from shop_revisions where kind = r.kind and id = r.id)`, [kind],
  ).map(entryOf);
}

/** The latest revision, or the one asked for; one that took the entry off has no data and is not found. */
export function shopEntry(db: SqliteFile, kind: ShopKind, id: string, revision?: number): StoredShopEntry | undefined {
  const row = revision === undefined
    ? db.get(`select r.* from shop_revisions r where r.kind = ? and r.id = ? and ${latest}`, [kind, id])
    : db.get('select * from shop_revisions where kind = ? and id = ? and revision = ?', [kind, id, revision]);
  return row === undefined || row['data_json'] === null ? undefined : entryOf(row);
}

export function shopRevisions(db: SqliteFile, kind: ShopKind, id: string): readonly ShopRevision[] {
  return db.all(`select ${columns}, data_json from shop_revisions where kind = ? and id = ? order by revision`, [kind, id]).map(revisionOf);
}

function revisionOf(row: Row): ShopRevision {
  return {
    kind: String(row['kind']) as ShopKind, id: String(row['id']), revision: Number(row['revision']), name: String(row['name']), demo: row['demo'] === 1,
    takenOff: row['data_json'] === null, change: String(row['change']), createdAt: String(row['created_at']), by: String(row['by']),
  };
}

function entryOf(row: Row): StoredShopEntry {
  return { ...revisionOf(row), data: JSON.parse(String(row['data_json'])) as unknown };
}
