import type { Source } from './metal.js';

/** ISO 2768-1's classes: fine, medium, coarse, very coarse. */
export type GeneralClass = 'f' | 'm' | 'c' | 'v';

/** Plus and minus this much, mm or degrees. `doubt` says why the figure wants checking. */
export interface GeneralTolerance extends Source {
  readonly tolerance: number;
  readonly doubt?: string;
}

const classes: readonly GeneralClass[] = ['f', 'm', 'c', 'v'];

/** ISO 2768-1:1989, table 1: [over, up to (mm), f, m, c, v]; the first range begins with 0.5 itself. */
const linear: readonly (readonly [number, number, readonly (number | null)[]])[] = [
  [0.5, 3, [0.05, 0.1, 0.2, null]],
  [3, 6, [0.05, 0.1, 0.3, 0.5]],
  [6, 30, [0.1, 0.2, 0.5, 1]],
  [30, 120, [0.15, 0.3, 0.8, 1.5]],
  [120, 400, [0.2, 0.5, 1.2, 2.5]],
  [400, 1000, [0.3, 0.8, 2, 4]],
  [1000, 2000, [0.5, 1.2, 3, 6]],
  [2000, 4000, [null, 2, 4, 8]],
];

/** Up to this length the class c figures of the copies seen differ (.15 and .2 against .2 and .3), mm. */
const DOUBTED_UP_TO = 6;

/** Table 3, by the length of the shorter leg: [up to (mm), f and m, c, v], minutes of arc. From memory. */
const angular: readonly (readonly [number, number, number, number])[] = [
  [10, 60, 90, 180],
  [50, 30, 60, 120],
  [120, 20, 30, 60],
  [400, 10, 15, 30],
  [Infinity, 5, 10, 20],
];

/** Tolerance of an untoleranced length in mm, or null where the class has none. */
export const linearTolerance = (computed: number, cls: GeneralClass): GeneralTolerance | null => {
  const length = Math.round(computed * PER_MM) / PER_MM;
  const row = linear.find(([over, upTo], i) => (length > over || (i === 0 && length === over)) && length <= upTo);
  const tolerance = row?.[2][classes.indexOf(cls)];
  if (tolerance === undefined || tolerance === null) return null;
  const source: Source = { mark: 'standard', source: 'ISO 2768-1:1989, table 1' };
  return cls === 'c' && length <= DOUBTED_UP_TO
    ? { tolerance, ...source, doubt: 'copies of the table differ here (0.15 and 0.2 against 0.2 and 0.3): look it up before use' }
    : { tolerance, ...source };
};

/** Steps in a mm by which a computed length is taken: 30.000000000000004 is in the row up to 30. */
const PER_MM = 1e6;

/** Tolerance of an untoleranced angle in degrees, by the length of its shorter leg in mm. From memory. */
export const angularTolerance = (shorterLeg: number, cls: GeneralClass): GeneralTolerance => {
  const leg = Math.round(shorterLeg * PER_MM) / PER_MM;
  const row = angular.find(([upTo]) => leg <= upTo)!;
  const minutes = row[cls === 'f' || cls === 'm' ? 1 : cls === 'c' ? 2 : 3];
  return { tolerance: minutes / 60, mark: 'memory', source: 'ISO 2768-1:1989, table 3' };
};
