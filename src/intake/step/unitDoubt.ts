import { type Assumption, MM_IN, type Part, UNIT_WORDS } from '../../sheet/index.js';
import type { Brep } from './brep.js';
import type { FileUnit } from './unit.js';

/**
 * mm: sheet that a press brake bends is 0.3 to 25 thick; a part under 10 long cannot be held, and one over 6000 comes out of no
 * stock sheet (common practice, no source).
 */
const THINNEST = 0.3;
const THICKEST = 25;
const SHORTEST = 10;
const LONGEST = 6000;

/** mm along the longest side of the box about a body's edges. */
export const longestSide = ({ edges }: Brep): number => {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const { points } of edges) {
    for (const point of points) {
      point.forEach((at, axis) => {
        low[axis] = Math.min(low[axis]!, at);
        high[axis] = Math.max(high[axis]!, at);
      });
    }
  }
  return Math.max(0, ...high.map((at, axis) => at - low[axis]!));
};

const couldBe = (length: number, thickness: number | undefined): boolean =>
  length >= SHORTEST && length <= LONGEST && (thickness === undefined || (thickness >= THINNEST && thickness <= THICKEST));

/** Another unit in which the body could be sheet for a brake, `length` and `thickness` being what they are now, mm. */
interface OtherUnit {
  readonly unit: Part['unit'];
  readonly length: number;
  readonly thickness?: number;
}

const others = (now: number, length: number, thickness: number | undefined): OtherUnit[] =>
  (['mm', 'inch', 'cm', 'm'] as const)
    .map((unit) => ({ unit, length: (length * MM_IN[unit]) / now, ...(thickness === undefined ? {} : { thickness: (thickness * MM_IN[unit]) / now }) }))
    .filter((it) => couldBe(it.length, it.thickness));

const size = ({ length, thickness }: Omit<OtherUnit, 'unit'>): string => `${thickness === undefined ? '' : `${thickness.toFixed(2)} mm thick, `}${length.toFixed(1)} mm long`;

/**
 * What is to be said of the unit of a body that is `length` mm long and, where it was read, `thickness` mm thick: that it was set by hand,
 * that the file names none, or that nobody makes such a sheet. Undefined where there is nothing to doubt.
 */
export const unitWords = ({ unit, mm, doubtful }: FileUnit, told: Part['unit'] | undefined, length: number, thickness?: number): string | undefined => {
  const now = { length, ...(thickness === undefined ? {} : { thickness }) };
  const declares = doubtful === undefined ? `the file declares ${UNIT_WORDS[unit]}` : `the file names ${doubtful}`;
  if (told !== undefined) return `Read as ${UNIT_WORDS[told]}, set by hand (${declares}): ${size(now)}.`;
  const could = couldBe(length, thickness);
  if (doubtful === undefined && could) return undefined;
  const taken = doubtful === undefined ? `The file declares ${UNIT_WORDS[unit]}` : doubtful === 'no unit' ? 'The file names no length unit; millimetres are taken' : `The file names ${doubtful} as its length unit`;
  const better = others(mm, length, thickness).map((it) => `as ${UNIT_WORDS[it.unit]} ${size(it)}`).join('; ');
  return `${taken}: ${size(now)}${could ? '' : ', which no press brake bends'}. ${better === '' ? '' : `Is it another unit? It would be ${better}.`}`.trim();
};

export const unitAssumption = (sentence: string | undefined): readonly Assumption[] => (sentence === undefined ? [] : [{ code: 'unit', sentence, plates: [], bends: [] }]);
