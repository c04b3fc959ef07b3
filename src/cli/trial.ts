import { extname } from 'node:path';
import type { Command } from 'commander';
import { type Alternative, alternatives, atStops, planAtStops, strokesByEye } from '../fit/index.js';
import { readBlankDxf } from '../intake/index.js';
import type { GeneralClass } from '../metal/index.js';
import type { Machine } from '../shop/index.js';
import type { TrialInput } from '../trial/index.js';
import { readDeductions } from './bendSetup.js';
import { commandWith } from './commandLine.js';
import { exitCodeOf } from './exitCode.js';
import { Fault } from './fault.js';
import { METAL_WORDS, metalNamed } from './metalNamed.js';
import { positive, wholeNumber } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer, print } from './print.js';
import { readBytes } from './readFile.js';
import { PART_FILE, type ReadOptions, readOnePart, readingOptions } from './readParts.js';
import { CONDITION_OPTION, FLOOR_OPTION, RACK_OPTION, type ShopOptions, floorOf, rackOf } from './shopFiles.js';
import { boardInWords, summaryOf, trialInWords } from './trialWords.js';
import { withTolerances } from './tolerances.js';
import { gathered, inTwoOf, wishesOf } from './wishes.js';
import { writeWhole } from './writeFile.js';

/** What the demonstration bends unless told otherwise. */
const DEFAULT_METAL = 'dc01';

interface TrialOptions extends OutputOptions, ReadOptions, ShopOptions {
  readonly part?: string;
  readonly machine: string;
  readonly metal: string;
  readonly blank?: string;
  readonly deductions?: string;
  readonly quantity: string;
  readonly seconds?: string;
  readonly class?: string;
  readonly tolerance?: readonly string[];
  readonly others?: string;
  readonly keep?: string;
  readonly lock?: readonly string[];
  readonly forbid?: readonly string[];
  readonly inTwo?: readonly string[];
  readonly onePerson?: string;
  readonly helpAtHand?: boolean;
}

const machineNamed = (id: string, floor: readonly Machine[]): Machine => {
  const found = floor.find((machine) => machine.id === id);
  if (found) return found;
  throw new Fault(`--machine ${id}: no such machine on the floor; there are ${floor.map((machine) => machine.id).join(', ')} and all.`);
};

const CLASSES: readonly GeneralClass[] = ['f', 'm', 'c', 'v'];

const classNamed = (name: string): GeneralClass => {
  const found = CLASSES.find((cls) => cls === name);
  if (found) return found;
  throw new Fault(`--class ${name}: ISO 2768-1 has the classes ${CLASSES.join(', ')}.`);
};

const checkOutput = (output: string | undefined, all: boolean): void => {
  if (output === undefined) return;
  const formats = all ? ['.json'] : ['.pdf', '.json'];
  if (!formats.includes(extname(output).toLowerCase())) {
    throw new Fault(`${output}: ${all ? 'the list over all machines is written as .json' : 'a trial is written as .pdf (its set-up sheet) or .json'}.`);
  }
};

/** A blank already cut, in its drawing's own frame: the planner lays the part's own blank over it. */
const cutBlank = async (path: string): Promise<NonNullable<TrialInput['blank']>> => {
  const read = readBlankDxf(await readBytes(path));
  if (!read.ok) throw new Fault(`${path}: ${read.failure.sentence}`);
  return read.value;
};

const inputWithout = async (file: string, options: TrialOptions): Promise<Omit<TrialInput, 'machine'>> => {
  const metal = await metalNamed(options.metal);
  const quantity = wholeNumber('--quantity', options.quantity, 1, 1_000_000);
  const seconds = options.seconds === undefined ? undefined : positive('--seconds', options.seconds);
  const rack = await rackOf(options);
  const part = withTolerances(await readOnePart(file, options), options.tolerance);
  return {
    part,
    rack,
    metal,
    quantity,
    ...(options.blank === undefined ? {} : { blank: await cutBlank(options.blank) }),
    ...(options.deductions === undefined ? {} : { deductions: await readDeductions(options.deductions) }),
    ...(options.class === undefined ? {} : { toleranceClass: classNamed(options.class) }),
    ...(seconds === undefined && options.onePerson === undefined ? {} : {
      limits: {
        ...(seconds === undefined ? {} : { seconds }),
        ...(options.onePerson === undefined ? {} : { onePerson: positive('--one-person', options.onePerson), help: options.helpAtHand === false ? ('none' as const) : ('at hand' as const) }),
      },
    }),
    ...wishesOf(options),
    ...(options.inTwo === undefined ? {} : { inTwo: options.inTwo.map(inTwoOf) }),
  };
};

