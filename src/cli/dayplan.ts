import { extname } from 'node:path';
import type { Command } from 'commander';
import { type DayPlan, type OneLayout, PLANNED_ANEW, dayPlan, oneLayout, planAtStops, riserInWords, withRemedies } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import { dayPlanPdf, layoutInWords, stripsInWords } from '../papers/index.js';
import { threadClock } from '../server/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { commandWith } from './commandLine.js';
import { exitCodeOf } from './exitCode.js';
import { Fault } from './fault.js';
import { METAL_WORDS, metalNamed } from './metalNamed.js';
import { positive, wholeNumber } from './numbers.js';
import { partsOf } from './partsOf.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { PART_FILE, type ReadOptions } from './readParts.js';
import { FLOOR_OPTION, RACK_OPTION, type ShopOptions, chosen, floorOf, rackOf } from './shopFiles.js';
import { table } from './table.js';
import { type Show, show } from './units.js';
import { writeWhole } from './writeFile.js';

interface DayOptions extends OutputOptions, ReadOptions, ShopOptions {
  readonly machine: string;
  readonly metal: string;
  readonly pieces: string;
  readonly spares: string;
  readonly seconds: string;
  readonly oneLayout?: boolean;
  readonly bed?: string;
  readonly date?: string;
  readonly who?: string;
  readonly buyer?: string;
}

const minutes = (seconds: number): string => `${(seconds / 60).toFixed(0)} min`;

const layoutWords = (plan: DayPlan, layout: NonNullable<DayPlan['layout']>, s: Show): readonly string[] => [
  layoutInWords(layout, plan, s.unit),
  table([{ heading: 'station' }, { heading: 'part' }, { heading: 'steps' }], layout.stations.flatMap(({ station, parts }) => parts.map(({ part, steps }) => [station, part, steps.join(', ')]))),
  PLANNED_ANEW,
  s.words(layout.model),
];

const kitWords = (it: DayPlan['kit'][number], s: Show): string =>
  it.kind === 'riser' ? `risers ${s.words(riserInWords(it, (mm) => `${Number(mm.toFixed(1))} mm`))}`
    : `${it.kind} ${it.name}: ${it.needed} of ${s.words(`${it.length} mm`)}${it.ear ? ` ear ${it.ear}` : ''} (${it.atHand} at hand)`;

const inWords = (plan: DayPlan, s: Show): string => [
  `Demonstration on ${plan.machine.name}: ${minutes(plan.seconds)} of work, ${plan.changes} rows of tools built, altered or taken off (${plan.changesAsGiven} in the order given).`,
  '',
  table(
    [{ heading: '' }, { heading: 'part' }, { heading: 'to the bed' }, { heading: `blanks, ${s.unit}` }, { heading: 'starts after' }, { heading: 'pieces take' }],
    plan.stops.map(({ part, changes, blanks, from, seconds }, k) => [
      String(k + 1), part, changes.map(({ what, station, kind }) => `${station} ${kind} ${what}`).join(', '),
      `${blanks.pieces} + ${blanks.spares} of ${blanks.length === null ? 'its drawing' : `${s.bare(blanks.length, 1)} x ${s.bare(blanks.width!, 1)}`}`, minutes(from), `${seconds.pieces.toFixed(0)} s`,
    ]),
  ),
  ...(plan.left.length > 0 ? ['', 'Not planned in:', ...plan.left.map(({ part, words }) => `  ${part}: ${s.words(words)}`)] : []),
  ...(plan.notRead.length > 0 ? ['', 'Not read:', ...plan.notRead.map(({ part, sentence }) => `  ${part}: ${s.words(sentence)}`)] : []),
  ...(plan.layout ? ['', ...layoutWords(plan, plan.layout, s)] : []),
  '',
  'To lay out:',
  ...plan.kit.map((it) => `  ${kitWords(it, s)}`),
  '',
  'Test strips:',
  ...plan.stops.map((stop) => `  ${stop.part}: ${s.words(stripsInWords(stop).split('\n').join(', '))}`),
  '',
  'To check beforehand:',
  ...plan.checks.map((words) => `  ${s.words(words)}`),
  '',
  s.words(plan.model),
  CAVEAT,
].join('\n');

