export { databaseName, openStore } from './openStore.js';
export type { Opened } from './openStore.js';
export type { JobEnd, NewJob, NewTrial, Reading, Store } from './store.js';
export type {
  AuditEvent, JobRecord, JobState, PartRevision, Purge, RefusedRecord, Source, StoredPart, StoredTrial, TrialRecord, TrialSummary,
} from './records.js';
export { newId } from './newId.js';
