import type { Part } from '../../sheet/index.js';
import type { NoSolid } from './foldedSolid.js';
import { loadKernel } from './kernel.js';
import { writeStep } from './writeStep.js';

/**
 * The part as STEP text, each bend turned through a share of its angle (0 flat, 1 finished; `shares` in the order of the
 * part's bends). Loads the geometry kernel into this thread; `once` for a process that writes one file and ends.
 */
export const foldedStep = async (part: Part, shares: readonly number[], once = false): Promise<{ readonly text: string; readonly mm3: number } | NoSolid> =>
  writeStep(await loadKernel(once), part, shares);
