import {
  type StepLimit, type StepSituation, bendRange, closedForms, crowningOf, degreesPerMm, explainChosenV, hemMinimumRadius, stepLimits, testStripFor,
} from '../forming/index.js';
import { type Grain, type Metal, angularTolerance } from '../metal/index.js';
import type { Machine } from '../shop/index.js';
import { bentPieces } from './bentPieces.js';
import { grainOf } from './grainOf.js';
import type { TrialInput } from './input.js';
import type { Layout } from './layout.js';
import { type MachineBeams, machineBeams } from './machineBeams.js';
import { nearestCut } from './nearestCut.js';
import type { Forming } from './forming.js';
import { STOCK_WIDTH, STRONGEST_SHEET, stockTolerance, strongestSheet } from './strongestSheet.js';
import type { Tooling } from './tooling.js';
import type { Step, StepForming, StepPressing } from './trial.js';

/** Holes further off than this many thicknesses are of no concern to any bend; a flange's own edge lies further off. */
const FAR_HOLE = 5;

/** What belongs to tools and sheet alone, the same for every step that they make. */
type Shared = Pick<StepForming, 'byRule' | 'range' | 'rangeWords' | 'bottoms' | 'deduction' | 'whyV' | 'testStrip'>;

const rangeOf = ({ setup, air }: Forming): Pick<StepForming, 'range' | 'rangeWords' | 'bottoms'> => {
  const { metal, thickness } = setup;
  const tolerance = stockTolerance(metal, thickness);
  const result = bendRange(
    { ...setup, bendAngle: air.bendAngleReleased }, { thickness: tolerance ?? { minus: 0, plus: 0 }, held: 'ram position' },
  );
  if (!result.ok) return { range: null, rangeWords: result.reason.sentence };
  const { bendAngleReleased, peakForcePerLength, flangeChange, bottoms, words } = result.value;
  const thicknessSource = tolerance === null ? 'no thickness tolerance known, none reckoned with' : `${tolerance.source}, for sheet up to ${STOCK_WIDTH} mm wide`;
  return {
    range: { bendAngleReleased, peakForcePerLength, flangeChange }, ...(bottoms !== null && { bottoms }),
    rangeWords: `${words} Thickness: ${thicknessSource}. Strength: ${metal.tensile.source} (${metal.tensile.mark}).`,
  };
};

const sharedOf = (forming: Forming, step: Step, punch: TrialInput['rack']['punches'][number], drawn: number, input: TrialInput): Shared => {
  const { setup, air, die, deduction } = forming;
  const dies = input.rack.dies
    .filter((d) => d.shape === 'V' && input.machine.seatFamilies.includes(d.tang))
    .map((d) => ({ id: d.name, v: d.v, vConvention: d.vConvention, includedAngle: d.includedAngle, shoulderRadius: d.shoulderRadius, rating: d.rating }));
  const question = { metal: setup.metal, thickness: setup.thickness, bendAngle: air.bendAngleReleased, insideRadius: drawn, flange: step.measure.length };
  const strip = testStripFor({ ...setup, bendAngle: air.bendAngleReleased });
  return {
    byRule: closedForms(setup, air),
    ...rangeOf(forming),
    deduction: { source: deduction.source, spread: deduction.spread, words: deduction.words },
    whyV: explainChosenV(question, dies.find((d) => d.id === die.name)!, { ...punch, id: punch.name }, dies) ?? [],
    testStrip: strip.ok ? strip.value : null,
  };
};

const situationOf = (
  step: Step, forming: Forming, pieces: StepSituation['pieces'], holeDistance: number | null, grain: Grain | undefined, punchRating: number, machine: Machine, { ram, bed, device }: MachineBeams,
): StepSituation => {
  const tolerance = angularTolerance(step.measure.length, 'm');
  return {
    setup: forming.setup, bend: forming.air, pieces,
    machine: { rating: machine.rating, ratingPerLength: machine.ratingPerLength, cylinderSpacing: machine.cylinders.spacing, ram, bed, crowning: device },
    punchRating, dieRating: forming.die.rating, flange: step.measure.length,
    ...(holeDistance === null ? {} : { holeDistance }), ...(grain === undefined ? {} : { grain }),
    angleTolerance: tolerance.tolerance,
    angleToleranceSource: `${tolerance.source}, class m (${tolerance.mark})`,
  };
};

/** Less than this along the bend is lost in the scatter of the sheet. mm, common practice, no source. */
const NO_MATTER = 0.005;

