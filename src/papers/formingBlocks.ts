import type { Step, StepForming, Trial } from '../trial/index.js';
import { figuresPicture } from './figuresPicture.js';
import type { Block, Paragraph } from './flow.js';
import { type Units, angleFigure, lengthFigure, lengthText } from './format.js';

const SMALL = { size: 2.4 } as const;

const figure = (value: number, unit: string, units: Units): string =>
  unit === 'mm' ? lengthText(value, units) : unit === 'N' ? `${(value / 1000).toFixed(1)} kN` : unit === 'degrees' ? angleFigure(value) : `${value.toFixed(1)} ${unit}`;

const listed = (steps: readonly Step[]): string => `${steps.length === 1 ? 'Step' : 'Steps'} ${steps.map((s) => s.number).join(', ')}`;

/** Steps made by the same tools to the same angle have the same figures: they are told once. */
const alike = (trial: Trial): readonly (readonly [StepForming, readonly Step[]])[] => {
  const groups = new Map<string, { readonly forming: StepForming; readonly steps: Step[] }>();
  for (const step of trial.steps) {
    if (!step.forming) continue;
    const key = JSON.stringify([step.punch, step.die, step.bendAngle, step.forming.byRule, step.forming.whyV]);
    const group = groups.get(key) ?? { forming: step.forming, steps: [] };
    groups.set(key, group);
    group.steps.push(step);
  }
  return [...groups.values()].map(({ forming, steps }) => [forming, steps] as const);
};

const rulesOf = (forming: StepForming, width: number, units: Units): Paragraph => ({
  words: '',
  picture: figuresPicture(
    ['calculated', 'by rule'],
    forming.byRule.map(({ what, strip, value, unit, source, mark }) => ({
      name: what, first: figure(strip, unit, units), second: figure(value, unit, units), source: source.includes(mark) ? source : `${source} (${mark})`,
    })),
    width, 'Published rules beside the calculation',
  ),
});

const rangeWords = ({ range, rangeWords: words }: StepForming, units: Units): string =>
  range === null ? words : `Bend angle ${angleFigure(range.bendAngleReleased.min)} to ${angleFigure(range.bendAngleReleased.max)}, peak force ` +
    `${range.peakForcePerLength.min.toFixed(0)} to ${range.peakForcePerLength.max.toFixed(0)} N/mm, each flange ` +
    `${lengthFigure(range.flangeChange.min, units)} to ${lengthText(range.flangeChange.max, units)}. ${words}`;

const limitsOf = (step: Step, width: number, units: Units): Paragraph => ({
  words: '',
  picture: figuresPicture(
    ['value', 'limit'],
    step.forming!.limits.map(({ name, value, limit, margin, unit, holds, mark, source }) => ({
      name: `${holds ? '' : '⚠ '}${name}`, first: figure(value, unit, units), second: figure(limit, unit, units),
      source: `${holds ? 'margin' : 'past good practice by'} ${figure(Math.abs(margin), unit, units)}; ${source.includes(mark) ? source : `${source} (${mark})`}`,
    })),
    width, `Limits of step ${step.number}`,
  ),
});

/** What forming says beside its own figures, to be printed after the steps; empty where no step carries it. */
export const formingBlocks = (trial: Trial, width: number, units: Units): Block[] => [
  ...alike(trial).flatMap(([forming, steps]): Block[] => [
    { heading: `${listed(steps)}: calculated, and by rule`, paragraphs: [rulesOf(forming, width, units)] },
    { heading: `${listed(steps)}: flat length`, paragraphs: [{ words: `Deduction ${lengthText(steps[0]!.deduction, units)}: ${forming.deduction.words}.`, style: SMALL }] },
    { heading: `${listed(steps)}: stock at the ends of its range`, paragraphs: [{ words: rangeWords(forming, units), style: SMALL }] },
    { heading: `${listed(steps)}: why this V`, paragraphs: forming.whyV.map((words) => ({ words, style: SMALL })) },
  ]),
  ...trial.steps.filter((s) => s.forming).map((step): Block => ({ heading: `Limits of step ${step.number}, tightest first`, paragraphs: [limitsOf(step, width, units)] })),
].filter(({ paragraphs }) => paragraphs.length > 0);
