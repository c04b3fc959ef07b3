import { extname } from 'node:path';
import type { Command } from 'commander';
import { type FitBoard, plannedAgain, racksNamed, walkChoice } from '../fit/index.js';
import { buyersReportPdf, type ReportData, reportPart } from '../papers/index.js';
import { threadClock } from '../server/index.js';
import type { TrialInput } from '../trial/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { type FitAskedOptions, fitOf, withFitOptions } from './fit.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { writeWhole } from './writeFile.js';

interface ReportOptions extends OutputOptions, FitAskedOptions {
  readonly walk?: string;
  readonly date?: string;
  readonly who?: string;
  readonly buyer?: string;
  readonly delivery?: string;
  readonly warranty?: string;
  readonly remarks?: string;
}

/** The part asked for and its column, or the most telling one. */
const walkOf = (board: FitBoard, asked: string | undefined): ReturnType<typeof walkChoice> => {
  const parts = [...board.parts.keys()].filter((p) => asked === undefined || board.parts[p]!.name === asked);
  if (parts.length === 0) throw new Fault(`--walk ${asked}: no such part; there are ${board.parts.map(({ name }) => name).join(', ')}.`);
  return walkChoice(board, parts);
};

const typedOf = ({ date, who, buyer, delivery, warranty, remarks }: ReportOptions): ReportData['typed'] => ({
  date: date ?? new Date().toISOString().slice(0, 10),
  ...(who === undefined ? {} : { who }), ...(buyer === undefined ? {} : { buyer }), ...(delivery === undefined ? {} : { delivery }),
  ...(warranty === undefined ? {} : { warranty }), ...(remarks === undefined ? {} : { remarks }),
});

/** `report`: the buyer's report over parts and machines. */
export const reportCommand = (): Command =>
  withFitOptions(commandWith('report', "plan and prove parts on machines and write the buyer's report"))
    .option('--walk <part>', 'the part to be shown stroke by stroke, by its name')
    .option('--buyer <text>', 'for whom')
    .option('--who <text>', 'who hands it over')
    .option('--date <text>', 'the date printed (default: today)')
    .option('--delivery <text>', 'printed as typed')
    .option('--warranty <text>', 'printed as typed')
    .option('--remarks <text>', 'printed as typed')
    .addHelpText('after', '\n-o FILE.pdf writes the report; --json, or -o FILE.json, what it is made from.')
    .action(async (files: readonly string[], options: ReportOptions) => {
      const { output } = options;
      const format = output === undefined ? undefined : extname(output).toLowerCase();
      if (format !== undefined && format !== '.pdf' && format !== '.json') throw new Fault(`${output}: the report is written as .pdf or .json.`);
      if (output === undefined && options.json !== true) throw new Fault('Say where to write the report: -o FILE.pdf (or --json for its data).');
      const { question, board, notRead } = await fitOf(files, options);
      const { parts, columns, metal, quantity, seconds, asked } = question;
      const [p, m] = walkOf(board, options.walk) ?? [];
      const input: TrialInput | null = p === undefined || m === undefined ? null : { part: parts[p]!, machine: columns[m]!.machine, rack: columns[m]!.rack, metal, quantity, limits: { seconds } };
      const walk = input && (await plannedAgain(input, board.cells[p!]![m!]!, asked, { now: threadClock() }));
      if (walk === null) process.stderr.write(`No part is shown stroke by stroke: ${input ? `the plan of ${input.part.name} on ${input.machine.name} was not found again within ${seconds} s` : `none of these machines makes ${options.walk ?? 'any of the parts'}`}.\n`);
      const data: ReportData = {
        board, machines: columns.map(({ machine }) => machine), racks: racksNamed(columns), metal: { id: metal.id, name: metal.name }, quantity, walk, demonstrated: [], notRead,
        parts: parts.map((part, k) => reportPart(part, walk && k === p ? walk : undefined)),
        typed: typedOf(options), units: options.units ?? 'mm',
      };
      if (output !== undefined && format === '.pdf') {
        await writeWhole(output, await buyersReportPdf(data));
        if (options.json !== true) return;
      }
      await answer({ unitsOfNumbers: JSON_UNITS, ...data }, () => '', { ...options, json: true, ...(format === '.json' ? { output: output! } : { output: undefined }) } as OutputOptions);
    });
