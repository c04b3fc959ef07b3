import { type Assumption, MM_IN as MM, type Part, UNIT_WORDS as inWords } from '../../sheet/index.js';

type Unit = Part['unit'];

/** $INSUNITS of the header. */
const DECLARED: Readonly<Record<number, Unit>> = { 1: 'inch', 4: 'mm', 5: 'cm', 6: 'm' };

/**
 * Sides (mm) that a blank for a press brake can have: stock sheet is at most 2 m wide and 6 m long, and under 10 mm there is
 * nothing to hold. Common practice, no source.
 */
const WIDEST = 2000;
const LONGEST = 6000;
const SHORTEST = 10;

export interface ChosenUnit {
  readonly unit: Unit;
  /** mm in a unit of the drawing. */
  readonly scale: number;
  readonly assumption: Assumption;
  readonly question: UnitQuestion;
}

/** The unit as taken, and what else it could be. */
export interface UnitQuestion {
  readonly taken: Unit;
  readonly declared?: Unit;
  /** The header is silent or says what cannot be, and nobody has told: the user is asked. */
  readonly doubted: boolean;
  /** What the flat measures (mm, long side first) in every unit that it could be in, or that the header declares. */
  readonly readings: readonly { readonly unit: Unit; readonly size: readonly [number, number]; readonly couldBe: boolean }[];
}

/**
 * The unit of a drawing whose cut lines span `size` units: the user's word, else the header's where the blank it makes could be
 * cut from stock sheet, else the first unit in which it could. Headers lie: what was taken is always said.
 */
export const chooseUnit = (size: readonly [number, number], header: number | undefined, told: Unit | undefined): ChosenUnit => {
  const [long, short] = size[0] >= size[1] ? size : [size[1], size[0]];
  const sides = (unit: Unit): string => `${(long * MM[unit]).toFixed(2)} x ${(short * MM[unit]).toFixed(2)} mm`;
  const couldBe = (unit: Unit): boolean => long * MM[unit] <= LONGEST && short * MM[unit] <= WIDEST && long * MM[unit] >= SHORTEST;
  const declared = header === undefined ? undefined : DECLARED[header];
  const readings = (['mm', 'inch', 'cm', 'm'] as const)
    .map((unit) => ({ unit, size: [long * MM[unit], short * MM[unit]] as const, couldBe: couldBe(unit) }))
    .filter(({ unit, couldBe: could }) => could || unit === declared || unit === told);
  const chosen = (unit: Unit, sentence: string, doubted = false): ChosenUnit => ({
    unit,
    scale: MM[unit],
    assumption: { code: 'unit', sentence, plates: [], bends: [] },
    question: { taken: unit, ...(declared === undefined ? {} : { declared }), doubted, readings },
  });
  if (told !== undefined) return chosen(told, `Read as ${inWords[told]}, set by hand: ${sides(told)}.`);
  if (declared !== undefined && couldBe(declared)) return chosen(declared, `Read as ${inWords[declared]}, as the file declares: ${sides(declared)}.`);
  const other = (['mm', 'inch', 'cm', 'm'] as const).find(couldBe) ?? declared ?? 'mm';
  if (declared === undefined) return chosen(other, `The file declares no unit; read as ${inWords[other]}: ${sides(other)}.`, true);
  return chosen(
    other,
    `The file declares ${inWords[declared]}, which would make a blank of ${sides(declared)}: no stock sheet is so large, or nothing could hold it. Read as ${inWords[other]}: ${sides(other)}.`,
    true,
  );
};