/** What to do about crowning, with its figures. */
const crowningWordsOf = (machine: Machine, { uncrowned, setting, residual, angleSpread }: StepForming['crowning']): string => {
  if (Math.max(Math.abs(uncrowned), residual) < NO_MATTER) return `Over this length ram and bed give way by less than ${NO_MATTER} mm: crowning makes no difference`;
  const give = `Ram and bed give way ${uncrowned.toFixed(2)} mm more in the middle of the bend than at its ends`;
  const check = 'until left, middle and right of the test strip agree';
  if (machine.crowning === 'none') return `${give}, about ${angleSpread.toFixed(1)} degrees of bend angle; no crowning: shim under the die ${check}`;
  return `${give}; crowning ${machine.crowning}: begin with ${setting.toFixed(2)} mm at the middle of the bed, which leaves ${residual.toFixed(3)} mm (about ${angleSpread.toFixed(1)} degrees), and set it ${check}`;
};

/** Of a hem that is closed: the least radius that its metal takes. */
const hemLimits = ({ kind, insideRadius }: Step, metal: Metal, thickness: number, grain: Grain | undefined): readonly StepLimit[] => {
  const least = kind === 'hem close' ? hemMinimumRadius(metal, thickness, grain ?? 'along') : null;
  if (least === null) return [];
  const { radius: limit, mark, source } = least;
  return [{ name: `inside radius of the closed hem ${grain ?? 'along'} the grain`, value: insideRadius, limit, margin: insideRadius - limit, unit: 'mm', holds: insideRadius >= limit, mark, source }];
};

const pressingOf = (step: Step, { metal, part: { thickness } }: TrialInput, grain: Grain | undefined): StepPressing => ({
  strongest: { forcePerLength: step.forcePerLength * strongestSheet(metal, thickness), words: STRONGEST_SHEET },
  limits: hemLimits(step, metal, thickness, grain),
});

/** The steps with all that forming says of them: rules, limits, ranges, the V explained, the test strip, the crowning. */
export const withForming = (steps: readonly Step[], layout: Layout, tooling: Tooling, input: TrialInput): readonly Step[] => {
  const { machine, part } = input;
  const beams = machineBeams(machine);
  const grainAt = grainOf(tooling.sheet);
  const known = new Map<string, Shared>();
  return steps.map((step, i) => {
    const { setting } = layout.plan[i]!.option;
    const first = setting.group.bends[0]!;
    if (step.kind !== 'V bend') return { ...step, pressing: pressingOf(step, input, grainAt(first)) };
    const whole = tooling.forming[first]!;
    const forming = setting.group.pass === 1 ? { ...whole, air: whole.passes!.air, bend: whole.passes!.first } : whole;
    const { punch } = setting.pair;
    const drawn = part.bends[first]!.insideRadius;
    const key = `${forming.die.id}|${punch.id}|${step.bendAngle}|${drawn}|${step.measure.length.toFixed(1)}`;
    const shared = known.get(key) ?? sharedOf(forming, step, punch, drawn, input);
    known.set(key, shared);
    const pieces = bentPieces(tooling.sheet.part, setting.seat, setting.group).flat().map(([from, to]) => ({ from: from + step.place, to: to + step.place }));
    // the next hit's flat ends beside this one: no cut-out
    const cuts = setting.group.bends.filter((b) => !tooling.sheet.part.bends[b]!.hit).map((b) => nearestCut(tooling.sheet.part, b, FAR_HOLE * part.thickness)).filter((d) => d !== null);
    const situation = situationOf(step, forming, pieces, cuts.length === 0 ? null : Math.min(...cuts), grainAt(first), punch.rating, machine, beams);
    const bare = crowningOf(situation)!;
    const crowning = { ...bare, angleSpread: bare.residual * degreesPerMm(situation) };
    return {
      ...step,
      crowning: machine.crowning === 'none' ? null : crowning.setting,
      crowningWords: crowningWordsOf(machine, crowning),
      forming: { ...shared, limits: stepLimits(situation), crowning },
    };
  });
};

/** Limits that do not hold and depths that bottom some sheet, as warnings, the same of several steps told once: none of them is one that refuses a stroke. */
export const unheldLimits = (steps: readonly Step[]): string[] => {
  const told = new Map<string, number[]>();
  for (const { number, forming, pressing } of steps) {
    const unheld = [...(forming?.limits ?? []), ...(pressing?.limits ?? [])].filter(({ holds }) => !holds);
    const all = unheld.map((l) => `${l.name} ${l.value.toFixed(2)} ${l.unit} where ${l.limit.toFixed(2)} ${l.unit} is the limit (${l.source}${l.source.includes(l.mark) ? '' : `; ${l.mark}`})`);
    for (const words of forming?.bottoms === undefined ? all : [...all, forming.bottoms]) told.set(words, [...(told.get(words) ?? []), number]);
  }
  return [...told].map(([words, numbers]) => `${numbers.length === 1 ? 'Step' : 'Steps'} ${numbers.join(', ')}: ${words}.`);
};
