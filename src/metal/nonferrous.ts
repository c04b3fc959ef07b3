import { defineMetals } from './define.js';
import type { Metal, MinRadius } from './metal.js';
import { TEXTBOOK_RADII } from './textbookRadii.js';

const aluminiumSource =
  'Aluminum Association, Aluminum Design Manual, part VII, table 3-1, p. VII-78, January 2005; along the grain half as much again, common practice, no source';
/** Thicknesses of the table's columns: 1/64, 1/32, 1/16, 1/8, 3/16, 1/4, 3/8, 1/2 inch. */
const columns = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2].map((inch) => inch * 25.4);
const table = (factors: readonly number[], source = aluminiumSource): MinRadius => ({
  kind: 'rows', rows: factors.map((f, i) => [columns[i]!, f] as const), alongFactor: 1.5, mark: 'textbook', source,
});
const factor = (across: number, along: number): MinRadius => ({
  kind: 'factor', across, along, mark: 'memory', source: 'trade tables, recalled',
});
const quoted6061 = 'a design office table that agrees with table 3-1 of the Aluminum Design Manual 2005; along the grain half as much again, common practice';

const aluminium: readonly Metal[] = defineMetals(
  { family: 'aluminium', modulus: 70000, poisson: 0.33, density: 2700, gauge: 'brown and sharpe' },
  [
    {
      id: 'aw-1050a-o', name: 'AW-1050A aluminium', temper: 'O',
      yield: [20, 55, 30, 'min', 'memory', 'EN 485-2'], tensile: [65, 95, 78, 'both', 'memory', 'EN 485-2'],
      uniform: 0.26, minRadius: factor(0, 0), thickness: [0.5, 6],
    },
    {
      id: 'aw-1050a-h14', name: 'AW-1050A aluminium', temper: 'H14',
      yield: [85, 130, 103, 'min', 'memory', 'EN 485-2'], tensile: [105, 145, 117, 'both', 'memory', 'EN 485-2'],
      uniform: 0.065, minRadius: factor(0.5, 1), thickness: [0.5, 6],
    },
    {
      id: '1100-o', name: '1100 aluminium', temper: 'O',
      yield: [25, 55, 35, 'min', 'memory', 'ASTM B209'], tensile: [75, 105, 90, 'both', 'memory', 'ASTM B209'],
      uniform: 0.26, minRadius: table([0, 0, 0, 0, 0.5, 1, 1, 1.5]), thickness: [0.4, 6.35],
    },
    {
      id: '1100-h14', name: '1100 aluminium', temper: 'H14',
      yield: [95, 140, 115, 'min', 'memory', 'ASTM B209'], tensile: [110, 145, 127, 'both', 'memory', 'ASTM B209'],
      uniform: 0.055, minRadius: table([0, 0, 0, 1, 1, 1.5, 2, 2.5]), thickness: [0.4, 6.35],
    },
    {
      id: '3003-h14', name: '3003 aluminium', temper: 'H14',
      yield: [115, 165, 140, 'min', 'memory', 'ASTM B209'], tensile: [140, 180, 155, 'both', 'memory', 'ASTM B209'],
      uniform: 0.055, minRadius: table([0, 0, 0, 1, 1, 1.5, 2, 2.5]), thickness: [0.4, 6.35],
    },
    {
      id: 'aw-5754-o', name: 'AW-5754 aluminium', temper: 'O/H111',
      yield: [80, 130, 100, 'min', 'memory', 'EN 485-2'], tensile: [190, 240, 215, 'both', 'memory', 'EN 485-2'],
      uniform: 0.215, minRadius: factor(0.5, 1), thickness: [0.5, 10],
    },
    {
      id: 'aw-5754-h22', name: 'AW-5754 aluminium', temper: 'H22/H32',
      yield: [130, 190, 160, 'min', 'memory', 'EN 485-2'], tensile: [220, 270, 240, 'both', 'memory', 'EN 485-2'],
      uniform: 0.135, minRadius: factor(1, 1.5), thickness: [0.5, 10],
    },
    {
      id: '5052-o', name: '5052 aluminium', temper: 'O',
      yield: [65, 115, 90, 'min', 'memory', 'ASTM B209'], tensile: [170, 215, 193, 'both', 'memory', 'ASTM B209'],
      uniform: 0.215, minRadius: table([0, 0, 0, 0.5, 1, 1, 1.5, 1.5]), thickness: [0.4, 6.35],
    },
    {
      id: '5052-h32', name: '5052 aluminium', temper: 'H32',
      yield: [160, 215, 190, 'min', 'memory', 'ASTM B209 (23 ksi)'], tensile: [215, 265, 230, 'both', 'memory', 'ASTM B209 (31 to 38 ksi)'],
      uniform: 0.09, minRadius: table([0, 0, 1, 1.5, 1.5, 1.5, 1.5, 2]), thickness: [0.4, 6.35],
    },
    {
      id: '5052-h34', name: '5052 aluminium', temper: 'H34',
      yield: [180, 235, 210, 'min', 'memory', 'ASTM B209'], tensile: [235, 285, 260, 'both', 'memory', 'ASTM B209'],
      uniform: 0.08, minRadius: table([0, 1, 1.5, 2, 2, 2.5, 2.5, 3]), thickness: [0.4, 6.35],
    },
    {
      id: '6061-t4', name: '6061 aluminium', temper: 'T4',
      yield: [110, 170, 140, 'min', 'memory', 'ASTM B209'], tensile: [205, 260, 235, 'min', 'memory', 'ASTM B209'],
      uniform: 0.17, minRadius: table([0, 0, 1, 1.5, 2.5, 3, 3.5, 4], quoted6061), thickness: [0.4, 6.35],
    },
    {
      id: '6061-t6', name: '6061 aluminium', temper: 'T6',
      yield: [240, 310, 275, 'min', 'memory', 'ASTM B209'], tensile: [290, 345, 312, 'min', 'memory', 'ASTM B209'],
      uniform: 0.075, minRadius: table([1, 1, 1.5, 2.5, 3, 3.5, 4.5, 5], quoted6061), thickness: [0.4, 6.35],
    },
    {
      id: '2024-t3', name: '2024 aluminium', temper: 'T3',
      yield: [290, 375, 330, 'min', 'memory', 'ASTM B209'], tensile: [435, 490, 465, 'min', 'memory', 'ASTM B209'],
      uniform: 0.14,
      minRadius: {
        kind: 'factor', across: 4, along: 6, mark: 'textbook',
        source: 'FAA-H-8083-31A, fig. 4-125 (.040 in: 0.16 in, 4 t); along the grain half as much again, common practice, no source',
      },
      thickness: [0.4, 6.35],
    },
  ],
);

