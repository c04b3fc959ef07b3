export { databaseName, openStore } from './open-store.js';
export type { Opened } from './open-store.js';
export type { NewJob, NewTrial, Reading, Store } from './store.js';
export type {
  AuditEvent, JobRecord, JobState, PartRevision, Purge, RefusedRecord, Source, StoredPart, StoredTrial, TrialRecord, TrialSummary,
} from './records.js';
