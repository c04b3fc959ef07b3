import { type Command, Option } from 'commander';
import { type AirBendSetup, type MeasuredDeduction, USUAL_FRICTION, deductionsFromCsv } from '../forming/index.js';
import {
  type HardeningCurve, type Metal, gaugesOf, gaugeThickness, metalFromTensileTest, proofStress, tensileOf,
} from '../metal/index.js';
import { Fault } from './fault.js';
import { METAL_WORDS, metalNamed } from './metalNamed.js';
import { measure, positive, wholeNumber } from './numbers.js';
import { readBytes } from './readFile.js';

/** Sheet and tools of one bend as they are typed. */
export interface SetupOptions {
  readonly thickness?: string;
  readonly gauge?: string;
  readonly v: string;
  readonly vConvention: 'sharp' | 'tangent';
  readonly dieAngle: string;
  readonly shoulder: string;
  readonly tip: string;
  readonly metal?: string;
  readonly tensile?: string;
  readonly curve?: string;
  readonly modulus?: string;
  readonly poisson?: string;
  readonly friction: string;
}

/** A command with the options that say sheet and tools. */
export const withSetup = (command: Command): Command =>
  command
    .option('--thickness <mm>', 'sheet thickness')
    .option('--gauge <number>', "sheet thickness by the metal's own gauge table")
    .requiredOption('--v <mm>', 'V opening')
    .addOption(new Option('--v-convention <how>', 'V between sharp corners or tangent points').choices(['sharp', 'tangent']).default('sharp'))
    .requiredOption('--die-angle <degrees>', 'included angle of the V')
    .requiredOption('--shoulder <mm>', 'radius of the shoulders')
    .requiredOption('--tip <mm>', "radius of the punch's tip")
    .option('--metal <id>', METAL_WORDS)
    .option('--tensile <yield,strength,Ag[,Z]>', 'with --metal: a tensile test of this sheet (MPa, MPa, percent at greatest force, reduction of area in percent where it was measured: it tells the least radius); the rest like that metal')
    .option('--curve <law>', 'or its hardening: swift:K,n,e0 or hollomon:K,n or points:strain/stress,... (MPa, true, plastic)')
    .option('--modulus <MPa>', "with --curve: Young's modulus")
    .option('--poisson <number>', "with --curve: Poisson's number")
    .option('--friction <number>', 'at the shoulders', String(USUAL_FRICTION));

/** A number typed after an option, of any sign. */
const number = (option: string, typed: string | undefined): number => {
  const value = Number(typed);
  if (typed === undefined || typed.trim() === '' || !Number.isFinite(value)) throw new Fault(`${option} ${typed ?? ''}: a number is wanted.`);
  return value;
};

/** swift:K,n,e0 or hollomon:K,n or points:strain/stress,strain/stress,... (true stress in MPa, plastic strain). */
const curveOf = (typed: string): HardeningCurve => {
  const [kind, rest = ''] = typed.split(':');
  const parts = rest.split(',');
  const wrong = new Fault(`--curve ${typed}: swift:K,n,e0 or hollomon:K,n or points:strain/stress,strain/stress,... is wanted (K and stress in MPa, n under 1).`);
  const figures = parts.map(Number);
  const good = (count: number): boolean => figures.length === count && figures.every((v) => Number.isFinite(v) && v > 0);
  if (kind === 'swift' && good(3) && figures[1]! < 1) return { kind, k: figures[0]!, n: figures[1]!, e0: figures[2]! };
  if (kind === 'hollomon' && good(2) && figures[1]! < 1) return { kind, k: figures[0]!, n: figures[1]! };
  if (kind === 'points') {
    const points = parts.map((p) => p.split('/').map(Number) as [number, number]);
    const rising = points.every(([e, s], i) => Number.isFinite(e) && s > 0 && (i === 0 ? e === 0 : e > points[i - 1]![0]));
    if (points.length >= 2 && rising) return { kind, points };
  }
  throw wrong;
};

const testedMetal = (like: Metal, typed: string): Metal => {
  const [yieldStress, tensile, uniformElongation, reductionOfArea, ...more] = typed.split(',').map(Number);
  const good = [yieldStress, tensile, uniformElongation, reductionOfArea ?? 1].every((v) => v !== undefined && Number.isFinite(v) && v > 0) && (reductionOfArea ?? 0) < 100 && more.length === 0;
  if (!good) throw new Fault(`--tensile ${typed}: yield,strength,Ag or yield,strength,Ag,Z is wanted (MPa, MPa, percent, percent).`);
  const own = metalFromTensileTest('tested', `${like.name} by its tensile test`, { yield: yieldStress!, tensile: tensile!, uniformElongation: uniformElongation!, ...(reductionOfArea === undefined ? {} : { reductionOfArea }) }, like);
  if (!own.ok) throw new Fault(`--tensile ${typed}: ${own.sentence}`);
  return own.metal;
};

const metalOf = async (options: SetupOptions): Promise<Metal> => {
  if ((options.metal === undefined) === (options.curve === undefined)) throw new Fault('--metal and --curve: give one of the two.');
  if (options.metal !== undefined) {
    const found = await metalNamed(options.metal);
    return options.tensile === undefined ? found : testedMetal(found, options.tensile);
  }
  if (options.tensile !== undefined) throw new Fault('--tensile: --metal is wanted with it, for all that a tensile test does not tell.');
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

/** mm of sheet, of tools, and of bend, beyond which a figure is a slip: no press brake bends it in air. */
const SHEET = [0.01, 100] as const;
const TOOL = [0.01, 3000] as const;
const LENGTH = [0.1, 100_000] as const;

/** The length of the bend, mm. */
export const bendLength = (typed: string): number => measure('--length', typed, ...LENGTH, 'mm');

const thicknessOf = (options: SetupOptions, metal: Metal): number => {
  if ((options.thickness === undefined) === (options.gauge === undefined)) throw new Fault('--thickness and --gauge: give one of the two.');
  if (options.thickness !== undefined) return measure('--thickness', options.thickness, ...SHEET, 'mm');
  const gauge = gaugeThickness(metal.gauge, wholeNumber('--gauge', options.gauge!, 0, 99));
  if (gauge === null) throw new Fault(`--gauge ${options.gauge!}: not in the ${metal.gauge} gauge of ${metal.name}, which has ${gaugesOf(metal.gauge).map((row) => row.gauge).join(', ')}.`);
  return gauge.thickness;
};

/** Sheet and tools as the bend calculation takes them. */
export const setupOf = async (options: SetupOptions): Promise<AirBendSetup> => {
  const metal = await metalOf(options);
  return {
    metal,
    thickness: thicknessOf(options, metal),
    v: measure('--v', options.v, ...TOOL, 'mm'),
    vConvention: options.vConvention,
    dieAngle: measure('--die-angle', options.dieAngle, 1, 179, 'degrees'),
    shoulderRadius: measure('--shoulder', options.shoulder, ...TOOL, 'mm'),
    tipRadius: measure('--tip', options.tip, ...TOOL, 'mm'),
    friction: number('--friction', options.friction),
  };
};

/** The shop's measured deductions from a file; the first line that cannot be read is named. */
export const readDeductions = async (path: string): Promise<readonly MeasuredDeduction[]> => {
  const read = deductionsFromCsv(new TextDecoder().decode(await readBytes(path)));
  if (!read.ok) throw new Fault(`${path}, line ${read.line}: ${read.sentence}`);
  return read.rows;
};
