import { Command, Option } from 'commander';

/** A command with the options that all of them have. */
export const commandWith = (name: string, summary: string): Command =>
  new Command(name)
    .description(summary)
    .option('--json', 'answer as JSON, always in mm, N, s and degrees')
    .option('-o, --output <file>', 'write to this file, whole or not at all')
    .addOption(new Option('--units <unit>', 'unit in which lengths are shown').choices(['mm', 'in']).default('mm'));
