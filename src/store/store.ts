import type { PieceEntry, PieceRecord } from '../fit/index.js';
import type { Part } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';
import type {
  AuditEvent, JobRecord, MadeWith, PartRevision, Purge, RefusedRecord, ShopKind, ShopRevision, StoredPart, StoredShopEntry, StoredTrial, TrialAsked, TrialColumn, TrialRecord,
  TrialSummary,
} from './records.js';

/** What one file gave: stored as a whole or not at all. */
export interface Reading {
  readonly file: { readonly name: string; readonly bytes: Uint8Array };
  readonly parts: readonly Part[];
  readonly refused: readonly RefusedRecord[];
}

export interface NewTrial {
  readonly partId: string;
  readonly partRevision: number;
  readonly metalId: string;
  readonly trial: Trial;
  /** Absent where the machine and the rack are not from the store. */
  readonly madeWith?: MadeWith;
  readonly column: TrialColumn;
  readonly asked: TrialAsked;
  readonly summary: TrialSummary;
  /** The text of the file that reproduces a plan rejected by the proof. */
  readonly defect?: string;
}

export interface NewShopRevision {
  readonly kind: ShopKind;
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  /** Null takes it off the floor. */
  readonly data: unknown;
  /** What this revision changes, in words. */
  readonly change: string;
  /** The revision that it follows, 0 for a new entry: a change made meanwhile by somebody else is not lost sight of. */
  readonly after: number;
}

export interface NewJob {
  readonly partId: string;
  readonly partRevision: number;
  readonly machineId: string;
  readonly metalId: string;
  readonly quantity: number;
}

/** A cell of the fit board as JSON, the part that it is about and the trial that it was read from. */
export interface KeptFitCell {
  readonly partId: string;
  readonly trialId: string;
  readonly json: string;
}

/** A fit as JSON, with what a list tells of it, and the parts that it is about. */
export interface NewFit {
  readonly id: string;
  readonly partIds: readonly string[];
  readonly summary: string;
  readonly json: string;
  readonly createdAt: string;
}

export interface JobEnd {
  readonly state: 'done' | 'failed' | 'stopped';
  /** One sentence. */
  readonly why?: string;
  readonly trialId?: string;
}

/** An entry that was kept, or why it was not. */
export type KeptPiece =
  | { readonly ok: true; readonly record: PieceRecord }
  | { readonly ok: false; readonly why: 'no trial' | 'no such entry' | 'corrected already' };

/**
 * What must not be lost. Every promise of a write is kept only after the change is on the disk; parts and trials are
 * revisions that nothing overwrites. Promises throughout, so that a database over a network can stand behind it.
 */
export interface Store {
  /** Keeps the file and its parts, each as revision 1. */
  addReading(reading: Reading, by: string): Promise<readonly PartRevision[]>;
  /** A part without a file: demonstration parts carry their own fixed id, typed-in ones get one. */
  addPart(part: Part, by: string, demo?: { readonly id: string }): Promise<PartRevision>;
  /** The next revision of a part, or undefined when there is no such part, or `after` is no longer its latest revision. */
  addRevision(partId: string, part: Part, change: string, by: string, after?: number): Promise<PartRevision | undefined>;
  /** The latest revision of every part, newest part first. */
  parts(): Promise<readonly PartRevision[]>;
  /** All revisions of one part, oldest first; empty when there is no such part. */
  revisions(partId: string): Promise<readonly PartRevision[]>;
  /** The latest revision, or the one asked for. */
  part(partId: string, revision?: number): Promise<StoredPart | undefined>;
  originalFile(partId: string): Promise<{ readonly name: string; readonly bytes: Uint8Array } | undefined>;
  /** Removes a part with all its revisions, trials and files that no other part needs, and records that it was done. */
  purgePart(partId: string, by: string): Promise<Purge | undefined>;
  purge(partId: string): Promise<Purge | undefined>;
  /** Ids of the parts that came from the same file as this one, itself included. */
  siblings(partId: string): Promise<readonly string[]>;

  /** Undefined when the part is gone (purged while the trial was planned). */
  addTrial(trial: NewTrial, by: string): Promise<TrialRecord | undefined>;
  /** Newest first. */
  trials(of?: { readonly partId?: string }): Promise<readonly TrialRecord[]>;
  trialRecord(id: string): Promise<TrialRecord | undefined>;
  trial(id: string): Promise<StoredTrial | undefined>;
  /** The text of the defect file of a trial, if its plan was rejected by the proof. */
  defect(trialId: string): Promise<string | undefined>;

  /** The next revisions of machines, racks, condition records and so on, all of them or none: undefined when another one has come in between. */
  addShopRevisions(entries: readonly NewShopRevision[], by: string): Promise<readonly ShopRevision[] | undefined>;
  /** The latest revision of each that is not taken off, in the order in which they first came. */
  shopEntries(kind: ShopKind): Promise<readonly StoredShopEntry[]>;
  /** The latest revision, or the one asked for. */
  shopEntry(kind: ShopKind, id: string, revision?: number): Promise<StoredShopEntry | undefined>;
  /** Oldest first; empty when there is no such entry. */
  shopRevisions(kind: ShopKind, id: string): Promise<readonly ShopRevision[]>;
  /** A piece made, or a strip bent, for a trial. `corrects`: the entry of the same trial and kind that this one puts right; both stay. */
  addPiece(trialId: string, entry: PieceEntry, corrects: string | null, by: string): Promise<KeptPiece>;
  /** All entries of a trial, those corrected since included, oldest first. */
  pieces(trialId: string): Promise<readonly PieceRecord[]>;

  /** Cells by what they depend on (a key of its content); gone with their part. */
  addCell(key: string, cell: KeptFitCell): Promise<void>;
  cell(key: string): Promise<KeptFitCell | undefined>;

  /** Keeps a fit as it now stands, in place of what was kept of it; gone with any of its parts. */
  keepFit(fit: NewFit): Promise<void>;
  fit(id: string): Promise<string | undefined>;
  /** What a list tells of each, newest first. */
  fits(limit: number): Promise<readonly string[]>;

  addJobs(jobs: readonly NewJob[], by: string): Promise<readonly JobRecord[]>;
  jobStarted(id: string): Promise<void>;
  jobEnded(id: string, end: JobEnd): Promise<void>;
  job(id: string): Promise<JobRecord | undefined>;
  /** Newest first. */
  jobs(limit: number): Promise<readonly JobRecord[]>;
  /** Marks every job that a former run left queued or running; returns how many. */
  stopLeftoverJobs(why: string): Promise<number>;

  /** The audit record, oldest first, from the number after `after`. */
  events(after: number, limit: number): Promise<readonly AuditEvent[]>;
  /** 'ok', or what the database finds wrong with its own file. */
  intact(): Promise<string>;
  close(): Promise<void>;
}
