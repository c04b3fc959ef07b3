import type { MeasuredDeduction } from '../forming/index.js';
import type { GeneralClass, Metal } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { Blank } from '../sheet/index.js';
import type { Layout } from './layout.js';
import type { SearchResult } from './search.js';
import type { Planned, SearchTask } from './task.js';
import type { Tooling } from './tooling.js';
import type { Reason, Trial } from './trial.js';
import type { InTwo } from './twoPasses.js';
import type { Wishes } from './wishes.js';

/** What a trial is asked. */
export interface TrialInput {
  readonly part: Part;
  readonly machine: Machine;
  readonly rack: Rack;
  readonly metal: Metal;
  /** Parts to make with one set-up; its time is shared among them. */
  readonly quantity: number;
  /** A blank already cut: stops are taken from it and each flange's miss is stated. */
  readonly blank?: Pick<Blank, 'outline' | 'holes'>;
  /** Bends to be made in two passes: begun to a smaller bend angle, finished by a later stroke. */
  readonly inTwo?: readonly InTwo[];
  /** Dies (by id) that some bends (by id) are not made in, although they could be: under one tip radius (mm), or under any. */
  readonly leaveOut?: readonly { readonly bend: string; readonly die: string; readonly tip?: number }[];
  /** What the user asks of the order. */
  readonly wishes?: Wishes;
  /** The shop's own measured deductions: where a bend's metal, thickness, V and tip are in it, it overrides the strip. */
  readonly deductions?: readonly MeasuredDeduction[];
  /** Class of ISO 2768-1 for the dimensions that carry no tolerance of their own: a hard limit, like theirs. */
  readonly toleranceClass?: GeneralClass;
  /** What is held against a tolerance: the batch's root of the sum of squares (when absent) or its worst case. */
  readonly toleranceRule?: ToleranceRule;
  readonly limits?: {
    /** Computing time, s. */
    readonly seconds?: number;
    /** 'refused': a stroke that no finger reaches is not placed by eye to a scribed line but ruled out. */
    readonly scribedLine?: 'allowed' | 'refused';
    /** kg that the shop lets one person handle; by itself there is none: common practice and local codes decide. */
    readonly onePerson?: number;
    /** For a heavier piece a second person or a lifting aid is at hand (when absent), or there is none. */
    readonly help?: 'at hand' | 'none';
  };
}

/** What the shell lends to the pure planner. */
export interface TrialHooks {
  readonly onProgress?: (progress: { readonly done: string; readonly share: number; readonly bestSeconds?: number; readonly bound?: number }) => void;
  readonly cancelled?: () => boolean;
  /** Milliseconds of any clock that only runs forward. */
  readonly now?: () => number;
  /** Lends out each search after it has ended, for oracles that search the same strokes by themselves. */
  readonly onSearch?: (searched: Searched) => void;
  /** Lends out the plan that is kept, to be stood on a layout that it shares with other parts. */
  readonly onPlan?: (plan: Replaceable) => void;
}

/** A plan that may be stood on other stations, in the same order and the same seats. */
export interface Replaceable {
  /** As searched: no die raised. */
  readonly plan: readonly Planned[];
  /** On its own layout: the station of each stroke, and strokes of one station stay together. */
  readonly stations: readonly number[];
  /** Pairs that its model offers to a stroke, and the stroke made with one; null where it cannot be. */
  readonly pairsFor: (step: Planned) => readonly number[];
  readonly withPair: (step: Planned, pair: number) => Planned | null;
  readonly raised: (step: Planned, riser: number) => Planned | null;
  /** N */
  readonly force: (step: Planned) => number;
  /** The record on a layout with tools of this rack, or the tolerance that it breaks there. */
  readonly place: (layout: Layout, rack: Rack) => Trial | Reason;
}

/** What one search was asked and what it answered. */
export interface Searched {
  readonly task: SearchTask;
  readonly tooling: Tooling;
  readonly result: SearchResult;
}

export type ToleranceRule = 'root-sum-square' | 'worst case';
