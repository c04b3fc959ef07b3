import { withAskedTolerance } from './askedTolerance.js';
import type { Attempt } from './attempt.js';
import { hitPitch } from './hits.js';
import { holdingWords } from './holdingWords.js';
import type { TrialInput } from './input.js';
import type { Layout } from './layout.js';
import { HELP, helpWords, liftingOf } from './lifting.js';
import { listed } from './listed.js';
import { withMeasured } from './measured.js';
import { modelSentence } from './modelSentence.js';
import type { SearchResult } from './search.js';
import { movedWords } from './seatShift.js';
import { type Twice, anglesIn } from './states.js';
import { unheldLimits, withForming } from './stepForming.js';
import { runSeconds, stepsOf } from './steps.js';
import { isScribed } from './stopChoice.js';
import { SET_BY_HAND, TIME, stationSeconds } from './time.js';
import type { Tooling } from './tooling.js';
import type { Step, Trial } from './trial.js';

/** What a stroke does, in the time model. */
const STROKE_WORDS: Readonly<Record<Step['kind'], string>> = { 'V bend': 'bend', 'hem close': 'close hem', 'offset bend': 'offset' };

const oneFinger = (steps: readonly string[]): readonly string[] =>
  steps.length === 0 ? [] : [`${steps.length > 1 ? 'Steps' : 'Step'} ${listed(steps)} ${steps.length > 1 ? 'have' : 'has'} room for one finger only: hold the edge square against it.`];

/** How far apart the hits lie on the blank, and what radius each forms by itself. */
const hitWords = ({ sheet: { part, allowances }, forming }: Tooling): string[] => part.bends.flatMap(({ hit }, i) =>
  hit?.number === 1 ? [`The ${hit.count} hits of bend ${hit.of} lie ${hitPitch(part, allowances, hit.of).toFixed(2)} mm apart on the blank; each forms a radius of ${forming[i]!.air.insideRadius.toFixed(1)} mm by itself.`] : []);

/** A plan that is kept, with what it was found from. */
interface Kept {
  readonly input: TrialInput;
  readonly attempt: Attempt;
  readonly result: SearchResult & { readonly kind: 'plan' };
  /** Where it stands: its own layout, or one that serves other parts too. */
  readonly layout: Layout;
  /** Widths of the Vs tried, mm, this one last. */
  readonly tried: readonly number[];
  readonly twice: Twice;
}

/** The record of a plan that is kept; `done` fills in what every trial says. */
export const keptTrial = ({ input, attempt, result, layout, tried, twice }: Kept, done: (verdict: 'makes', more: Partial<Trial>) => Trial): Trial => {
  const { tooling, handling } = attempt;
  const lifting = liftingOf(tooling, input);
  const formed = withForming(stepsOf(layout, tooling, input.machine, handling), layout, tooling, input);
  const measured = withMeasured(formed, layout.plan, attempt.within.deviations, anglesIn(tooling.sheet.part, twice));
  const dimensions = attempt.within.predicted(layout);
  const steps = withAskedTolerance(measured, input.part, tooling.sheet, dimensions, input.toleranceClass).map((s) => (lifting.help ? { ...s, words: `${HELP}. ${s.words}` } : s));
  // on a layout that serves other parts too, a part answers for the stations that it uses
  const own = new Set(layout.placements.map(({ station }) => station)).size;
  const batch = (TIME.batch + own * stationSeconds(input.machine)) / input.quantity;
  const run = runSeconds(steps);
  const hand = layout.plan.reduce((sum, { option }, i) => sum + attempt.task.handSetting(layout.plan[i - 1]?.option ?? null, option), 0);
  const punches = input.rack.punches.filter((p) => layout.stations.some((s) => s.punch === p.id));
  const dies = input.rack.dies.filter((d) => layout.stations.some((s) => s.die === d.id));
  const risers = input.rack.risers.filter((r) => layout.stations.some((s) => s.riser === r.height && r.seat === dies.find((d) => d.id === s.die)!.tang));
  const formedRadius = tooling.forming.flatMap((f, i) => {
    if (input.part.bends[i]!.kind === 'hem' || input.part.bends[i]!.hit) return [];
    const drawn = input.part.bends[i]!.insideRadius;
    return Math.abs(f.air.insideRadius - drawn) > 0.25 * Math.max(drawn, input.part.thickness)
      ? [`Bend ${input.part.bends[i]!.id} forms an inside radius of ${f.air.insideRadius.toFixed(2)} mm where ${drawn.toFixed(2)} mm is drawn.`] : [];
  });
  return done('makes', {
    sheet: tooling.sheet, ...(tooling.misses ? { misses: tooling.misses } : {}), punches, dies, risers, stations: layout.stations, steps,
    seconds: run + hand + batch,
    timeModel: [
      ...steps.map((s) => ({ what: `step ${s.number}, ${STROKE_WORDS[s.kind]} ${listed(s.bends)}`, seconds: s.time.reduce((a, p) => a + p.seconds, 0) })),
      ...(hand > 1e-6 ? [{ what: SET_BY_HAND, seconds: hand }] : []),
      { what: `set-up of ${own} station${own > 1 ? 's' : ''} and the batch, shared by ${input.quantity}`, seconds: batch },
    ],
    lifting, dimensions,
    bound: result.bound + TIME.batch / input.quantity, proven: result.proven,
    model: modelSentence(steps.length, [...new Set(tried)], input, twice),
    warnings: [
      ...helpWords(lifting),
      ...new Set(tooling.forming.flatMap((f) => f.air.warnings)),
      ...formedRadius,
      ...hitWords(tooling),
      ...unheldLimits(steps),
      ...[movedWords(input.machine, layout)].filter((words) => words !== null),
      ...steps.filter((_, i) => isScribed(layout.plan[i]!.option.stop)).map((s) => `Step ${s.number} finds no stop in the gauge's reach: it is placed by eye to a scribed line.`),
      ...holdingWords(tooling.sheet, layout.plan.map(({ option }) => option), input.metal),
      ...oneFinger(steps.filter((s) => s.stop.z.length === 1).map((s) => String(s.number))),
    ],
  });
};
