import type { Command } from 'commander';
import { type Axis, type Machine, asDrawn, machinesToCsv } from '../shop/index.js';
import { commandWith } from './commandLine.js';
import { type OutputOptions, JSON_UNITS, answer, print } from './print.js';
import { CONDITION_OPTION, FLOOR_OPTION, type ShopOptions, floorOf } from './shopFiles.js';
import { table } from './table.js';
import { show } from './units.js';

const driveOf = (axis: Axis): string => axis.drive;

const row = (machine: Machine, units: 'mm' | 'in' | undefined): string[] => {
  const { bare } = show(units);
  return [
    machine.id,
    (machine.rating / 1000).toFixed(0),
    bare(machine.length, 0),
    bare(machine.betweenFrames, 0),
    bare(machine.openHeight, 0),
    bare(machine.shutHeight, 0),
    bare(machine.throat, 0),
    driveOf(machine.gauge.x),
    driveOf(machine.gauge.r),
    machine.crowning,
    machine.condition,
    machine.name,
  ];
};

const human = (floor: readonly Machine[], units: 'mm' | 'in' | undefined): string =>
  [
    `The floor (lengths in ${show(units).unit}; open and shut height from die seat to punch shoulder):`,
    '',
    table(
      [
        { heading: 'id' },
        { heading: 'kN', right: true },
        { heading: 'length', right: true },
        { heading: 'frames', right: true },
        { heading: 'open', right: true },
        { heading: 'shut', right: true },
        { heading: 'throat', right: true },
        { heading: 'X' },
        { heading: 'R' },
        { heading: 'crowning' },
        { heading: 'condition' },
        { heading: 'name' },
      ],
      floor.map((machine) => row(machine, units)),
    ),
  ].join('\n');

/** `machines`: what stands on the floor. */
export const machinesCommand = (): Command =>
  commandWith('machines', 'list the machines on the floor')
    .option(...FLOOR_OPTION)
    .option(...CONDITION_OPTION)
    .option('--csv', 'answer as a CSV table (docs/demo-floor.md)')
    .action(async (options: OutputOptions & ShopOptions & { readonly csv?: boolean }) => {
      const machines = await floorOf(options);
      if (options.csv === true) return print(machinesToCsv(asDrawn(machines) as readonly object[]), options.output);
      await answer({ units: JSON_UNITS, machines }, () => human(machines, options.units), options);
    });
