import type { Command } from 'commander';
import { fitBoard, fitColumns, fitRows } from '../fit/index.js';
import type { GeneralClass } from '../metal/index.js';
import { runFit, runOptions } from '../server/index.js';
import { csvOf } from '../shop/index.js';
import { cellFolder } from './cellFolder.js';
import { commandWith } from './commandLine.js';
import { exitCodeOf } from './exitCode.js';
import { Fault } from './fault.js';
import { fitInWords } from './fitWords.js';
import { METAL_WORDS, metalNamed } from './metalNamed.js';
import { positive, wholeNumber } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { partsOf } from './partsOf.js';
import { PART_FILE, type ReadOptions } from './readParts.js';
import { CONDITION_OPTION, FLOOR_OPTION, RACK_OPTION, type ShopOptions, asPromised, chosen, machinesIn, rackOf } from './shopFiles.js';
import { withTolerancesOf } from './tolerances.js';
import { gathered } from './wishes.js';

/** What every command that fits parts to machines is asked. */
export interface FitAskedOptions extends ReadOptions, ShopOptions {
  readonly machines: string;
  readonly own: string;
  readonly metal: string;
  readonly quantity: string;
  readonly seconds: string;
  readonly workers: string;
  readonly cache?: string;
  readonly ownMachines?: string;
  readonly ownRack?: string;
  readonly class: string;
  readonly tolerance?: readonly string[];
  readonly remedies: boolean;
  readonly options: boolean;
}

type FitOptions = OutputOptions & FitAskedOptions & { readonly csv?: boolean };

const CLASSES = { f: 'f', m: 'm', c: 'c', v: 'v', none: null } as const satisfies Readonly<Record<string, GeneralClass | null>>;

const classNamed = (name: string): GeneralClass | null => {
  if (name in CLASSES) return CLASSES[name as keyof typeof CLASSES];
  throw new Fault(`--class ${name}: ISO 2768-1 has the classes f, m, c, v; or none.`);
};

/** What `fit` and `report` are both asked. */
export const withFitOptions = (command: Command): Command => command
  .argument('<files...>', PART_FILE)
  .option('--machines <ids>', 'machines of the floor, with commas between, or all', 'all')
  .option('--own <ids>', 'machines that stand there already: their price is not counted', '')
  .option('--own-machines <file>', 'the machines that the buyer has, as columns beside ours (as `machines --json` or `machines --csv` print them)')
  .option('--own-rack <file>', "the buyer's own tools: each machine has a column more with them (as `tools --json` or `tools --csv` print them)")
  .option('--metal <id>', METAL_WORDS, 'dc01')
  .option(...FLOOR_OPTION)
  .option(...CONDITION_OPTION)
  .option(...RACK_OPTION)
  .option('--quantity <number>', 'parts made with one set-up', '1')
  .option('--class <f|m|c|v|none>', 'ISO 2768-1 class for dimensions without a tolerance of their own', 'c')
  .option('--tolerance <words>', "what dimensions must hold, plus and minus: mm or a class for all, as 0.2 or m, or for one of a part (numbers from `part`), as 'angle: d2=0.1'; may be given again", gathered)
  .option('--seconds <number>', 'processor time of the search for each cell, s', '20')
  .option('--workers <number>', 'how many cells are computed at a time', '2')
  .option('--cache <folder>', 'keep computed cells here and take them from here: what did not change is not computed again')
  .option('--no-remedies', 'do not look for what would change a no')
  .option('--no-options', 'do not work out what each option of the machines buys')
  .option('--sharp-radius <mm>', 'inside radius of bends that are drawn sharp (default: the thickness)');

/** The columns, metal and limits asked for, each checked. */
const fitAsked = async (options: FitAskedOptions) => {
  const brought = options.ownMachines === undefined ? undefined : await machinesIn(options.ownMachines);
  const { floor, own } = await asPromised(options, brought);
  const buyer = {
    ...(own !== undefined && { machines: own }),
    ...(options.ownRack !== undefined && { rack: await rackOf({ rack: options.ownRack }) }),
  };
  return {
    columns: fitColumns(chosen(options.machines, floor), await rackOf(options), buyer),
    toleranceClass: classNamed(options.class),
    owned: options.own === '' ? [] : chosen(options.own, floor, '--own').map(({ id }) => id),
    metal: await metalNamed(options.metal),
    quantity: wholeNumber('--quantity', options.quantity, 1, 1_000_000),
    seconds: positive('--seconds', options.seconds),
    workers: wholeNumber('--workers', options.workers, 1, 64),
  };
};

/** Plans and proves what was asked: the question, its board, and how much of it was computed. An interrupt ends it with what is known. */
export const fitOf = async (files: readonly string[], options: FitAskedOptions) => {
  const { owned, workers, ...asked } = await fitAsked(options);
  const { columns, metal, quantity, seconds, toleranceClass } = asked;
  const read = await partsOf(files, options);
  const [parts, notRead] = [withTolerancesOf(read.parts, options.tolerance), read.notRead];
  const stop = new AbortController();
  process.once('SIGINT', () => stop.abort());
  const question = { parts, columns, metal, quantity, seconds, asked: { remedies: options.remedies, toleranceClass } };
  const cache = options.cache === undefined ? undefined : await cellFolder(options.cache);
  const hooks = (of: string) => ({
    workers, signal: stop.signal, ...(cache && { cache }),
    onProgress: (now: { readonly done: number; readonly of: number; readonly fromCache: number }) => {
      if (process.stderr.isTTY) process.stderr.write(`\r${now.done} of ${now.of} ${of}${now.fromCache > 0 ? `, ${now.fromCache} of them known already` : ''}${now.done === now.of ? '\n' : ''}`);
    },
  });
  const run = await runFit(question, hooks('cells'));
  const bought = options.options ? await runOptions(question, run.cells, hooks('cells with an option')) : { options: [], computed: 0, fromCache: 0 };
  const board = fitBoard(parts.map(({ name, thickness, bends }) => ({ name, thickness, bends: bends.length })), columns, run.cells, owned, bought.options);
  return { question, board, notRead, computed: run.computed + bought.computed, fromCache: run.fromCache + bought.fromCache };
};

/** `fit`: many parts against many machines. */
export const fitCommand = (): Command =>
  withFitOptions(commandWith('fit', 'plan and prove parts on machines: verdicts with margins, reasons, remedies, the cheapest that makes all'))
    .option('--csv', 'the board as a table, a row for each cell')
    .addHelpText('after', '\nExit codes: 0 every part is made as it stands on at least one of the machines; 3 one at least is made on none, or only with a remedy, or is no part that a brake bends; 4 what is not made so is not decided.')
    .action(async (files: readonly string[], options: FitOptions) => {
      const { board, notRead, computed, fromCache } = await fitOf(files, options);
      process.exitCode = exitCodeOf([...board.cells.map((row) => row.map(({ verdict }) => verdict)), ...notRead.map(() => [])]);
      await answer({ units: JSON_UNITS, computed, fromCache, ...board }, () => (options.csv === true ? csvOf(fitRows(board)) : fitInWords(board, options.units)), options);
    });
