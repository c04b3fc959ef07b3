// Until the intake room is there: its agreed signature, taken at run time when it exists.
import type { Part } from '../sheet/index.js';

interface Intake {
  readonly parts: readonly { readonly index: number; readonly part: Part }[];
  readonly refused: readonly { readonly index: number; readonly code: string; readonly sentence: string; readonly faces: readonly number[] }[];
}
interface Rooms {
  readStep(bytes: Uint8Array, fileName: string, options: { seconds: number; signal: AbortSignal }): Promise<Intake>;
}
export const rooms = (await import('../intake/index.js')) as unknown as Partial<Rooms>;
