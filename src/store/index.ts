export { databaseName, openStore } from './openStore.js';
export type { Opened } from './openStore.js';
export type { JobEnd, NewFit, NewJob, NewShopRevision, NewTrial, Reading, Store } from './store.js';
export type {
  AuditEvent, JobRecord, JobState, MadeWith, PartRevision, Purge, RefusedRecord, ShopKind, ShopRevision, Source, StoredPart, StoredShopEntry, StoredTrial,
  TrialAsked, TrialColumn, TrialRecord, TrialSummary,
} from './records.js';
export { newId } from './newId.js';
