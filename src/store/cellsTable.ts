import type { SqliteFile } from './database.js';
import type { KeptFitCell } from './store.js';

/** Keeps a cell by its key; the first one stays. */
export function addCell(db: SqliteFile, key: string, { partId, trialId, json }: KeptFitCell): void {
  db.write(() => {
    // a part purged meanwhile has no trial any more, and its cell is not kept
    if (db.get('select 1 from trials where id = ? and part_id = ?', [trialId, partId]) === undefined) return;
    db.run('insert or ignore into cells (key, part_id, trial_id, cell_json, created_at) values (?, ?, ?, ?, ?)', [key, partId, trialId, json, new Date().toISOString()]);
  });
}

export function cell(db: SqliteFile, key: string): KeptFitCell | undefined {
  const row = db.get('select part_id, trial_id, cell_json from cells where key = ?', [key]);
  return row === undefined ? undefined : { partId: String(row['part_id']), trialId: String(row['trial_id']), json: String(row['cell_json']) };
}
