import type { FitAsked } from '../fit/index.js';
import type { Trial, TrialInput } from '../trial/index.js';

/** What a planning worker is given. */
export interface TrialTask {
  readonly input: TrialInput;
  /** One 32-bit number: 1 tells the planner to end. */
  readonly stop: SharedArrayBuffer;
  /** Present for a fit's trial: every stroke at a stop, held to the tolerance, with what would change a no. */
  readonly fit?: FitAsked;
}

export interface Progress {
  /** What is being done, in words. */
  readonly what: string;
  /** 0 to 1. */
  readonly share: number;
  /** s, of the best plan so far and of the lower bound. */
  readonly bestSeconds?: number;
  readonly bound?: number;
}

/** What reproduces a plan that the proof rejected: the question, the plan as the planner gave it, with the proof's findings. */
export interface Defect {
  readonly input: TrialInput;
  readonly trial: Trial;
}

/**
 * What a planning worker says. `planned` comes before the proof, so that a job killed in its proof still has its plan.
 * `defect`: a plan that the proof did not confirm, with the question it answers.
 */
export type TrialWord =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'planned'; readonly trial: Trial }
  | { readonly kind: 'ended'; readonly trial: Trial; readonly defect?: Defect }
  | { readonly kind: 'failed'; readonly sentence: string };
