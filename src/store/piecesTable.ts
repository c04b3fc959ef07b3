import type { PieceEntry, PieceRecord } from '../fit/index.js';
import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import { newId } from './newId.js';
import type { KeptPiece } from './store.js';

/** Keeps an entry, or says why it cannot be one: its trial is gone, or what it would correct is of another trial, of another kind or corrected already. */
export function addPiece(db: SqliteFile, trialId: string, entry: PieceEntry, corrects: string | null, by: string): KeptPiece {
  const at = new Date().toISOString();
  return db.write((): KeptPiece => {
    const trial = db.get('select part_id from trials where id = ?', [trialId]);
    if (trial === undefined) return { ok: false, why: 'no trial' };
    if (corrects !== null) {
      const before = db.get('select trial_id, kind from pieces where id = ?', [corrects]);
      if (before === undefined || before['trial_id'] !== trialId || before['kind'] !== entry.kind) return { ok: false, why: 'no such entry' };
      if (db.get('select 1 from pieces where corrects = ?', [corrects]) !== undefined) return { ok: false, why: 'corrected already' };
    }
    const id = newId('m');
    db.run('insert into pieces (id, trial_id, part_id, kind, entry_json, corrects, created_at, by) values (?, ?, ?, ?, ?, ?, ?, ?)',
      [id, trialId, trial['part_id']!, entry.kind, JSON.stringify(entry), corrects, at, by]);
    addEvent(db, at, by, corrects === null ? `${entry.kind} recorded` : `${entry.kind} corrected`, id, { trial: trialId, ...(corrects === null ? {} : { corrects }) });
    return { ok: true, record: recordOf(db.get('select * from pieces where id = ?', [id])!) };
  });
}

export function pieces(db: SqliteFile, trialId: string): readonly PieceRecord[] {
  return db.all('select * from pieces where trial_id = ? order by rowid', [trialId]).map(recordOf);
}

function recordOf(row: Row): PieceRecord {
  return {
    id: String(row['id']), trialId: String(row['trial_id']), entry: JSON.parse(String(row['entry_json'])) as PieceEntry,
    corrects: row['corrects'] === null ? null : String(row['corrects']), createdAt: String(row['created_at']), by: String(row['by']),
  };
}
