import type { Command } from 'commander';
import { type Die, type Punch, type Rack, type RackData, asDrawn, toolsToCsv } from '../shop/index.js';
import { commandWith } from './commandLine.js';
import { type OutputOptions, JSON_UNITS, answer, print } from './print.js';
import { RACK_OPTION, type ShopOptions, rackOf } from './shopFiles.js';
import { table } from './table.js';
import { type Show, show } from './units.js';

const metres = (tool: Punch | Die): number => tool.segments.reduce((sum, { length, count }) => sum + length * count, 0);

const common = (tool: Punch | Die, { bare }: Show): string[] => [
  bare(tool.height, 1),
  tool.includedAngle.toFixed(0),
  tool.rating.toFixed(0),
  bare(metres(tool), 0),
  tool.tang,
  tool.name,
];

const commonColumns = [
  { heading: 'height', right: true },
  { heading: 'included deg', right: true },
  { heading: 'N/mm', right: true },
  { heading: 'at hand', right: true },
  { heading: 'held by' },
  { heading: 'name' },
];

const human = (rack: Rack, units: 'mm' | 'in' | undefined): string => {
  const s = show(units);
  return [
    `${rack.name} (lengths in ${s.unit}; "at hand" is the length of all its segments)`,
    '',
    table(
      [{ heading: 'punch' }, { heading: 'shape' }, { heading: 'tip radius', right: true }, ...commonColumns],
      rack.punches.map((p) => [p.id, p.shape, s.bare(p.tipRadius), ...common(p, s)]),
    ),
    '',
    table(
      [{ heading: 'die' }, { heading: 'shape' }, { heading: 'V opening', right: true }, { heading: 'V measured' }, ...commonColumns],
      rack.dies.map((d) => [d.id, d.shape, s.bare(d.v, 1), d.shape === 'V' ? d.vConvention : '', ...common(d, s)]),
    ),
    '',
    table(
      [{ heading: 'riser' }, { heading: 'height', right: true }, { heading: 'at hand', right: true }, { heading: 'seat' }],
      rack.risers.map((r) => [r.id, s.bare(r.height, 1), s.bare(r.length, 0), r.seat]),
    ),
  ].join('\n');
};

/** `tools`: what stands in the rack. */
export const toolsCommand = (): Command =>
  commandWith('tools', 'list the punches, dies and risers in the rack')
    .option(...RACK_OPTION)
    .option('--csv', 'answer as a CSV table (docs/demo-floor.md)')
    .action(async (options: OutputOptions & ShopOptions & { readonly csv?: boolean }) => {
      const rack = await rackOf(options);
      if (options.csv === true) return print(toolsToCsv(asDrawn(rack) as RackData), options.output);
      await answer({ units: JSON_UNITS, rack }, () => human(rack, options.units), options);
    });
