import type { FitBoard } from './fitBoard.js';
import type { FitCell } from './fitCell.js';

interface Looked {
  readonly parts: FitBoard['parts'];
  readonly machines: FitBoard['machines'];
  readonly cells: readonly (readonly (Pick<FitCell, 'verdict'> | null)[])[];
}

/**
 * Which part in which column is shown stroke by stroke: of the column that makes most parts the part with most bends among those
 * asked for (indices); null where nothing is made.
 */
export const walkChoice = ({ parts, machines, cells }: Looked, asked: readonly number[] = [...parts.keys()]): readonly [part: number, column: number] | null => {
  const makes = (p: number, c: number): boolean => cells[p]?.[c]?.verdict === 'makes';
  const count = (c: number): number => [...parts.keys()].filter((p) => makes(p, c)).length;
  for (const c of [...machines.keys()].sort((a, b) => count(b) - count(a))) {
    const [p] = asked.filter((it) => makes(it, c)).sort((a, b) => parts[b]!.bends - parts[a]!.bends);
    if (p !== undefined) return [p, c];
  }
  return null;
};
