import type { Row, SqliteFile } from './database.js';
import { addEvent } from './eventsTable.js';
import { newId } from './newId.js';
import type { JobRecord, JobState } from './records.js';
import type { JobEnd, NewJob } from './store.js';

/** Jobs are the one kind of row that changes: a job is how a trial came about, the trial is what is kept. */
export function addJobs(db: SqliteFile, jobs: readonly NewJob[], by: string): readonly JobRecord[] {
  const at = new Date().toISOString();
  return db.write(() => jobs.map((job) => {
    const id = newId('j');
    db.run(`insert into jobs (id, part_id, part_revision, machine_id, metal_id, quantity, state, created_at, by)
      values (?, ?, ?, ?, ?, ?, 'queued', ?, ?)`,
    [id, job.partId, job.partRevision, job.machineId, job.metalId, job.quantity, at, by]);
    addEvent(db, at, by, 'job asked', id, { part: job.partId, revision: job.partRevision, machine: job.machineId });
    return jobById(db, id)!;
  }));
}

export function jobStarted(db: SqliteFile, id: string): void {
  db.write(() => db.run(`update jobs set state = 'running' where id = ? and state = 'queued'`, [id]));
}

export function jobEnded(db: SqliteFile, id: string, end: JobEnd): void {
  const at = new Date().toISOString();
  db.write(() => {
    const changed = db.run(`update jobs set state = ?, why = ?, trial_id = ?, ended_at = ? where id = ? and ended_at is null`,
      [end.state, end.why ?? null, end.trialId ?? null, at, id]);
    if (changed > 0) addEvent(db, at, 'program', `job ${end.state}`, id);
  });
}

export function stopLeftoverJobs(db: SqliteFile, why: string): number {
  const at = new Date().toISOString();
  return db.write(() => {
    const left = db.all(`select id from jobs where state in ('queued', 'running')`);
    db.run(`update jobs set state = 'stopped', why = ?, ended_at = ? where state in ('queued', 'running')`, [why, at]);
    for (const row of left) addEvent(db, at, 'program', 'job stopped', String(row['id']), { restart: true });
    return left.length;
  });
}

export function jobById(db: SqliteFile, id: string): JobRecord | undefined {
  const row = db.get('select * from jobs where id = ?', [id]);
  return row === undefined ? undefined : jobOf(row);
}

export function jobs(db: SqliteFile, limit: number): readonly JobRecord[] {
  return db.all('select * from jobs order by created_at desc, rowid desc limit ?', [limit]).map(jobOf);
}

function jobOf(row: Row): JobRecord {
  const text = (name: string): string | null => (row[name] === null ? null : String(row[name]));
  return {
    id: String(row['id']), partId: String(row['part_id']), partRevision: Number(row['part_revision']),
    machineId: String(row['machine_id']), metalId: String(row['metal_id']), quantity: Number(row['quantity']),
    state: String(row['state']) as JobState, why: text('why'), trialId: text('trial_id'),
    createdAt: String(row['created_at']), endedAt: text('ended_at'), by: String(row['by']),
  };
}
