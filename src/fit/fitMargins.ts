import type { Axis } from '../shop/index.js';
import { DAYLIGHT, type Step, type Trial } from '../trial/index.js';
import { reachBehind } from './reachBehind.js';
import { worstStock } from './worstStock.js';

export type MarginKind = 'force' | 'length' | 'daylight' | 'throat' | 'gauge travel' | 'tolerance';

/** How much of a limit a plan uses. `share` is what is used of it: 1 is the limit itself. */
export interface FitMargin {
  readonly kind: MarginKind;
  /** What is measured, in words. */
  readonly name: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly share: number;
  /** The step it belongs to; 0 for what belongs to the whole part. */
  readonly step: number;
  readonly source: string;
}

/** What a place takes of the way to the far end of an axis and, for the near end, what that end takes of the way to the place: 1 at either end. */
const shares = (at: number, { min, max }: { readonly min: number; readonly max: number }): { readonly near: number; readonly far: number } => ({
  near: at > 0 ? Math.max(0, min) / at : min < 0 ? at / min : 1,
  far: at <= 0 ? 0 : at / max,
});

const travel = (name: string, axis: Axis, at: number, step: number): FitMargin[] => {
  if (axis.drive === 'fixed') return [];
  const { near, far } = shares(at, axis);
  const margin = (limit: number, what: string, share: number): FitMargin =>
    ({ kind: 'gauge travel', name: `${name}, ${what}`, value: at, limit, unit: 'mm', share, step, source: 'machine data' });
  return [far >= near ? margin(axis.max, 'furthest', far) : margin(axis.min, 'nearest', near)];
};

const ofStep = (trial: Trial, step: Step): FitMargin[] => {
  const { machine } = trial;
  const named = (name: string, kind: MarginKind): FitMargin[] =>
    step.margins.filter((m) => m.name === name).map((m) => ({ ...m, kind, share: m.value / m.limit, step: step.number }));
  return [
    ...worstStock(step).map((m): FitMargin => ({ ...m, kind: 'force', share: m.value / m.limit, step: step.number })),
    ...named('length of tools', 'length'), ...named(DAYLIGHT, 'daylight'),
    ...(step.stop.kind === 'none' ? [] : [
      ...[0, ...(step.stop.skew === undefined ? [] : [step.stop.skew])].flatMap((by) => travel('X', machine.gauge.x, step.stop.axisX + by, step.number)), ...travel('R', machine.gauge.r, step.stop.r, step.number),
    ]),
  ];
};

const throat = (trial: Trial): FitMargin[] => {
  const { machine } = trial;
  return trial.steps.map((step): FitMargin => {
    const { reach, width } = reachBehind(trial, step);
    // a sheet that passes between the side frames may go deeper than the throat: the roomier of the two counts
    const deep = reach / machine.throat;
    const wide = width / machine.betweenFrames;
    return deep <= wide || deep <= 1
      ? { kind: 'throat', name: 'reach behind the bend', value: reach, limit: machine.throat, unit: 'mm', share: deep, step: step.number, source: 'throat' }
      : { kind: 'throat', name: 'width between the side frames', value: width, limit: machine.betweenFrames, unit: 'mm', share: wide, step: step.number, source: 'machine data' };
  });
};

/** mm: how far the tools form it off the drawing, and the batch's spread about that. */
const offDrawing = ({ value, drawn, batch }: NonNullable<Trial['dimensions']>[number]): number => Math.abs(value - (drawn ?? value)) + batch.rootSumSquare;

/** Every dimension that carries a tolerance, by the spread that the plan's stops and order leave in the batch. */
export const toleranceMargins = (trial: Trial): readonly FitMargin[] =>
  (trial.dimensions ?? []).flatMap((d): FitMargin[] => (d.tolerance === null || d.notKnown.length > 0 ? [] : [{
    kind: 'tolerance', name: `${d.id}: ${d.what}, ${d.value.toFixed(1)} mm`, value: offDrawing(d), limit: d.tolerance, unit: 'mm',
    share: offDrawing(d) / d.tolerance, step: 0, source: `${d.drawn === undefined ? '' : `formed ${d.value.toFixed(2)} mm where ${d.drawn.toFixed(2)} mm is drawn, and `}root of the sum of squares over the batch; asked by ${d.askedBy}`,
  }]));

const order = (a: FitMargin, b: FitMargin): number => b.share - a.share;

/** Of each kind the margin used up furthest over all steps, the tightest kind first; empty without a plan. */
export const fitMargins = (trial: Trial): readonly FitMargin[] => {
  const all = [...trial.steps.flatMap((step) => ofStep(trial, step)), ...throat(trial), ...toleranceMargins(trial)].sort(order);
  return all.filter((m, i) => all.findIndex((other) => other.kind === m.kind) === i);
};
