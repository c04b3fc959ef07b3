import type { Command } from 'commander';
import { metals } from '../metal/index.js';
import { commandWith } from './commandLine.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { table } from './table.js';

const human = (): string =>
  [
    'Metals (MPa; typical, and the range to expect of stock as bought; sources in the JSON answer):',
    '',
    table(
      [
        { heading: 'id' },
        { heading: 'tensile', right: true },
        { heading: 'range', right: true },
        { heading: 'yield', right: true },
        { heading: 'kg/m3', right: true },
        { heading: 'name' },
      ],
      metals.map(({ id, name, temper, tensile, yield: limit, density }) => [
        id,
        tensile.typical.toFixed(0),
        `${tensile.min.toFixed(0)}-${tensile.max.toFixed(0)}`,
        limit.typical.toFixed(0),
        density.toFixed(0),
        temper === '' ? name : `${name}, ${temper}`,
      ]),
    ),
  ].join('\n');

/** `metals`: what a part can be made of. */
export const metalsCommand = (): Command =>
  commandWith('metals', 'list the metals known').action(async (options: OutputOptions) => {
    await answer({ units: JSON_UNITS, metals }, human, options);
  });
