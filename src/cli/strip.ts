import type { Command } from 'commander';
import {
  type AirBendSetup, type FittedMetal, type MeasuredBend, type MeasuredDeduction, airBendAtDepth, deductionFromStrip, deductionsToCsv, fittedK, metalFromBends, testStripFor,
} from '../forming/index.js';
import type { HardeningCurve } from '../metal/index.js';
import { type SetupOptions, setupOf, withSetup } from './bendSetup.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { positive } from './numbers.js';
import { type OutputOptions, JSON_UNITS, answer, print } from './print.js';
import { table } from './table.js';
import { show } from './units.js';

interface StripOptions extends OutputOptions, SetupOptions {
  readonly angle: string;
  readonly measured?: readonly string[];
  readonly csv?: boolean;
}

/** A strip as it was measured: mm, degrees, N/mm. */
interface Reading extends MeasuredBend {
  readonly legs: readonly [number, number];
  readonly cut: number;
}

const KEYS = ['depth', 'bend', 'leg1', 'leg2', 'cut', 'load', 'force'] as const;

/** depth=6.2,bend=90.4,leg1=51.8,leg2=51.7,cut=100 and where read load=92.5 (bend angle under load), force=131 (N/mm). */
const readingOf = (typed: string, setup: MeasuredBend['setup']): Reading => {
  const pairs = new Map(typed.split(',').map((part) => part.split('=') as [string, string]));
  const unknown = [...pairs.keys()].find((key) => !(KEYS as readonly string[]).includes(key));
  if (unknown !== undefined) throw new Fault(`--measured ${typed}: '${unknown}' is not one of ${KEYS.join(', ')}.`);
  const figure = (key: (typeof KEYS)[number]): number => positive(`--measured ${key}`, pairs.get(key) ?? '');
  const maybe = (key: 'load' | 'force'): number | undefined => (pairs.has(key) ? figure(key) : undefined);
  const [load, force] = [maybe('load'), maybe('force')];
  return {
    setup, depth: figure('depth'), bendAngleReleased: figure('bend'), legs: [figure('leg1'), figure('leg2')], cut: figure('cut'),
    ...(load === undefined ? {} : { bendAngleUnderLoad: load }), ...(force === undefined ? {} : { peakForcePerLength: force }),
  };
};

/** A curve as `bend --curve` takes it. */
const typedCurve = (curve: HardeningCurve): string => {
  const f = (v: number): string => String(Number(v.toPrecision(6)));
  if (curve.kind === 'swift') return `swift:${f(curve.k)},${f(curve.n)},${f(curve.e0)}`;
  if (curve.kind === 'hollomon') return `hollomon:${f(curve.k)},${f(curve.n)}`;
  return `points:${curve.points.map(([e, s]) => `${f(e)}/${f(s)}`).join(',')}`;
};

/** Deduction rows of the strips, one for each, with the radius that the fitted metal's calculation gives. */
const rowsOf = (setup: AirBendSetup, readings: readonly Reading[], fitted: FittedMetal): MeasuredDeduction[] =>
  readings.map((r) => {
    const { metal, thickness, v, vConvention, tipRadius } = setup;
    const bend = airBendAtDepth({ ...setup, metal: fitted.metal, depth: r.depth + fitted.depthOffset });
    const row = deductionFromStrip(
      { metal: metal.id, thickness, v, vConvention, tipRadius, bendAngle: r.bendAngleReleased, ...(bend.ok ? { insideRadius: Number(bend.value.insideRadius.toFixed(3)) } : {}) },
      [{ legs: r.legs, cut: r.cut }],
    )!;
    return { ...row, deduction: Number(row.deduction.toFixed(3)), spread: 0 };
  });

const workOut = (setup: AirBendSetup, typed: readonly string[]) => {
  const { metal, ...tools } = setup;
  const readings = typed.map((one) => readingOf(one, tools));
  const fitted = metalFromBends(readings, metal, 'batch', `this batch, like ${metal.name}`);
  if (!fitted.ok) throw new Fault(fitted.sentence);
  const rows = rowsOf(setup, readings, fitted.value);
  const k = fittedK(rows, () => 0);
  return { fitted: fitted.value, rows, k };
};

const measuredInWords = (setup: AirBendSetup, { fitted, rows, k }: ReturnType<typeof workOut>, options: OutputOptions): string => {
  const s = show(options.units);
  const { metal } = fitted;
  return [
    fitted.words,
    `Tensile strength of the batch about ${metal.tensile.typical.toFixed(0)} MPa, yield ${metal.yield.typical.toFixed(0)} MPa, by bends like ${setup.metal.name}.`,
    `To reckon with it: bend --curve ${typedCurve(metal.curve)} --modulus ${metal.modulus} --poisson ${metal.poisson}`,
    '',
    table([{ heading: 'bend deg', right: true }, { heading: 'deduction', right: true }, { heading: 'radius calculated', right: true }], rows.map((r) => [r.bendAngle.toFixed(2), s.length(r.deduction), r.insideRadius === undefined ? '' : s.length(r.insideRadius)])),
    ...(k === null ? [] : [`K that fits: ${k.k.toFixed(3)} (${k.min.toFixed(3)} to ${k.max.toFixed(3)})`]),
    '--csv writes these rows for `deductions --add`, `bend --deductions` and `trial --deductions`.',
  ].join('\n');
};

/** `strip`: the test strip for a batch and a pair of tools, and what its measurements tell. */
export const stripCommand = (): Command =>
  withSetup(commandWith('strip', 'test strip for a batch and a pair of tools: its size and what to measure; strength and deduction from two of them'))
    .option('--angle <degrees>', 'bend angle wanted after release', '90')
    .option('--measured <figures...>', 'a measured strip, at least two: depth=6.2,bend=90.4,leg1=51.8,leg2=51.7,cut=100, and where read load=92.5,force=131')
    .option('--csv', 'with --measured: answer with the deduction rows as CSV')
    .addHelpText('after', `
depth: travel from first touch, mm; bend: bend angle released; leg1, leg2: outside lengths, cut: length before bending, mm; load: bend angle under load;
force: greatest force over the length, N/mm. Angles alone tell little of the strength; one angle under load or one force tells it (docs/forming.md).`)
    .action(async (options: StripOptions) => {
      const setup = await setupOf(options);
      if (options.measured !== undefined) {
        const worked = workOut(setup, options.measured);
        if (options.csv === true) await print(deductionsToCsv(worked.rows), options.output);
        else await answer({ units: JSON_UNITS, ...worked }, () => measuredInWords(setup, worked, options), options);
        return;
      }
      if (options.csv === true) throw new Fault('--csv: only measured strips have rows; --measured is wanted with it.');
      const plan = testStripFor({ ...setup, bendAngle: positive('--angle', options.angle) });
      if (!plan.ok) throw new Fault(plan.reason.sentence);
      const s = show(options.units);
      await answer(
        { units: JSON_UNITS, ...plan.value },
        () => [`Two strips of this sheet, each ${s.length(plan.value.along)} along the bend and ${s.length(plan.value.across)} across it.`, ...plan.value.measure].join('\n'),
        options,
      );
    });
