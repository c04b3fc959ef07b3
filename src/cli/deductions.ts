import { existsSync } from 'node:fs';
import type { Command } from 'commander';
import { type FittedK, type FittedTools, deductionsToCsv, fittedByTools, spreadOf } from '../forming/index.js';
import { withStripRows } from '../fit/index.js';
import { metalById } from '../metal/index.js';
import { readDeductions } from './bendSetup.js';
import { commandWith } from './commandLine.js';
import { type OutputOptions, JSON_UNITS, answer, print } from './print.js';
import { table } from './table.js';
import { show } from './units.js';

interface DeductionsOptions extends OutputOptions {
  readonly add?: readonly string[];
  readonly csv?: boolean;
}

const human = (groups: readonly FittedTools[], options: OutputOptions): string => {
  const s = show(options.units);
  const words = (k: FittedK | null): string => (k === null ? 'not known' : `${k.k.toFixed(3)} (${k.min.toFixed(3)} to ${k.max.toFixed(3)}, ${k.rows} row${k.rows === 1 ? '' : 's'})`);
  return table(
    [{ heading: 'metal' }, { heading: 'thickness', right: true }, { heading: 'V', right: true }, { heading: 'measured' }, { heading: 'tip', right: true }, { heading: 'bend deg', right: true }, { heading: 'deduction', right: true }, { heading: 'pieces', right: true }, { heading: 'fitted K' }],
    groups.flatMap(({ rows, k }) =>
      rows.map((r, i) => [
        r.metal, s.bare(r.thickness), s.bare(r.v), r.vConvention, s.bare(r.tipRadius), r.bendAngle.toFixed(1), `${s.bare(r.deduction)}${spreadOf(r) === null ? ', spread not known' : ` +-${s.bare(r.spread)}`}`, String(r.pieces), i === 0 ? words(k) : '',
      ]),
    ),
  );
};

/** `deductions`: the shop's own table, looked at, added to, written anew. */
export const deductionsCommand = (): Command =>
  commandWith('deductions', "the shop's measured deductions: fitted K with its spread, rows added, CSV in and out")
    .argument('<table.csv>', 'the table; need not be there yet when rows are added')
    .option('--add <file.csv...>', 'take in the rows of these tables, and answer with the whole as CSV (-o keeps it); a row of the same tools, angle and note gives way to the newer one')
    .option('--csv', 'answer with the table as CSV')
    .addHelpText('after', `
Columns of the CSV, in any order: metal, thickness_mm, v_mm, v_convention (sharp or tangent), tip_radius_mm, bend_angle_deg, deduction_mm;
and where known inside_radius_mm, pieces, spread_mm, note. Commas, or semicolons with decimal commas. A deduction is both outside lengths less the flat
length, to the mould lines up to a bend angle of 90 degrees, to the outer tangents above. \`strip\` makes rows from measured test strips.
Used by \`bend --deductions\` and \`trial --deductions\`: measured rows override every rule; other angles of the same tools take the fitted K.`)
    .action(async (path: string, options: DeductionsOptions) => {
      const added = await Promise.all((options.add ?? []).map(readDeductions));
      const rows = added.reduce(withStripRows, added.length > 0 && !existsSync(path) ? [] : await readDeductions(path));
      if (options.csv === true || added.length > 0) {
        await print(deductionsToCsv(rows), options.output);
        return;
      }
      const groups = fittedByTools(rows, metalById);
      await answer({ units: JSON_UNITS, tools: groups }, () => human(groups, options), options);
    });
