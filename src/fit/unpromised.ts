import type { Reason, Step, TrialInput } from '../trial/index.js';

/** A stroke of a plan that was found, and why the plan is no promise to a buyer. */
export interface Unpromised {
  readonly step: Step;
  readonly reason: Reason;
  /** Tools that would do its bends no better: what to plan without. */
  readonly leaveOut: NonNullable<TrialInput['leaveOut']>;
  /** With the same tools it may be one in a way that is not tried. */
  readonly likewise: boolean;
  /** No other tools do them any better, whatever the plan. */
  readonly hopeless: boolean;
}
