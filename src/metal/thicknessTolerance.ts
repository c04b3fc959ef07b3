import type { Source, ThicknessStandard } from './metal.js';

/** How far the sheet's thickness may lie from the nominal one, mm: nominal + minus to nominal + plus. */
export interface ThicknessTolerance extends Source {
  readonly minus: number;
  readonly plus: number;
}

/** EN 10051's category by yield strength, or EN 10029's class; A where none is said. S: EN 10131's special tolerances. */
export type ThicknessClass = 'A' | 'B' | 'C' | 'D' | 'S';

/** Rows: [thickness over, up to (mm), one tolerance for each column of width]. */
type Rows = readonly (readonly [number, number, readonly (number | null)[]])[];

interface Table extends Source {
  /** Widths up to which the columns hold, mm; the last is open. */
  readonly widths: readonly number[];
  readonly rows: Rows;
}

const en10131: Table = {
  mark: 'standard',
  source: 'EN 10131:2006, yield under 260 MPa, normal tolerances',
  widths: [1200, 1500, Infinity],
  rows: [
    [0.35, 0.4, [0.03, 0.04, 0.05]],
    [0.4, 0.6, [0.03, 0.04, 0.05]],
    [0.6, 0.8, [0.04, 0.05, 0.06]],
    [0.8, 1, [0.05, 0.06, 0.07]],
    [1, 1.2, [0.06, 0.07, 0.08]],
    [1.2, 1.6, [0.08, 0.09, 0.1]],
    [1.6, 2, [0.1, 0.11, 0.12]],
    [2, 2.5, [0.12, 0.13, 0.14]],
    [2.5, 3, [0.15, 0.15, 0.16]],
  ],
};

/** Three rows of the special tolerances were seen; each is taken for its own thickness only. */
const en10131Special: readonly (readonly [number, readonly [number, number, number]])[] = [
  [1, [0.035, 0.04, 0.05]], [2, [0.06, 0.07, 0.08]], [3, [0.1, 0.11, 0.12]],
];

const en10051: Table = {
  mark: 'standard',
  source: 'EN 10051',
  widths: [1200, 1500, 1800, Infinity],
  rows: [
    [0, 2, [0.17, 0.19, 0.21, null]],
    [2, 2.5, [0.18, 0.21, 0.23, 0.25]],
    [2.5, 3, [0.2, 0.22, 0.24, 0.26]],
    [3, 4, [0.22, 0.24, 0.26, 0.27]],
    [4, 5, [0.24, 0.26, 0.28, 0.29]],
    [5, 6, [0.26, 0.28, 0.29, 0.31]],
    [6, 8, [0.29, 0.3, 0.31, 0.35]],
    [8, 10, [0.32, 0.33, 0.34, 0.4]],
    [10, 12.5, [0.35, 0.36, 0.37, 0.43]],
    [12.5, 15, [0.37, 0.38, 0.4, 0.46]],
  ],
};

/** What EN 10051 adds to category A. */
const categoryFactor: Readonly<Record<ThicknessClass, number | null>> = { A: 1, B: 1.15, C: 1.3, D: 1.4, S: null };

/** The copy seen leaves gaps between its rows; a thickness in a gap takes the next thicker row, the wider one. */
const en10259: Table = {
  mark: 'textbook',
  source: 'EN 10259 as quoted (superseded by ISO 9445); thicknesses between the rows seen take the next thicker row',
  widths: [1000, 1250, 1500],
  rows: [
    [0.8, 1, [0.055, 0.06, 0.06]],
    [1, 1.2, [0.06, 0.07, 0.07]],
    [1.2, 2, [0.08, 0.09, 0.1]],
    [2, 2.5, [0.09, 0.1, 0.11]],
    [2.5, 4, [0.13, 0.14, 0.14]],
  ],
};

/** EN 10029:1991 table 1: [over, up to, then minus and plus for A, B, C, D]. */
const en10029: readonly (readonly [number, number, Readonly<Record<Exclude<ThicknessClass, 'S'>, readonly [number, number]>>])[] = [
  [3, 5, { A: [-0.4, 0.8], B: [-0.3, 0.9], C: [0, 1.2], D: [-0.6, 0.6] }],
  [5, 8, { A: [-0.4, 1.1], B: [-0.3, 1.2], C: [0, 1.5], D: [-0.75, 0.75] }],
  [8, 15, { A: [-0.5, 1.2], B: [-0.3, 1.4], C: [0, 1.7], D: [-0.85, 0.85] }],
  [15, 25, { A: [-0.6, 1.3], B: [-0.3, 1.6], C: [0, 1.9], D: [-0.92, 0.92] }],
];

/**
 * The tolerance of a sheet as bought, or null where the standard's table does not reach. Thickness and width in mm.
 *
 * @example thicknessTolerance('EN 10131', 1.5, 1250) // -0.09, +0.09
 */
export const thicknessTolerance = (
  standard: ThicknessStandard, thickness: number, width: number, category: ThicknessClass = 'A',
): ThicknessTolerance | null => {
  switch (standard) {
    case 'none':
      return null;
    case 'EN 10131':
      // the standard's ranges are "over ... up to": 1.00 belongs to 0.80 to 1.00; its first begins with 0.35 itself
      return category === 'S' ? special(thickness, width) : symmetric(en10131, thickness, width, 1, 'up to');
    case 'EN 10051':
      return symmetric(en10051, thickness, width, categoryFactor[category], 'up to');
    case 'EN 10259':
      // its rows are written 1.00 to 1.19: 1.00 belongs to the row that begins with it
      return symmetric(en10259, thickness, width, 1, 'from');
    case 'EN 10029': {
      const row = en10029.find(([from, to]) => thickness >= from && thickness < to);
      if (row === undefined || category === 'S') return null;
      const [minus, plus] = row[2][category];
      return { minus, plus, mark: 'standard', source: `EN 10029:1991, table 1, class ${category}` };
    }
  }
};

const special = (thickness: number, width: number): ThicknessTolerance | null => {
  const row = en10131Special.find(([nominal]) => nominal === thickness)?.[1];
  if (row === undefined) return null;
  const value = row[en10131.widths.findIndex((limit) => width <= limit)]!;
  return { minus: -value, plus: value, mark: 'standard', source: 'EN 10131:2006, yield under 260 MPa, special tolerances (S)' };
};

const symmetric = (
  table: Table, thickness: number, width: number, factor: number | null, ends: 'up to' | 'from',
): ThicknessTolerance | null => {
  const row = table.rows.find(([over, upTo], i) =>
    ends === 'from' ? thickness >= over && thickness < upTo : (thickness > over || (i === 0 && thickness === over)) && thickness <= upTo,
  );
  const column = table.widths.findIndex((limit) => width <= limit);
  const value = row?.[2][column];
  if (value === undefined || value === null || factor === null) return null;
  return { minus: -value * factor, plus: value * factor, mark: table.mark, source: table.source };
};
