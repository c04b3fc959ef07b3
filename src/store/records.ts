import type { FitColumn, TightMargin } from '../fit/index.js';
import type { GeneralClass } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';

/** The file that a part was read from, as it was handed in. */
export interface Source {
  readonly fileName: string;
  readonly sha256: string;
  /** How many bytes. */
  readonly size: number;
}

/** What a list shows of one revision of a part. */
export interface PartRevision {
  readonly id: string;
  /** 1, 2, ...: a change makes a new one, none is ever overwritten. */
  readonly revision: number;
  readonly name: string;
  readonly demo: boolean;
  /** mm */
  readonly thickness: number;
  /** How many. */
  readonly bends: number;
  readonly source: Source | null;
  /** What this revision changed, in words. */
  readonly change: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly by: string;
}

/** What the reader refused of the same file, told again whenever the part is looked at. */
export interface RefusedRecord {
  readonly index: number;
  /** Which body of several. */
  readonly name?: string;
  readonly code: string;
  readonly sentence: string;
  /** The faces that the sentence names, from 1 in the file's order; the measure that decided. */
  readonly faces?: readonly number[];
  readonly measure?: number;
}

export interface StoredPart extends PartRevision {
  readonly part: Part;
  /** Solids of the same file that were refused. */
  readonly refused: readonly RefusedRecord[];
}

/** Machines of the floor by their id, racks by theirs, condition records by the id of their machine; one table of measured deductions; the shop's own metals by theirs. */
export type ShopKind = 'machine' | 'rack' | 'condition' | 'deductions' | 'metal';

/** What a list shows of one revision of a machine, a rack or a condition record. */
export interface ShopRevision {
  readonly kind: ShopKind;
  readonly id: string;
  /** 1, 2, ...: a change makes a new one, none is ever overwritten. */
  readonly revision: number;
  readonly name: string;
  readonly demo: boolean;
  /** This revision took it off the floor. */
  readonly takenOff: boolean;
  readonly change: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly by: string;
}

export interface StoredShopEntry extends ShopRevision {
  /** As it was handed in: for the shop's parsers. */
  readonly data: unknown;
}

/** The revisions that a trial was made with; null where it was made before they were kept, or without a condition record. */
export interface MadeWith {
  readonly machineRevision: number | null;
  readonly conditionRevision: number | null;
  readonly rackId: string | null;
  readonly rackRevision: number | null;
  /** Of the shop's measured deductions; null also where there were none or they were left out. */
  readonly deductionsRevision: number | null;
  /** Of the metal, where it is the shop's own. */
  readonly metalRevision: number | null;
}

/** Which machine and tools a trial is of: only what is ours, without an option fitted, says what stands on the floor. */
export interface TrialColumn {
  /** Null in the record of a fit's trial that was made before this was kept. */
  readonly whose: FitColumn['whose'] | null;
  /** Id of the option that the machine was planned with, null for as it stands. */
  readonly option: string | null;
}

/** What was asked of a trial beside part, machine, tools, metal and quantity: to ask the same again. */
export interface TrialAsked {
  /** ISO 2768-1, of dimensions without a tolerance of their own. */
  readonly toleranceClass: GeneralClass | null;
  readonly scribedLine: 'allowed' | 'refused';
  /** The shop's measured deductions. */
  readonly measured: 'taken' | 'left out';
}

/** What a list shows of a trial. */
export interface TrialRecord extends MadeWith, TrialColumn {
  readonly id: string;
  /** Null where it was made before this was kept. */
  readonly asked: TrialAsked | null;
  readonly partId: string;
  readonly partRevision: number;
  readonly partName: string;
  readonly machineId: string;
  readonly machineName: string;
  readonly metalId: string;
  readonly metalName: string;
  readonly quantity: number;
  readonly verdict: Trial['verdict'];
  readonly summary: TrialSummary;
  readonly createdAt: string;
  readonly by: string;
}

/** The figures of a trial that a board or a list needs without the trial itself. */
export interface TrialSummary {
  readonly steps: number;
  /** Strokes placed by eye; absent where it was made before this was kept. */
  readonly byEye?: number;
  readonly stations: number;
  /** Predicted making time of one part, s, and the lower bound on it. */
  readonly seconds: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly proof: { readonly checked: boolean; readonly passed: boolean };
  /** mm, the smallest over all steps; null without steps. */
  readonly clearance: number | null;
  /** First reason and first remedy, in their own sentence. */
  readonly reason: string | null;
  readonly remedy: string | null;
  /** The margin used up furthest, as a share of its limit. */
  readonly tightest: TightMargin | null;
  /** Is there a defect file (a plan that the proof rejected)? */
  readonly defect: boolean;
}

export interface StoredTrial extends TrialRecord {
  readonly trial: Trial;
}

export type JobState = 'queued' | 'running' | 'done' | 'failed' | 'stopped';

/** A planning job as it is remembered over a restart. */
export interface JobRecord {
  readonly id: string;
  readonly partId: string;
  readonly partRevision: number;
  readonly machineId: string;
  readonly metalId: string;
  readonly quantity: number;
  readonly state: JobState;
  /** One sentence where the state needs it: why it failed or was stopped. */
  readonly why: string | null;
  readonly trialId: string | null;
  readonly createdAt: string;
  readonly endedAt: string | null;
  readonly by: string;
}

/** That a buyer's data were removed: what stays when all else of it is gone. No name and no measure of the part. */
export interface Purge {
  readonly partId: string;
  readonly revisions: number;
  readonly trials: number;
  /** Original files removed, and files kept because other parts come from them too. */
  readonly filesRemoved: number;
  readonly filesKept: number;
  readonly at: string;
  readonly by: string;
}

/** One line of the audit record. */
export interface AuditEvent {
  readonly number: number;
  readonly at: string;
  readonly by: string;
  readonly what: string;
  /** Id of the part, trial or job. */
  readonly subject: string;
  readonly detail: Readonly<Record<string, string | number | boolean>>;
}
