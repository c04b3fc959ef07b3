/** One figure of a piece, beside what the plan said of it when it was written down. */
export interface PieceFigure {
  /** Of the dimension ('d1'), the flange ('step 2') or the bend ('b1'). */
  readonly id: string;
  readonly kind: 'length' | 'bend angle';
  readonly what: string;
  readonly unit: 'mm' | 'degrees';
  readonly predicted: number;
  /** What the tolerance is about, where the plan itself said that the tools form it otherwise. */
  readonly drawn?: number;
  /** Plus and minus; null where none is asked. */
  readonly tolerance: number | null;
  readonly measured: number;
}

/** A piece that was made and measured. */
export interface MadePiece {
  readonly kind: 'piece';
  /** Scratched or written on it: by this it is found again. */
  readonly serial: string;
  /** Of the metal, as on its label or certificate. */
  readonly batch: string;
  /** The tools that it was really bent with, in words. */
  readonly tools: string;
  readonly instrument: string;
  readonly figures: readonly PieceFigure[];
  readonly note: string;
}

/** A test strip that was bent and measured: what it says of the deduction. */
export interface BentStrip {
  readonly kind: 'strip';
  readonly serial: string;
  readonly batch: string;
  readonly station: string;
  /** Degrees, as measured after release. */
  readonly bendAngle: number;
  /** mm: the length that it was cut to across the bend, both legs outside, and its thickness as measured. */
  readonly cut: number;
  readonly legs: readonly [number, number];
  readonly thickness: number;
  /** Where read: mm of travel from first touch, bend angle under load in degrees, greatest force in N per mm of bend. Two strips with depth tell the metal. */
  readonly depth?: number;
  readonly underLoad?: number;
  readonly force?: number;
  readonly instrument: string;
  readonly note: string;
}

export type PieceEntry = MadePiece | BentStrip;

/** An entry as it was kept: nothing changes it, a correction is another entry that names it. */
export interface PieceRecord {
  readonly id: string;
  readonly trialId: string;
  readonly entry: PieceEntry;
  /** Id of the entry that this one puts right. */
  readonly corrects: string | null;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly by: string;
}

/** The records that no later one corrects. */
export const standing = (records: readonly PieceRecord[]): readonly PieceRecord[] => {
  const corrected = new Set(records.map(({ corrects }) => corrects));
  return records.filter(({ id }) => !corrected.has(id));
};
