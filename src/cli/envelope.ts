import type { Command } from 'commander';
import { type Envelope, type Reach, envelope, reachInWords } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import { commandWith } from './commandLine.js';
import { METAL_WORDS, metalNamed } from './metalNamed.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { FLOOR_OPTION, RACK_OPTION, type ShopOptions, chosen, floorOf, rackOf } from './shopFiles.js';
import { table } from './table.js';
import { type Show, show } from './units.js';

interface EnvelopeOptions extends OutputOptions, ShopOptions {
  readonly machine: string;
  readonly metal: string;
}

const inWords = ({ machine, metal, thickest, shortest, deepest, model }: Envelope, s: Show): string => {
  // as the planner asked for it: no digit is added
  const mm = (value: number): string => s.words(`${value} mm`);
  const reach = (far: Reach): string => s.words(reachInWords(far));
  return [
  `${machine}, ${metal}`,
  table([{ heading: 'length of bend' }, { heading: 'thickest' }], thickest.map((t) => [mm(t.length), reach(t.thickness)])),
  '',
  table([{ heading: 'thickness' }, { heading: 'shortest flange, outside' }], shortest.map((f) => [mm(f.thickness), reach(f.flange)])),
  '',
  `Deepest box on a base of ${s.words(`${deepest.base[0]} x ${deepest.base[1]} mm`)} in ${mm(deepest.thickness)}: ${reach(deepest.depth)}.`,
  s.words(model),
  ].join('\n');
};

/** `envelope`: what a machine reaches in a metal. */
export const envelopeCommand = (): Command =>
  commandWith('envelope', 'what a machine reaches: thickest by longest, shortest flange, deepest box')
    .requiredOption('--machine <ids>', 'machines of the floor (see `machines`), with commas between, or all')
    .option('--metal <id>', METAL_WORDS, 'dc01')
    .option(...FLOOR_OPTION)
    .option(...RACK_OPTION)
    .action(async (options: EnvelopeOptions) => {
      const machines = chosen(options.machine, await floorOf(options), '--machine');
      const metal = await metalNamed(options.metal);
      const rack = await rackOf(options);
      const envelopes: Envelope[] = [];
      for (const machine of machines) envelopes.push(await envelope(machine, rack, metal, { now: () => performance.now() }));
      await answer({ units: JSON_UNITS, envelopes }, () => [...envelopes.map((one) => inWords(one, show(options.units))), CAVEAT].join('\n\n'), options);
    });
