export type {
  Margin, Move, Placed, ProofSummary, Reason, Remedy, Station, Step, Stop, TimePiece, Trial,
} from './trial.js';