const copper: readonly Metal[] = defineMetals(
  { family: 'copper', modulus: 117000, poisson: 0.34, density: 8940, gauge: 'brown and sharpe' },
  [
    {
      id: 'copper-soft', name: 'copper C11000', temper: 'annealed',
      yield: [55, 100, 69, 'none', 'memory', 'typical'], tensile: [200, 250, 220, 'none', 'memory', 'typical'],
      uniform: 0.33, minRadius: factor(0, 0), thickness: [0.5, 10],
    },
    {
      id: 'copper-half-hard', name: 'copper C11000', temper: 'half hard (H02)',
      yield: [210, 280, 250, 'none', 'memory', 'typical'], tensile: [255, 320, 290, 'none', 'memory', 'typical'],
      uniform: 0.07, minRadius: factor(0.5, 1), thickness: [0.5, 10],
    },
    {
      id: 'copper-hard', name: 'copper C11000', temper: 'hard (H04)',
      yield: [280, 335, 310, 'none', 'memory', 'typical'], tensile: [315, 375, 345, 'none', 'memory', 'typical'],
      uniform: 0.055, minRadius: factor(1, 1.5), thickness: [0.5, 10],
    },
  ],
);

const brass: readonly Metal[] = defineMetals(
  { family: 'brass', modulus: 108000, poisson: 0.34, density: 8530, gauge: 'brown and sharpe' },
  [
    {
      id: 'brass-soft', name: 'brass C26000', temper: 'annealed',
      yield: [80, 140, 105, 'none', 'memory', 'typical'], tensile: [300, 365, 325, 'none', 'memory', 'typical'],
      uniform: 0.4,
      minRadius: {
        kind: 'factor', across: TEXTBOOK_RADII['low-leaded brass'][0], along: 0.5, mark: 'textbook',
        source: 'Kalpakjian and Schmid, SI 6th ed. 2009, table 16.3 (low-leaded brass, soft, 0); along the grain common practice',
      },
      thickness: [0.5, 6],
    },
    {
      id: 'brass-half-hard', name: 'brass C26000', temper: 'half hard (H02)',
      yield: [310, 400, 360, 'none', 'memory', 'typical'], tensile: [390, 465, 425, 'none', 'memory', 'typical'],
      uniform: 0.1, minRadius: factor(0.75, 1.25), thickness: [0.5, 6],
    },
    {
      id: 'brass-hard', name: 'brass C26000', temper: 'hard (H04)',
      yield: [395, 475, 435, 'none', 'memory', 'typical'], tensile: [490, 560, 525, 'none', 'memory', 'typical'],
      uniform: 0.08,
      minRadius: {
        kind: 'factor', across: TEXTBOOK_RADII['low-leaded brass'][1], along: 3, mark: 'textbook',
        source: 'Kalpakjian and Schmid, SI 6th ed. 2009, table 16.3 (low-leaded brass, hard, 2 t); along the grain common practice',
      },
      thickness: [0.5, 6],
    },
  ],
);

export const nonferrous: readonly Metal[] = [...aluminium, ...copper, ...brass];
