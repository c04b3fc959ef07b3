import { addCell, cell } from './cellsTable.js';
import type { SqliteFile } from './database.js';
import { events } from './eventsTable.js';
import { fitJson, fitSummaries, keepFit } from './fitsTable.js';
import { addJobs, jobById, jobEnded, jobs, jobStarted, stopLeftoverJobs } from './jobsTable.js';
import { addPart, addReading, addRevision, latestParts, originalFile, revisions, siblings, storedPart } from './partsTable.js';
import { addPiece, pieces } from './piecesTable.js';
import { purgePart, purgeRecord } from './purgePart.js';
import { addShopRevisions, shopEntries, shopEntry, shopRevisions } from './shopTable.js';
import type { Store } from './store.js';
import { addTrial, defect, storedTrial, trialRecord, trials } from './trialsTable.js';

/** The store on one SQLite file. `released` gives the lock back. */
export function sqliteStore(db: SqliteFile, released: () => void): Store {
  return {
    addReading: async (reading, by) => addReading(db, reading, by),
    addPart: async (part, by, demo) => addPart(db, part, by, demo),
    addRevision: async (partId, part, change, by, after) => addRevision(db, partId, part, change, by, after),
    parts: async () => latestParts(db),
    revisions: async (partId) => revisions(db, partId),
    part: async (partId, revision) => storedPart(db, partId, revision),
    originalFile: async (partId) => originalFile(db, partId),
    purgePart: async (partId, by) => purgePart(db, partId, by),
    purge: async (partId) => purgeRecord(db, partId),
    siblings: async (partId) => siblings(db, partId),
    addTrial: async (trial, by) => addTrial(db, trial, by),
    trials: async (of) => trials(db, of?.partId),
    trialRecord: async (id) => trialRecord(db, id),
    trial: async (id) => storedTrial(db, id),
    defect: async (trialId) => defect(db, trialId),
    addShopRevisions: async (entries, by) => addShopRevisions(db, entries, by),
    shopEntries: async (kind) => shopEntries(db, kind),
    shopEntry: async (kind, id, revision) => shopEntry(db, kind, id, revision),
    shopRevisions: async (kind, id) => shopRevisions(db, kind, id),
    addPiece: async (trialId, entry, corrects, by) => addPiece(db, trialId, entry, corrects, by),
    pieces: async (trialId) => pieces(db, trialId),
    addCell: async (key, kept) => addCell(db, key, kept),
    cell: async (key) => cell(db, key),
    keepFit: async (fit) => keepFit(db, fit),
    fit: async (id) => fitJson(db, id),
    fits: async (limit) => fitSummaries(db, limit),
    addJobs: async (newJobs, by) => addJobs(db, newJobs, by),
    jobStarted: async (id) => jobStarted(db, id),
    jobEnded: async (id, end) => jobEnded(db, id, end),
    job: async (id) => jobById(db, id),
    jobs: async (limit) => jobs(db, limit),
    stopLeftoverJobs: async (why) => stopLeftoverJobs(db, why),
    events: async (after, limit) => events(db, after, limit),
    intact: async () => db.intact(),
    close: async () => {
      db.close();
      released();
    },
  };
}
