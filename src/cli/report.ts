import { extname } from 'node:path';
import type { Command } from 'commander';
import { type FitBoard, fitBoard, fitColumns, fitTrial, walkChoice } from '../fit/index.js';
import { buyersReportPdf, type ReportData, reportPart } from '../papers/index.js';
import { runFit } from '../server/index.js';
import type { TrialInput } from '../trial/index.js';
import { cellFolder } from './cellFolder.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { type FitAskedOptions, fitAsked, partsOf } from './fit.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { PART_FILE } from './readParts.js';
import { FLOOR_OPTION, RACK_OPTION } from './shopFiles.js';
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
  commandWith('report', "plan and prove parts on machines and write the buyer's report")
    .argument('<files...>', PART_FILE)
    .option('--machines <ids>', 'machines of the floor, with commas between, or all', 'all')
    .option('--own <ids>', 'machines that stand there already: their price is not counted', '')
    .option('--metal <id>', 'the sheet (see `metals`)', 'dc01')
    .option(...FLOOR_OPTION)
    .option(...RACK_OPTION)
    .option('--quantity <number>', 'parts made with one set-up', '1')
    .option('--seconds <number>', 'computing time of the search for each part on each machine', '20')
    .option('--workers <number>', 'how many are computed at a time', '2')
    .option('--cache <folder>', 'keep what was computed here and take it from here')
    .option('--walk <part>', 'the part to be shown stroke by stroke, by its name')
    .option('--buyer <text>', 'for whom')
    .option('--who <text>', 'who hands it over')
    .option('--date <text>', 'the date printed (default: today)')
    .option('--delivery <text>', 'printed as typed')
    .option('--warranty <text>', 'printed as typed')
    .option('--remarks <text>', 'printed as typed')
    .option('--sharp-radius <mm>', 'inside radius of bends that are drawn sharp (default: the thickness)')
    .addHelpText('after', '\n-o FILE.pdf writes the report; --json, or -o FILE.json, what it is made from.')
    .action(async (files: readonly string[], options: ReportOptions) => {
      const { output } = options;
      const format = output === undefined ? undefined : extname(output).toLowerCase();
      if (format !== undefined && format !== '.pdf' && format !== '.json') throw new Fault(`${output}: the report is written as .pdf or .json.`);
      if (output === undefined && options.json !== true) throw new Fault('Say where to write the report: -o FILE.pdf (or --json for its data).');
      const { machines, owned, metal, quantity, seconds, workers, rack } = await fitAsked(options);
      const parts = await partsOf(files, options);
      const columns = fitColumns(machines, rack);
      const run = await runFit({ parts, columns, metal, quantity, seconds, asked: { remedies: true } }, {
        workers, ...(options.cache === undefined ? {} : { cache: await cellFolder(options.cache) }),
        onProgress: ({ done, of }) => {
          if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${of} planned${done === of ? '\n' : ''}`);
        },
      });
      const board = fitBoard(parts.map(({ name, thickness, bends }) => ({ name, thickness, bends: bends.length })), columns, run.cells, owned);
      const [p, m] = walkOf(board, options.walk) ?? [];
      const input: TrialInput | null = p === undefined || m === undefined ? null : { part: parts[p]!, machine: machines[m]!, rack, metal, quantity, limits: { seconds } };
      const again = input ? await fitTrial(input, { remedies: false }, { now: () => performance.now() }) : null;
      const walk = again?.verdict === 'makes' ? again : null;
      const data: ReportData = {
        board, machines, rack: { name: rack.name, demo: rack.demo }, metal: { id: metal.id, name: metal.name }, quantity, walk, demonstrated: [],
        parts: parts.map((part, k) => reportPart(part, walk && k === p ? walk : undefined)),
        typed: typedOf(options), units: options.units ?? 'mm',
      };
      if (output !== undefined && format === '.pdf') {
        await writeWhole(output, await buyersReportPdf(data));
        if (options.json !== true) return;
      }
      await answer({ unitsOfNumbers: JSON_UNITS, ...data }, () => '', { ...options, json: true, ...(format === '.json' ? { output: output! } : { output: undefined }) } as OutputOptions);
    });
