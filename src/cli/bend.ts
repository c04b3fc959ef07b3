import { type Command, Option } from 'commander';
import {
  type AirBend, type AirBendResult, type AirBendSetup, airBend, airBendAtDepth, bendRange, closedForms, USUAL_FRICTION,
} from '../forming/index.js';
import {
  type HardeningCurve, type Metal, gaugeThickness, metalById, metals, proofStress, tensileOf, thicknessTolerance,
} from '../metal/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { positive, wholeNumber } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { table } from './table.js';
import { show } from './units.js';

interface BendOptions extends OutputOptions {
  readonly thickness?: string;
  readonly gauge?: string;
  readonly length: string;
  readonly v: string;
  readonly vConvention: 'sharp' | 'tangent';
  readonly dieAngle: string;
  readonly shoulder: string;
  readonly tip: string;
  readonly metal?: string;
  readonly curve?: string;
  readonly modulus?: string;
  readonly poisson?: string;
  readonly friction: string;
  readonly angle?: string;
  readonly depth?: string;
  readonly width: string;
  readonly range?: boolean;
}

const number = (option: string, typed: string | undefined): number => {
  const value = Number(typed);
  if (typed === undefined || typed.trim() === '' || !Number.isFinite(value)) throw new Fault(`${option} ${typed ?? ''}: a number is wanted.`);
  return value;
};

/** swift:K,n,e0 or hollomon:K,n or points:strain/stress,strain/stress,... (true stress in MPa, plastic strain). */
const curveOf = (typed: string): HardeningCurve => {
  const [kind, rest = ''] = typed.split(':');
  const parts = rest.split(',');
  const wrong = new Fault(`--curve ${typed}: swift:K,n,e0 or hollomon:K,n or points:strain/stress,strain/stress,... is wanted (K and stress in MPa).`);
  const figures = parts.map(Number);
  const good = (count: number): boolean => figures.length === count && figures.every((v) => Number.isFinite(v) && v > 0);
  if (kind === 'swift' && good(3)) return { kind, k: figures[0]!, n: figures[1]!, e0: figures[2]! };
  if (kind === 'hollomon' && good(2) && figures[1]! < 1) return { kind, k: figures[0]!, n: figures[1]! };
  if (kind === 'points') {
    const points = parts.map((p) => p.split('/').map(Number) as [number, number]);
    const rising = points.every(([e, s], i) => Number.isFinite(e) && s > 0 && (i === 0 ? e === 0 : e > points[i - 1]![0]));
    if (points.length >= 2 && rising) return { kind, points };
  }
  throw wrong;
};

const metalOf = (options: BendOptions): Metal => {
  if ((options.metal === undefined) === (options.curve === undefined)) throw new Fault('--metal and --curve: give one of the two.');
  if (options.metal !== undefined) {
    const found = metalById(options.metal);
    if (found === undefined) throw new Fault(`--metal ${options.metal}: no such metal; there are ${metals.map((m) => m.id).join(', ')}.`);
    return found;
  }
  const curve = curveOf(options.curve!);
  if (options.modulus === undefined || options.poisson === undefined) throw new Fault('--curve: --modulus and --poisson are wanted with it.');
  const poisson = number('--poisson', options.poisson);
  if (!(poisson >= 0 && poisson < 0.5)) throw new Fault(`--poisson ${options.poisson}: a number from 0 to under 0.5 is wanted.`);
  const source = 'given on the command line';
  const band = (typical: number) => ({ min: typical, max: typical, typical, bound: 'none', mark: 'measured', source }) as const;
  return {
    id: 'given', name: 'metal given by its curve', family: 'mild steel', temper: '', demo: false, density: 0,
    modulus: positive('--modulus', options.modulus), poisson, elasticSource: { mark: 'measured', source },
    curve, curveSource: { mark: 'measured', source }, tensile: band(tensileOf(curve).strength), yield: band(proofStress(curve)),
    minRadius: { kind: 'factor', across: 0, along: 0, mark: 'measured', source }, gauge: 'manufacturers standard',
    thicknessStandard: 'none', thickness: [0, Infinity],
  };
};

const thicknessOf = (options: BendOptions, metal: Metal): number => {
  if ((options.thickness === undefined) === (options.gauge === undefined)) throw new Fault('--thickness and --gauge: give one of the two.');
  if (options.thickness !== undefined) return positive('--thickness', options.thickness);
  const gauge = gaugeThickness(metal.gauge, wholeNumber('--gauge', options.gauge!, 0, 99));
  if (gauge === null) throw new Fault(`--gauge ${options.gauge!}: not in the ${metal.gauge} gauge of ${metal.name}.`);
  return gauge.thickness;
};

