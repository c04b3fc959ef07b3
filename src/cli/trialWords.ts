import { reasonsTold, tightestMargin } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import { type StopFigure, stopX } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';
import { table } from './table.js';
import { type Show, show } from './units.js';
import { VERDICT_SIGN } from './verdictSign.js';

const verdictWords = (trial: Pick<Trial, 'verdict'>): string => `${VERDICT_SIGN[trial.verdict]} ${trial.verdict}`;

const stepsTable = (steps: readonly Step[], s: Show): string => {
  const stops = steps.map(stopX);
  // where the nose touches, the face stands where the axis is set to
  const faces = stops.some(({ face }) => face.length > 0);
  const figures = (of: readonly StopFigure[]): string => of.map(({ value }) => s.bare(value)).join(' / ');
  return table(
    [
      { heading: 'step' },
      { heading: 'bends' },
      { heading: 'station' },
      { heading: 'side up' },
      { heading: 'bend deg', right: true },
      { heading: 'incl. deg', right: true },
      { heading: `X axis ${s.unit}`, right: true },
      ...(faces ? [{ heading: `face at ${s.unit}`, right: true }] : []),
      { heading: `R ${s.unit}`, right: true },
      { heading: `depth ${s.unit}`, right: true },
      { heading: 'kN', right: true },
      { heading: `clear ${s.unit}`, right: true },
      { heading: 'stop at' },
    ],
    steps.map((step, i) => [
      String(step.number),
      step.bends.join(' '),
      step.station,
      step.sideUp,
      step.bendAngle.toFixed(1),
      step.includedAngle.toFixed(1),
      step.stop.kind === 'none' ? 'by eye' : figures(stops[i]!.set),
      ...(faces ? [figures(stops[i]!.face.length > 0 ? stops[i]!.face : stops[i]!.set)] : []),
      step.stop.kind === 'none' ? '' : s.bare(step.stop.r, 1),
      s.bare(step.depth),
      (step.force / 1000).toFixed(1),
      s.bare(step.clearance, 1),
      step.stop.edge,
    ]),
  );
};

const stationsTable = (trial: Trial, s: Show): string =>
  table(
    [
      { heading: 'station' },
      { heading: 'punch' },
      { heading: 'die' },
      { heading: `from ${s.unit}`, right: true },
      { heading: `length ${s.unit}`, right: true },
      { heading: `die top ${s.unit}`, right: true },
      { heading: 'facing' },
    ],
    trial.stations.map((station) => [
      station.id,
      station.punch,
      station.die,
      s.bare(Math.min(...station.punchSegments.map(({ from }) => from)), 1),
      s.bare(station.punchSegments.reduce((sum, { length }) => sum + length, 0), 1),
      s.bare(station.dieTop, 1),
      station.punchFacing,
    ]),
  );

const proofWords = ({ proof }: Trial, s: Show): string => {
  if (!proof.checked) return 'Not checked by the independent engine.';
  const words = proof.passed ? 'Confirmed by the independent check' : 'Not confirmed by the independent check';
  const clearance = proof.smallestClearance === null ? '' : `; smallest clearance ${s.length(proof.smallestClearance)}`;
  const motion = proof.largestMotion === null ? '' : `; no point moved further than ${s.length(proof.largestMotion)} between two checked poses`;
  return `${words}${clearance}${motion}.`;
};

const plan = (trial: Trial, s: Show): string[] => {
  if (trial.steps.length === 0) return [];
  if (trial.verdict !== 'makes') {
    return [`A plan of ${trial.steps.length === 1 ? '1 step' : `${trial.steps.length} steps`} was worked out, but is not shown to hold, for the reason above: it is not to be bent, and only --json holds its steps.`, proofWords(trial, s)];
  }
  const tight = tightestMargin(trial);
  const gap = trial.proven ? 'the best of its model' : trial.bound > 0 ? `at best ${trial.bound.toFixed(1)} s, not proven` : 'not shown to be the best';
  return [
    `Predicted making time ${trial.seconds.toFixed(1)} s a part at quantity ${trial.quantity} (${gap}); computed in ${trial.computeSeconds.toFixed(2)} s.`,
    ...(tight === null ? [] : [`Tightest margin: ${tight.name}, ${tight.unit === 'mm' ? `${s.bare(tight.value)} of ${s.length(tight.limit)}` : `${tight.value.toFixed(2)} of ${tight.limit.toFixed(2)} ${tight.unit}`}, step ${tight.step}.`]),
    '',
    stationsTable(trial, s),
    '',
    stepsTable(trial.steps, s),
    '',
    proofWords(trial, s),
  ];
};

