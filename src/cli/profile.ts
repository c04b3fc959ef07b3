import { basename, extname } from 'node:path';
import type { Command } from 'commander';
import { PROFILE_HELP, blank, develop, partFromLine, ruleInWords } from '../sheet/index.js';
import { blankDxf, blankSvg } from '../papers/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { describePart, partInWords } from './part.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { type RuleOptions, ruleFor, ruleOf } from './rule.js';
import { writeWhole } from './writeFile.js';

interface ProfileOptions extends OutputOptions, RuleOptions {
  readonly name?: string;
}

/** `profile`: a part from one typed line. */
export const profileCommand = (): Command =>
  commandWith('profile', 'a part of constant section from one typed line')
    .argument('<line...>', 'flanges and bends in turn, then thickness and width (below)')
    .option('--name <name>', 'what the part is called (default: as the file it is kept in, else profile)')
    .option('--k <number>', 'K-factor for the nominal blank')
    .option('--rule <name>', 'another rule for it')
    .addHelpText('after', `\n${PROFILE_HELP}\n\n-o FILE.json keeps it as a part file that every command takes; -o FILE.dxf or FILE.svg writes its nominal blank.`)
    .action(async (words: readonly string[], options: ProfileOptions) => {
      const line = words.join(' ');
      ruleOf(options);
      const name = (options.name ?? (options.output === undefined ? 'profile' : basename(options.output, extname(options.output)))).trim();
      if (name === '' || name.length > 200) throw new Fault('--name: a name has 1 to 200 letters.');
      const made = partFromLine(line, name);
      if (!made.ok) throw new Fault(made.fault.sentence);
      const { output, ...spoken } = options;
      const described = describePart(0, made.value, options);
      if (output !== undefined) {
        const format = extname(output).toLowerCase();
        if (!['.json', '.dxf', '.svg'].includes(format)) throw new Fault(`${output}: a profile is written as .json, its blank as .dxf or .svg.`);
        if (format === '.json') await writeWhole(output, `${JSON.stringify({ profile: { name, line } }, null, 2)}\n`);
        else {
          const rule = ruleFor(made.value, options);
          const flat = blank(develop(made.value, rule));
          if (!flat.ok) throw new Fault(flat.failure.sentence);
          const words = ruleInWords(rule);
          await writeWhole(output, format === '.dxf' ? blankDxf(flat.value, { rule: words }) : blankSvg(flat.value, { rule: words, units: options.units ?? 'mm' }));
        }
      }
      await answer({ units: JSON_UNITS, line, parts: [described] }, () => `${partInWords(described, options.units)}${output === undefined ? '' : `\nWritten to ${output}.`}`, spoken);
    });