const solved = (setup: AirBendSetup, options: BendOptions): AirBendResult => {
  if ((options.angle === undefined) === (options.depth === undefined)) throw new Fault('--angle and --depth: give one of the two.');
  return options.angle === undefined
    ? airBendAtDepth({ ...setup, depth: positive('--depth', options.depth!) })
    : airBend({ ...setup, bendAngle: positive('--angle', options.angle) });
};

const rangeOf = (setup: AirBendSetup, bend: AirBend, options: BendOptions) => {
  const width = positive('--width', options.width);
  const { metal } = setup;
  const tolerance = thicknessTolerance(metal.thicknessStandard, setup.thickness, width) ?? { minus: 0, plus: 0, source: 'no thickness tolerance known for it' };
  const result = bendRange({ ...setup, bendAngle: bend.bendAngleReleased }, { thickness: tolerance, held: 'depth from touch' });
  return result.ok
    ? { ...result.value, nominal: undefined, thicknessSource: tolerance.source, strengthSource: metal.tensile.source }
    : { sentence: result.reason.sentence };
};

const human = (setup: AirBendSetup, bend: AirBend, length: number, range: ReturnType<typeof rangeOf> | undefined, options: OutputOptions): string => {
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
  if (range !== undefined) {
    lines.push('', 'sentence' in range
      ? `Stock at the ends of its range: ${range.sentence}`
      : `Stock at the ends of its range: bend angle ${range.bendAngleReleased.min.toFixed(1)} to ${range.bendAngleReleased.max.toFixed(1)} deg, peak force ${range.peakForcePerLength.min.toFixed(0)} to ${range.peakForcePerLength.max.toFixed(0)} N/mm, flange ${s.bare(range.flangeChange.min)} to ${s.length(range.flangeChange.max)}. ${range.words}`);
  }
  for (const warning of bend.warnings) lines.push('', `Warning: ${warning}`);
  return [...lines, '', 'Prediction from the data stated; not a warranty; verify on a test strip and a first piece.'].join('\n');
};

/** `bend`: one air bend by the strip calculation, by the angle wanted or by the depth. */
export const bendCommand = (): Command =>
  commandWith('bend', 'depth, force, radius, springback and flat length of one air bend')
    .option('--thickness <mm>', 'sheet thickness')
    .option('--gauge <number>', "sheet thickness by the metal's own gauge table")
    .requiredOption('--length <mm>', 'length of the bend')
    .requiredOption('--v <mm>', 'V opening')
    .addOption(new Option('--v-convention <how>', 'V between sharp corners or tangent points').choices(['sharp', 'tangent']).default('sharp'))
    .requiredOption('--die-angle <degrees>', 'included angle of the V')
    .requiredOption('--shoulder <mm>', 'radius of the shoulders')
    .requiredOption('--tip <mm>', "radius of the punch's tip")
    .option('--metal <id>', 'a metal of the list')
    .option('--curve <law>', 'or its hardening: swift:K,n,e0 or hollomon:K,n or points:strain/stress,... (MPa, true, plastic)')
    .option('--modulus <MPa>', "with --curve: Young's modulus")
    .option('--poisson <number>', "with --curve: Poisson's number")
    .option('--friction <number>', 'at the shoulders', String(USUAL_FRICTION))
    .option('--angle <degrees>', 'bend angle wanted after release (0 flat, 90 square)')
    .option('--depth <mm>', 'or the depth of the stroke from first touch')
    .option('--range', 'what the scatter of the stock as bought does to it')
    .option('--width <mm>', 'width of the sheet as bought, for its thickness tolerance', '1250')
    .action(async (options: BendOptions) => {
      const metal = metalOf(options);
      const setup: AirBendSetup = {
        metal,
        thickness: thicknessOf(options, metal),
        v: positive('--v', options.v),
        vConvention: options.vConvention,
        dieAngle: positive('--die-angle', options.dieAngle),
        shoulderRadius: positive('--shoulder', options.shoulder),
        tipRadius: positive('--tip', options.tip),
        friction: number('--friction', options.friction),
      };
      const length = positive('--length', options.length);
      const result = solved(setup, options);
      if (!result.ok) {
        if (result.reason.code === 'input') throw new Fault(result.reason.sentence);
        const { reason } = result;
        await answer({ units: JSON_UNITS, refused: reason.code, reason, warnings: [reason.sentence] }, () => reason.sentence, options);
        process.exitCode = 3;
        return;
      }
      const bend = result.value;
      const range = options.range === true ? rangeOf(setup, bend, options) : undefined;
      await answer(
        {
          units: JSON_UNITS,
          ...bend,
          vConvention: setup.vConvention,
          peakForce: bend.peakForcePerLength * length,
          force: bend.forcePerLength * length,
          byRule: closedForms(setup, bend),
          ...(range === undefined ? {} : { range }),
        },
        () => human(setup, bend, length, range, options),
        options,
      );
    });
