import { extname } from 'node:path';
import type { Command } from 'commander';
import { DEFAULT_K } from '../forming/index.js';
import { blankDxf, blankSvg } from '../papers/index.js';
import { type Blank, blank, develop, ruleInWords } from '../sheet/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { PART_FILE, type ReadOptions, readOnePart, readingOptions } from './readParts.js';
import { RULE_NAMES, type RuleOptions, ruleFor } from './rule.js';
import { show } from './units.js';
import { writeWhole } from './writeFile.js';

const inWords = (flat: Blank, rule: string, units: 'mm' | 'in' | undefined, file: string | undefined): string => {
  const s = show(units);
  return [
    `${flat.name}: nominal blank by ${rule}, ${s.lengths([flat.length, flat.width])}, ${s.length(flat.thickness)} thick, ${(flat.area / 100).toFixed(1)} cm2`,
    'Nominal: the real blank depends on metal, V and tip; bend a test strip first.',
    ...(file === undefined ? [] : [`Written to ${file}.`]),
  ].join('\n');
};

/** The drawing in the format that the file's name asks for. */
const drawing = (file: string, flat: Blank, rule: string, units: 'mm' | 'in' | undefined): string => {
  switch (extname(file).toLowerCase()) {
    case '.dxf':
      return blankDxf(flat, { rule });
    case '.svg':
      return blankSvg(flat, { rule, units: units ?? 'mm' });
    default:
      throw new Fault(`${file}: a blank is written as .dxf or .svg.`);
  }
};

/** `blank`: the nominal blank of one part, to look at or to cut. */
export const blankCommand = (): Command =>
  readingOptions(commandWith('blank', 'develop the nominal blank of one part, as DXF or SVG').argument('<file>', PART_FILE))
    .option('--part <number>', 'which body of the file, where it holds several (numbers from `part`)')
    .option('--k <number>', `K-factor (default ${DEFAULT_K})`)
    .option('--rule <name>', `another rule: ${RULE_NAMES}`)
    .action(async (file: string, options: OutputOptions & RuleOptions & ReadOptions & { readonly part?: string }) => {
      const part = await readOnePart(file, options);
      const rule = ruleFor(part, options);
      const words = ruleInWords(rule);
      const flat = blank(develop(part, rule));
      if (!flat.ok) throw new Fault(`${file}: ${flat.failure.sentence}`);
      const { output, ...spoken } = options;
      if (output !== undefined) await writeWhole(output, drawing(output, flat.value, words, options.units));
      await answer(
        { units: JSON_UNITS, rule: words, nominal: true, ...flat.value },
        () => inWords(flat.value, words, options.units, output),
        spoken,
      );
    });
