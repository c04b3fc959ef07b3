import type { Trial } from '../trial/index.js';
import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import { newId } from './newId.js';
import type { StoredTrial, TrialAsked, TrialRecord, TrialSummary } from './records.js';
import type { NewTrial } from './store.js';

const columns = `id, part_id, part_revision, part_name, machine_id, machine_name, metal_id, metal_name, quantity, verdict,
  summary_json, created_at, by, machine_revision, condition_revision, rack_id, rack_revision, deductions_revision, metal_revision, whose, fitted_option, asked_json`;

export function addTrial(db: SqliteFile, { partId, partRevision, metalId, trial, madeWith, column, asked, summary, defect }: NewTrial, by: string): TrialRecord | undefined {
  const at = new Date().toISOString();
  return db.write(() => {
    const part = db.get('select name from part_revisions where part_id = ? and revision = ?', [partId, partRevision]);
    if (part === undefined) return undefined;
    const id = newId('t');
    db.run(`insert into trials (${columns}, trial_json) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      [id, partId, partRevision, String(part['name']), trial.machine.id, trial.machine.name, metalId, trial.metal.name, trial.quantity,
        trial.verdict, JSON.stringify(summary), at, by, madeWith?.machineRevision ?? null, madeWith?.conditionRevision ?? null, madeWith?.rackId ?? null,
        madeWith?.rackRevision ?? null, madeWith?.deductionsRevision ?? null, madeWith?.metalRevision ?? null, column.whose, column.option, JSON.stringify(asked), JSON.stringify(trial)]);
    if (defect !== undefined) db.run('insert into defects (trial_id, defect_json) values (?, ?)', [id, defect]);
    addEvent(db, at, by, 'trial kept', id, {
      part: partId, revision: partRevision, machine: trial.machine.id, verdict: trial.verdict, defect: defect !== undefined,
    });
    return trialRecord(db, id);
  });
}

export function trials(db: SqliteFile, partId?: string): readonly TrialRecord[] {
  const where = partId === undefined ? '' : 'where part_id = ?';
  return db.all(`select ${columns} from trials ${where} order by created_at desc, rowid desc`, partId === undefined ? [] : [partId])
    .map(recordOf);
}

export function trialRecord(db: SqliteFile, id: string): TrialRecord | undefined {
  const row = db.get(`select ${columns} from trials where id = ?`, [id]);
  return row === undefined ? undefined : recordOf(row);
}

export function storedTrial(db: SqliteFile, id: string): StoredTrial | undefined {
  const row = db.get(`select ${columns}, trial_json from trials where id = ?`, [id]);
  return row === undefined ? undefined : { ...recordOf(row), trial: JSON.parse(String(row['trial_json'])) as Trial };
}

export function defect(db: SqliteFile, trialId: string): string | undefined {
  const row = db.get('select defect_json from defects where trial_id = ?', [trialId]);
  return row === undefined ? undefined : String(row['defect_json']);
}

function recordOf(row: Row): TrialRecord {
  const number = (name: string): number | null => (row[name] === null ? null : Number(row[name]));
  return {
    machineRevision: number('machine_revision'), conditionRevision: number('condition_revision'),
    rackId: row['rack_id'] === null ? null : String(row['rack_id']), rackRevision: number('rack_revision'), deductionsRevision: number('deductions_revision'),
    metalRevision: number('metal_revision'),
    whose: row['whose'] as TrialRecord['whose'], option: row['fitted_option'] as string | null,
    asked: row['asked_json'] === null ? null : JSON.parse(String(row['asked_json'])) as TrialAsked,
    id: String(row['id']), partId: String(row['part_id']), partRevision: Number(row['part_revision']), partName: String(row['part_name']),
    machineId: String(row['machine_id']), machineName: String(row['machine_name']),
    metalId: String(row['metal_id']), metalName: String(row['metal_name']), quantity: Number(row['quantity']),
    verdict: String(row['verdict']) as Trial['verdict'], summary: JSON.parse(String(row['summary_json'])) as TrialSummary,
    createdAt: String(row['created_at']), by: String(row['by']),
  };
}
