export { startServer, type RunningServer } from './startServer.js';
export { type ServerOptions, StartRefusal } from './serverOptions.js';
export type { EnvelopeView } from './envelopeDesk.js';
export type { JobView } from './jobPool.js';
export type { PartSummary } from './partSummary.js';
export type { FitPart, FitSummary, FitView, KeptCell } from './fitTask.js';
export { type CellCache, type FitQuestion, runFit, runOptions } from './runFit.js';
export { threadClock } from './threadClock.js';
export { TrialPool } from './trialPool.js';
