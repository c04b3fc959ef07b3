import { type Command, Option } from 'commander';
import {
  CAVEAT, type AirBend, type AirBendResult, type AirBendSetup, type DeductionAnswer, airBend, airBendAtDepth, closedForms, deductionFor, otherStrokes, rangeInWords, reliefHole, stockRange,
} from '../forming/index.js';
import type { ThicknessClass } from '../metal/index.js';
import { type SetupOptions, bendLength, readDeductions, setupOf, withSetup } from './bendSetup.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { measure, positive } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { table } from './table.js';
import { show } from './units.js';

interface BendOptions extends OutputOptions, SetupOptions {
  readonly length: string;
  readonly angle?: string;
  readonly depth?: string;
  readonly deductions?: string;
  readonly width: string;
  readonly thicknessClass?: ThicknessClass;
  readonly range?: boolean;
}

const solved = (setup: AirBendSetup, options: BendOptions): AirBendResult => {
  if ((options.angle === undefined) === (options.depth === undefined)) throw new Fault('--angle and --depth: give one of the two.');
  return options.angle === undefined
    ? airBendAtDepth({ ...setup, depth: measure('--depth', options.depth!, 0.001, 3000, 'mm') })
    : airBend({ ...setup, bendAngle: measure('--angle', options.angle, 1, 180, 'degrees of bend angle') });
};

const rangeOf = (setup: AirBendSetup, bend: AirBend, options: BendOptions) => {
  const result = stockRange({ ...setup, bendAngle: bend.bendAngleReleased }, positive('--width', options.width), 'depth from touch', options.thicknessClass);
  return result.ok ? result.value : { sentence: result.reason.sentence };
};

/** The deduction to use: the shop's own where its table has one. */
const deductionOf = async (setup: AirBendSetup, bend: AirBend, path: string): Promise<DeductionAnswer> => {
  const { metal, thickness, v, vConvention, tipRadius } = setup;
  return deductionFor(await readDeductions(path), { metal: metal.id, thickness, v, vConvention, tipRadius, bendAngle: bend.bendAngleReleased }, bend);
};

interface Worked {
  readonly setup: AirBendSetup;
  readonly bend: AirBend;
  readonly length: number;
  readonly range: ReturnType<typeof rangeOf> | undefined;
  readonly own: DeductionAnswer | undefined;
}

const human = ({ setup, bend, length, range, own }: Worked, options: OutputOptions): string => {
  const s = show(options.units);
  const deg = (v: number): string => `${v.toFixed(2)} deg`;
  const rows: string[][] = [
    ['depth from first touch', s.length(bend.depth, 3)],
    ['bend angle under load / released', `${deg(bend.bendAngleUnderLoad)} / ${deg(bend.bendAngleReleased)}`],
    ['included angle under load / released', `${deg(bend.includedAngleUnderLoad)} / ${deg(bend.includedAngleReleased)}`],
    ['springback', deg(bend.springback)],
    ['inside radius (of the arc for the flat length)', s.length(bend.insideRadius)],
    ['least inside radius under the nose', s.length(bend.leastRadius)],
    ['peak force', `${((bend.peakForcePerLength * length) / 1000).toFixed(1)} kN (${bend.peakForcePerLength.toFixed(1)} N/mm)`],
    ['force at the end of the stroke', `${((bend.forcePerLength * length) / 1000).toFixed(1)} kN (${bend.forcePerLength.toFixed(1)} N/mm)`],
    ['flat length of the arc (K)', `${s.length(bend.allowance)} (${bend.kFactor.toFixed(3)})`],
    [`deduction, to the ${bend.deductionConvention}`, s.length(bend.deduction)],
    ['smallest outside flange for this V', s.length(bend.minFlange)],
    ['V between sharp corners / tangent points', `${s.bare(bend.vSharp)} / ${s.length(bend.vTangent)}`],
  ];
  const lines = [
    `${setup.metal.name}, ${s.length(setup.thickness)}, V ${s.bare(setup.v)} (${setup.vConvention}), tip ${s.bare(setup.tipRadius)}, shoulder ${s.bare(setup.shoulderRadius)}:`,
    '',
    table([{ heading: 'by the strip calculation' }, { heading: '' }], rows),
    '',
    table(
      [{ heading: 'by rule' }, { heading: '', right: true }, { heading: 'source' }],
      closedForms(setup, bend).map((c) => [c.what, c.unit === 'mm' ? s.length(c.value) : `${c.value.toFixed(2)} ${c.unit}`, `${c.source} [${c.mark}]`]),
    ),
  ];
  lines.push('', `Other strokes in this sheet, N/mm, by factors of common practice without a source: ${otherStrokes(bend.peakForcePerLength).map((o) => `${o.stroke} ${o.least.toFixed(0)} to ${o.most.toFixed(0)}`).join('; ')}.`);
  const relief = reliefHole(setup.metal, setup.thickness, bend.insideRadius);
  if (relief !== null) lines.push('', `Relief hole where two such bends meet in a corner: ${s.length(relief.diameter)} or more, ${s.bare(relief.pastTangents[0])} to ${s.length(relief.pastTangents[1])} past the inner tangent lines (${relief.source}).`);
  if (own !== undefined) lines.push('', `The shop's own: deduction ${s.length(own.deduction)}, flat length of the arc ${s.length(own.allowance)}; ${own.words}.`);
  if (range !== undefined) {
    lines.push('', 'sentence' in range
      ? `Stock at the ends of its range: ${range.sentence}`
      : `Stock at the ends of its range. ${rangeInWords(range, { angle: (value) => `${value.toFixed(1)} deg`, length: s.length, bare: s.bare })}. ${range.words} Thickness by ${range.thicknessSource}; strength by ${range.strengthSource}.`);
  }
  for (const warning of bend.warnings) lines.push('', `Warning: ${warning}`);
  return [...lines, '', CAVEAT].join('\n');
};

