import type { Command } from 'commander';
import { checkSheetPdf } from '../papers/index.js';
import { type ConditionFigures, type Machine, conditionFigures } from '../shop/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { positive } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { FLOOR_OPTION, type ShopOptions, floorOf, recordIn } from './shopFiles.js';
import { writeWhole } from './writeFile.js';

interface ConditionOptions extends OutputOptions, ShopOptions {
  readonly length: string;
  readonly checkSheet?: string;
}

const left = (value: number | null | undefined): string => (value === null || value === undefined ? 'not known' : `+/- ${value.toFixed(3)} mm`);

const human = (machine: Machine, f: ConditionFigures): string => [
  `${machine.name}, ${f.asOf}: depth along a bend`,
  `  over all that was measured: ${left(f.corrected?.asIs)} as it is, ${left(f.corrected?.left)} after setting${f.corrected ? ` (tilt ${f.corrected.tilt.toFixed(3)} mm over 1,000 mm, crowning ${f.corrected.crowning.toFixed(3)} mm)` : ''}`,
  `  ${f.length} mm in the middle: ${left(f.inTheMiddle?.left)}`,
  f.elsewhere ? `  ${f.length} mm from ${f.elsewhere.window[0].toFixed(0)} to ${f.elsewhere.window[1].toFixed(0)} mm: ${left(f.elsewhere.fit.left)}; this bounds the promise` : `  ${f.length} mm where it meets least wear: not known`,
  `  the ram come back to one place: ${left(f.scatter)}; this bounds the promise`,
  ...(f.notMeasured.length === 0 ? [] : ['Not known, so not promised:', ...f.notMeasured.map(({ what, so }) => `  ${what}: ${so}`)]),
].join('\n');

/** `condition`: what follows from a used machine's condition record, and its check sheet. */
export const conditionCommand = (): Command =>
  commandWith('condition', 'what the condition record of a used machine lets it promise (docs/condition.md)')
    .argument('<record.json>', 'the record')
    .option('--length <mm>', 'length of the work along the bed', '1000')
    .option('--check-sheet <file.pdf>', 'write the check sheet, filled')
    .option(...FLOOR_OPTION)
    .action(async (path: string, options: ConditionOptions) => {
      const record = await recordIn(path);
      const machine = (await floorOf({ ...(options.floor === undefined ? {} : { floor: options.floor }) })).find(({ id }) => id === record.machineId);
      if (machine === undefined) throw new Fault(`${path}: there is no machine '${record.machineId}' on the floor.`);
      const figures = conditionFigures(machine, record, positive('--length', options.length));
      if (options.checkSheet !== undefined) await writeWhole(options.checkSheet, await checkSheetPdf(machine, { record, figures }, { date: record.overhauled?.date ?? record.asFound.date, who: record.overhauled?.by ?? record.asFound.by }));
      await answer({ units: JSON_UNITS, machine: machine.id, figures }, () => human(machine, figures), options);
    });
