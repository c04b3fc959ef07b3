/** What a part can be refused for, and what it was that could not be: a closed list for programs, a sentence for people. */
export interface SheetFailure {
  readonly code:
    | 'cycle'
    | 'forest'
    | 'inside out'
    | 'flat pattern overlaps'
    | 'flat pattern open'
    | 'flange too short'
    | 'wrong measure';
  /** Names the thing and the measure. */
  readonly sentence: string;
  readonly plates: readonly number[];
  readonly bends: readonly string[];
  /** mm, or mm2 for an overlap: by how much. */
  readonly by?: number;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failure: SheetFailure };

export const done = <T>(value: T): Result<T> => ({ ok: true, value });

export const refused = (
  code: SheetFailure['code'],
  sentence: string,
  witness: { readonly plates?: readonly number[]; readonly bends?: readonly string[]; readonly by?: number } = {},
): { readonly ok: false; readonly failure: SheetFailure } => ({
  ok: false,
  failure: {
    code,
    sentence,
    plates: witness.plates ?? [],
    bends: witness.bends ?? [],
    ...(witness.by === undefined ? {} : { by: witness.by }),
  },
});