/** `bend`: one air bend by the strip calculation, by the angle wanted or by the depth. */
export const bendCommand = (): Command =>
  withSetup(commandWith('bend', 'depth, force, radius, springback and flat length of one air bend'))
    .requiredOption('--length <mm>', 'length of the bend')
    .option('--angle <degrees>', 'bend angle wanted after release (0 flat, 90 square)')
    .option('--depth <mm>', 'or the depth of the stroke from first touch')
    .option('--deductions <file.csv>', "the shop's measured deductions (see `deductions --help`): they override the calculation's")
    .option('--range', 'with --json too: what the scatter of the stock as bought does to angle, force and flange')
    .option('--width <mm>', 'width of the sheet as bought, for its thickness tolerance', '1250')
    .addOption(new Option('--thickness-class <class>', "class of its thickness tolerance: EN 10051's or EN 10029's, S for EN 10131's special one").choices(['A', 'B', 'C', 'D', 'S']))
    .action(async (options: BendOptions) => {
      const setup = await setupOf(options);
      const length = bendLength(options.length);
      const result = solved(setup, options);
      if (!result.ok) {
        if (result.reason.code === 'input') throw new Fault(result.reason.sentence);
        const { reason } = result;
        await answer({ units: JSON_UNITS, refused: reason.code, reason, warnings: [reason.sentence] }, () => reason.sentence, options);
        process.exitCode = 3;
        return;
      }
      const bend = result.value;
      // a metal given by its curve alone has no band
      const wanted = options.range === true || (options.json !== true && options.curve === undefined);
      const range = wanted ? rangeOf(setup, bend, options) : undefined;
      const own = options.deductions === undefined ? undefined : await deductionOf(setup, bend, options.deductions);
      await answer(
        {
          units: JSON_UNITS,
          ...bend,
          ...(own === undefined ? {} : { deduction: own.deduction, allowance: own.allowance, deductionFrom: own }),
          vConvention: setup.vConvention,
          peakForce: bend.peakForcePerLength * length,
          force: bend.forcePerLength * length,
          byRule: closedForms(setup, bend),
          otherStrokes: otherStrokes(bend.peakForcePerLength),
          reliefHole: reliefHole(setup.metal, setup.thickness, bend.insideRadius),
          ...(range === undefined ? {} : { range }),
        },
        () => human({ setup, bend, length, range, own }, options),
        options,
      );
    });