/** `dayplan`: several parts shown on one machine in a day; what is not made as it stands is left out and told. */
export const dayplanCommand = (): Command =>
  commandWith('dayplan', 'plan a demonstration of several parts on one machine: order, tools, blanks, strips, checks, times')
    .argument('<files...>', PART_FILE)
    .requiredOption('--machine <id>', 'a machine of the floor (see `machines`)')
    .option('--metal <id>', METAL_WORDS, 'dc01')
    .option(...FLOOR_OPTION)
    .option(...RACK_OPTION)
    .option('--pieces <number>', 'pieces to be bent of each part', '1')
    .option('--spares <number>', 'spare blanks of each part', '2')
    .option('--seconds <number>', 'computing time of the search for each part', '20')
    .option('--one-layout', 'all parts on one layout of stations with the least length of bed')
    .option('--bed <mm>', 'with --one-layout: the length of bed that it may take, about the middle (default: all of it)')
    .option('--buyer <text>', 'who comes to see it')
    .option('--who <text>', 'who shows it')
    .option('--date <text>', 'the day printed (default: today)')
    .option('--sharp-radius <mm>', 'inside radius of bends that are drawn sharp (default: the thickness)')
    .addHelpText('after', '\nA part that is not made as it stands, or that no brake bends, is left out and told with its reason and what would make it (exit code 3; 4 where all that is left out is not decided).\n-o FILE.pdf writes it on paper, -o FILE.json its data.')
    .action(async (files: readonly string[], options: DayOptions) => {
      const { output, who, buyer, ...spoken } = options;
      const format = output === undefined ? undefined : extname(output).toLowerCase();
      if (format !== undefined && format !== '.pdf' && format !== '.json') throw new Fault(`${output}: a day plan is written as .pdf or .json.`);
      const [machine, ...more] = chosen(options.machine, await floorOf(options), '--machine');
      if (machine === undefined || more.length > 0) throw new Fault(`--machine ${options.machine}: a day is planned on one machine; ${1 + more.length} were named.`);
      const metal = await metalNamed(options.metal);
      const rack = await rackOf(options);
      const pieces = wholeNumber('--pieces', options.pieces, 1, 1000);
      const spares = wholeNumber('--spares', options.spares, 0, 1000);
      const seconds = positive('--seconds', options.seconds);
      const { parts, notRead } = await partsOf(files, options);
      const bed = options.bed === undefined ? undefined : positive('--bed', options.bed);
      if (bed !== undefined && options.oneLayout !== true) throw new Fault('--bed says how much of the bed one layout may take: it goes with --one-layout.');
      const hooks = { now: threadClock() };
      const inputs = parts.map((part): TrialInput => ({ part, machine, rack, metal, quantity: pieces, limits: { seconds } }));
      let layout: OneLayout | undefined;
      const trials: Trial[] = [];
      if (options.oneLayout === true) {
        const stood = await oneLayout({ inputs, ...(bed === undefined ? {} : { bed }) }, hooks);
        if (!stood.ok) throw new Fault(stood.sentence, 3);
        layout = stood.value;
        trials.push(...layout.trials);
        for (const { input, trial } of layout.without) trials.push(await withRemedies(inputs[input]!, trial, hooks));
      } else {
        for (const input of inputs) trials.push(await withRemedies(input, await planAtStops(input, hooks), hooks));
      }
      const made = dayPlan({ trials, rack, pieces, spares, notRead, ...(layout && { layout }) });
      if (!made.ok) throw new Fault(made.sentence, 3);
      const value = { units: JSON_UNITS, ...made.value };
      if (output !== undefined) {
        const paper = { date: options.date ?? new Date().toISOString().slice(0, 10), units: options.units ?? 'mm', ...(who === undefined ? {} : { who }), ...(buyer === undefined ? {} : { buyer }) } as const;
        await writeWhole(output, format === '.json' ? `${JSON.stringify(value, null, 2)}\n` : await dayPlanPdf(made.value, trials, paper));
      }
      await answer(value, () => inWords(made.value, show(spoken.units)), spoken);
      process.exitCode = exitCodeOf([...trials.map(({ verdict }) => [verdict]), ...notRead.map(() => [])]);
    });
