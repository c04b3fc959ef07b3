// Until the rooms below are all there: their agreed signatures, taken at run time when they exist.
import type { Metal } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { ProofSummary, Trial } from '../trial/index.js';

export interface TrialInput {
  readonly part: Part; readonly machine: Machine; readonly rack: Rack; readonly metal: Metal; readonly quantity: number;
  readonly limits?: { readonly seconds?: number };
}
export interface Intake {
  readonly parts: readonly { readonly index: number; readonly part: Part }[];
  readonly refused: readonly { readonly index: number; readonly code: string; readonly sentence: string; readonly faces: readonly number[] }[];
}
interface Rooms {
  planTrial(input: TrialInput, hooks?: { onProgress?(p: { done: string; share: number; bestSeconds?: number; bound?: number }): void; cancelled?(): boolean; now?(): number }): Trial;
  proveTrial(trial: Trial, hooks?: { onProgress?(share: number): void }): Promise<ProofSummary>;
  readStep(bytes: Uint8Array, fileName: string, options: { seconds: number; signal: AbortSignal }): Promise<Intake>;
  demoParts(): readonly Part[];
}
export const rooms = Object.assign({}, await import('../trial/index.js'), await import('../proof/index.js'), await import('../intake/index.js'), await import('../sheet/index.js')) as unknown as Partial<Rooms>;
