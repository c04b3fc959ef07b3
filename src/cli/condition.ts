import { extname } from 'node:path';
import type { Command } from 'commander';
import { checkSheetPdf } from '../papers/index.js';
import { type ConditionFigures, type Machine, conditionFigures, nothingSet, placeInWords, settingInWords, withCondition } from '../shop/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { positive } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { FLOOR_OPTION, type ShopOptions, floorOf, recordIn } from './shopFiles.js';
import { show } from './units.js';
import { writeWhole } from './writeFile.js';

interface ConditionOptions extends OutputOptions, ShopOptions {
  readonly length: string;
  readonly checkSheet?: string;
  readonly blank?: string;
}

/** The sheet to be filled in by hand at the machine. */
const writeBlank = async (id: string, { output, floor }: ConditionOptions): Promise<void> => {
  if (output === undefined || extname(output).toLowerCase() !== '.pdf') throw new Fault(`--blank writes a sheet to be filled in by hand: say where with -o FILE.pdf${output === undefined ? '' : ` (${output} is none)`}.`);
  const machine = (await floorOf({ ...(floor === undefined ? {} : { floor }) })).find((m) => m.id === id);
  if (machine === undefined) throw new Fault(`There is no machine '${id}' on the floor.`);
  await writeWhole(output, await checkSheetPdf(machine, null));
};

const left = (value: number | null | undefined): string => (value === null || value === undefined ? 'not known' : `+/- ${value.toFixed(3)} mm`);

const human = (machine: Machine, f: ConditionFigures, beware: readonly string[]): string => [
  `${machine.name}, ${f.asOf}: depth along a bend`,
  `  over all that was measured: ${left(f.corrected?.asIs)} as it is, ${left(f.corrected?.left)} after setting${f.corrected ? ` (${settingInWords(f) ?? nothingSet(f)})` : ''}`,
  `  ${f.length} mm in the middle: ${left(f.inTheMiddle?.asIs)} as it is, ${left(f.inTheMiddle?.left)} after setting`,
  `  ${f.length} mm where it meets least wear: ${f.elsewhere ? `${left(f.elsewhere.fit.left)} (${placeInWords(f)}); what is left bounds the promise` : 'not known'}`,
  `  the ram come back to one place: ${left(f.scatter)}; this bounds the promise`,
  `  the ram at rest: ${f.driftPerSecond === null ? 'not known' : `sinks ${f.driftPerSecond.toFixed(3)} mm in a second`}`,
  ...f.testBends.map((b) => `  test bend at ${b.load} load: ${b.spread === null ? 'not known' : `${b.spread.toFixed(1)} degrees of included angle between left, middle and right`}`),
  ...(beware.length === 0 ? [] : ['To beware of:', ...beware.map((words) => `  ${words}`)]),
  ...f.uncalibrated.map((what) => `Not calibrated: ${what}; its readings are only as good as it is.`),
  ...(f.notMeasured.length === 0 ? [] : ['Not known, so not promised:', ...f.notMeasured.map(({ what, so }) => `  ${what}: ${so}`)]),
].join('\n');

/** `condition`: what follows from a used machine's condition record, and its check sheet. */
export const conditionCommand = (): Command =>
  commandWith('condition', 'what the condition record of a used machine lets it promise (docs/condition.md)')
    .argument('[record.json]', 'the record')
    .option('--length <mm>', 'length of the work along the bed', '1000')
    .option('--check-sheet <file.pdf>', 'write the check sheet, filled')
    .option('--blank <machine>', 'in place of a record: the check sheet of this machine to be filled in by hand, with -o FILE.pdf')
    .option(...FLOOR_OPTION)
    .action(async (path: string | undefined, options: ConditionOptions) => {
      if (options.blank !== undefined) {
        if (path !== undefined || options.checkSheet !== undefined) throw new Fault('--blank goes without a record and without --check-sheet: a record fills the sheet, --blank leaves it open.');
        return writeBlank(options.blank, options);
      }
      if (path === undefined) throw new Fault('condition asks for a record (docs/condition.md), or with --blank MACHINE -o FILE.pdf for the sheet to write one on.');
      const record = await recordIn(path);
      const machine = (await floorOf({ ...(options.floor === undefined ? {} : { floor: options.floor }) })).find(({ id }) => id === record.machineId);
      if (machine === undefined) throw new Fault(`${path}: there is no machine '${record.machineId}' on the floor.`);
      const figures = conditionFigures(machine, record, positive('--length', options.length));
      if (options.checkSheet !== undefined) await writeWhole(options.checkSheet, await checkSheetPdf(machine, { record, figures }, { date: record.overhauled?.date ?? record.asFound.date, who: record.overhauled?.by ?? record.asFound.by }));
      const beware = withCondition(machine, record).beware ?? [];
      await answer({ units: JSON_UNITS, machine: machine.id, figures, beware }, () => show(options.units).words(human(machine, figures, beware)), options);
    });