/** Every dimension: what is asked, and what the batch and the first piece are expected to show (root of the sum of squares). */
const dimensionsTable = ({ dimensions }: Trial, s: Show): string[] =>
  dimensions === undefined || dimensions.length === 0 ? [] : ['', table(
    [
      { heading: 'dimension' }, { heading: 'from, to' }, { heading: s.unit, right: true }, { heading: 'tolerance +-', right: true },
      { heading: 'batch +-', right: true }, { heading: 'first piece +-', right: true }, { heading: 'verdict' },
    ],
    dimensions.map((d) => [
      d.id, d.what, s.bare(d.value), d.tolerance === null ? '' : s.bare(d.tolerance), s.bare(d.batch.rootSumSquare), s.bare(d.firstPiece.rootSumSquare),
      d.notKnown.length > 0 ? `${d.verdict} (not measured: ${d.notKnown.join(', ')})` : d.verdict,
    ]),
  ), ...dimensions.flatMap((d) => (d.drawn === undefined ? [] : [`Dimension ${d.id} is drawn ${s.length(d.drawn)} and comes out at ${s.length(d.value)} as these tools form it.`])),
  ...dimensions.flatMap((d) => (d.forced ? [s.words(d.forced)] : [])), ''];

/** One trial as a person reads it on a terminal. */
export const trialInWords = (trial: Trial, units: 'mm' | 'in' | undefined): string => {
  const s = show(units);
  const { part } = trial.sheet;
  return [
    `${verdictWords(trial)}: ${part.name}, ${trial.metal.name} ${s.length(part.thickness)}, on ${trial.machine.name}`,
    ...reasonsTold(trial.reasons).map(({ sentence }) => `Reason: ${s.words(sentence)}`),
    ...trial.remedies.map(({ sentence, confirmed }) => `Remedy${confirmed ? '' : ' (not confirmed)'}: ${s.words(sentence)}`),
    ...(trial.inVain === undefined ? [] : [`No remedy found: ${s.words(trial.inVain)}`]),
    ...plan(trial, s),
    ...dimensionsTable(trial, s),
    ...(trial.misses ?? []).map(({ bend, flange, miss }) => `With this blank: ${flange} at ${bend} comes out wrong by ${s.length(miss)}.`),
    ...trial.warnings.map((sentence) => `Beware: ${s.words(sentence)}`),
    ...trial.assumptions.map((sentence) => `Assumed: ${s.words(sentence)}`),
    CAVEAT,
  ].join('\n');
};

/** What the list over all machines says of one trial. */
export const summaryOf = (trial: Trial) => {
  const tight = tightestMargin(trial);
  return {
    machine: trial.machine.id,
    name: trial.machine.name,
    verdict: trial.verdict,
    reason: reasonsTold(trial.reasons)[0]?.sentence ?? null,
    remedy: trial.remedies[0]?.sentence ?? null,
    tightest: tight === null ? null : { name: tight.name, value: tight.value, limit: tight.limit, unit: tight.unit, step: tight.step },
    steps: trial.steps.length,
    stations: trial.stations.length,
    seconds: trial.seconds,
    computeSeconds: trial.computeSeconds,
    bound: trial.bound,
    proven: trial.proven,
    model: trial.model,
    reasons: trial.reasons,
    remedies: trial.remedies,
    proof: trial.proof,
  };
};

export type TrialSummary = ReturnType<typeof summaryOf>;

/** The list over all machines, one line each. */
export const boardInWords = (summaries: readonly TrialSummary[], units: 'mm' | 'in' | undefined): string => {
  const s = show(units);
  return table(
    [{ heading: 'machine' }, { heading: 'verdict' }, { heading: 's a part', right: true }, { heading: 'tightest margin' }, { heading: 'reason' }],
    summaries.map((summary) => {
      const { tightest: tight } = summary;
      return [
        summary.machine,
        verdictWords(summary),
        summary.steps === 0 || summary.verdict !== 'makes' ? '' : summary.seconds.toFixed(1),
        tight === null ? '' : `${tight.name}: ${tight.unit === 'mm' ? `${s.bare(tight.value, 1)} of ${s.length(tight.limit, 1)}` : `${tight.value.toFixed(1)} of ${tight.limit.toFixed(1)} ${tight.unit}`}`,
        s.words(summary.reason ?? ''),
      ];
    }),
  );
};