const othersInWords = (others: readonly Alternative[]): string =>
  others.map(({ without, trial, more }) => `\n${more >= 0 ? '+' : '-'}${Math.abs(more).toFixed(1)} s a part, ${without}: ${trial.steps.map((s) => s.bends.join(' and ')).join(', ')}; ${trial.stations.length} station${trial.stations.length > 1 ? 's' : ''}.`).join('');

const hooks = { now: () => performance.now() };

const one = async (file: string, options: TrialOptions): Promise<void> => {
  const { output, ...spoken } = options;
  const machine = machineNamed(options.machine, await floorOf(options));
  const input = { ...(await inputWithout(file, options)), machine };
  const trial = await planAtStops(input, hooks);
  const others = options.others === undefined || trial.verdict !== 'makes' ? [] : await alternatives(strokesByEye(trial) === 0 ? atStops(input) : input, trial, wholeNumber('--others', options.others, 1, 50), hooks);
  process.exitCode = exitCodeOf([[trial.verdict]]);
  const value = { units: JSON_UNITS, ...trial, ...(options.others === undefined ? {} : { others }) };
  if (output !== undefined) {
    const asJson = extname(output).toLowerCase() === '.json';
    // the papers bring their own lettering along
    const { setupSheetPdf } = await import('../papers/index.js');
    await writeWhole(output, asJson ? `${JSON.stringify(value, null, 2)}\n` : await setupSheetPdf(trial, { units: options.units ?? 'mm' }));
  }
  await answer(value, () => `${trialInWords(trial, options.units)}${othersInWords(others)}`, spoken);
};

const everyMachine = async (file: string, options: TrialOptions): Promise<void> => {
  const floor = await floorOf(options);
  const rest = await inputWithout(file, options);
  const summaries = [];
  for (const machine of floor) summaries.push(summaryOf(await planAtStops({ ...rest, machine }, hooks)));
  process.exitCode = exitCodeOf([summaries.map(({ verdict }) => verdict)]);
  const json = JSON.stringify(summaries, null, 2);
  if (options.output !== undefined) await writeWhole(options.output, `${json}\n`);
  await print(options.json === true ? json : boardInWords(summaries, options.units));
};

/** `trial`: one part on one machine, or on every machine of the floor. */
export const trialCommand = (): Command =>
  readingOptions(commandWith('trial', 'plan and prove one part on one machine, or on all of the floor').argument('<file>', PART_FILE))
    .requiredOption('--machine <id>', 'a machine of the floor (see `machines`), or all')
    .option('--part <number>', 'which body of the file, where it holds several (numbers from `part`)')
    .option('--metal <id>', METAL_WORDS, DEFAULT_METAL)
    .option('--blank <file.dxf>', 'a blank already cut: stops are taken from it, each flange\'s miss is said')
    .option('--deductions <file.csv>', "the shop's measured deductions (columns metal, thickness_mm, v_mm, v_convention, tip_radius_mm, bend_angle_deg, deduction_mm): they override the calculation")
    .option(...FLOOR_OPTION)
    .option(...CONDITION_OPTION)
    .option(...RACK_OPTION)
    .option('--quantity <number>', 'parts made with one set-up', '1')
    .option('--class <f|m|c|v>', 'tolerance class of ISO 2768-1 that every dimension must hold')
    .option('--tolerance <words>', 'what the dimensions must hold, plus and minus: mm or a class for all, as 0.2 or m, or for one (numbers from `part`), as d2=0.1; may be given again', gathered)
    .option('--seconds <number>', 'computing time for the search')
    .option('--others <number>', 'look for other ways too: so many changes to the best plan are tried, each planned and proven again')
    .option('--one-person <kg>', 'what this shop lets one person handle (none by default; local codes decide): a heavier piece asks two persons or a lifting aid')
    .option('--no-help-at-hand', 'with --one-person: a heavier piece is refused')
    .option('--keep <bends>', 'keep these bends in this order, as b3,b1')
    .option('--lock <step=bend>', 'make this bend at this step, as 1=b3; may be given again', gathered)
    .option('--forbid <words>', 'a seat or punch not to be used, as "b1 plate 2" (that plate to the gauge) or "b1 punch ID"; may be given again', gathered)
    .option('--in-two <bend=degrees>', 'make this bend in two passes: begun to so many degrees of bend angle (b2=45; b2 alone is half), finished by a later stroke; may be given again', gathered)
    .addHelpText('after', '\n-o FILE.pdf writes the set-up sheet (reasons and remedies where there is no plan), -o FILE.json the whole trial.\nExit codes: 0 makes (with all: at least one machine does), 3 does not make or only with a remedy, 4 not decided (with all: none makes it and one at least is not decided).')
    .action(async (file: string, options: TrialOptions) => {
      const all = options.machine === 'all';
      checkOutput(options.output, all);
      await (all ? everyMachine(file, options) : one(file, options));
    });
