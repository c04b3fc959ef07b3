import { rangeInWords } from '../forming/index.js';
import type { Step, StepForming, Trial } from '../trial/index.js';
import { type FigureRow, figuresPicture } from './figuresPicture.js';
import type { Block, Paragraph } from './flow.js';
import { type Units, angleFigure, lengthFigure, lengthText } from './format.js';

const SMALL = { size: 2.4 } as const;

const figure = (value: number, unit: string, units: Units): string =>
  unit === 'mm' ? lengthText(value, units) : unit === 'N' ? `${(value / 1000).toFixed(1)} kN` : unit === 'degrees' ? angleFigure(value) : `${value.toFixed(1)} ${unit}`;

const listed = (steps: readonly Step[]): string => `${steps.length === 1 ? 'Step' : 'Steps'} ${steps.map((s) => s.number).join(', ')}`;

/** Steps for which something reads the same: it is told once. */
const alike = (trial: Trial, told: (forming: StepForming, step: Step) => unknown): readonly (readonly [StepForming, readonly Step[]])[] => {
  const groups = new Map<string, { readonly forming: StepForming; readonly steps: Step[] }>();
  for (const step of trial.steps) {
    if (!step.forming) continue;
    const key = JSON.stringify(told(step.forming, step));
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
  range === null ? words : `${rangeInWords(range, { angle: angleFigure, length: (mm) => lengthText(mm, units), bare: (mm) => lengthFigure(mm, units) })}. ${words}`;

const limitRow = ({ name, value, limit, margin, unit, holds, mark, source }: StepForming['limits'][number], units: Units): FigureRow => ({
  name: `${holds ? '' : '⚠ '}${name}`, first: figure(value, unit, units), second: figure(limit, unit, units),
  source: `${holds ? 'margin' : 'past good practice by'} ${figure(Math.abs(margin), unit, units)}; ${source.includes(mark) ? source : `${source} (${mark})`}`,
});

/** The limits of all steps, those that read the same for several steps once; each table keeps the order of its first step. */
const limitBlocks = (steps: readonly Step[], width: number, units: Units): Block[] => {
  const rows = new Map<string, { readonly row: FigureRow; readonly steps: Step[] }>();
  for (const step of steps) {
    for (const limit of step.forming?.limits ?? []) {
      const row = limitRow(limit, units);
      const key = JSON.stringify(row);
      const told = rows.get(key) ?? { row, steps: [] };
      rows.set(key, told);
      if (!told.steps.includes(step)) told.steps.push(step);
    }
  }
  const tables = new Map<string, { readonly steps: readonly Step[]; readonly rows: FigureRow[] }>();
  for (const told of rows.values()) {
    const key = told.steps.map(({ number }) => number).join();
    const table = tables.get(key) ?? { steps: told.steps, rows: [] };
    tables.set(key, table);
    table.rows.push(told.row);
  }
  return [...tables.values()].sort((a, b) => b.steps.length - a.steps.length || a.steps[0]!.number - b.steps[0]!.number).map(({ steps: of, rows: told }): Block => {
    const title = `Limits of ${listed(of).toLowerCase()}, tightest first`;
    return { heading: title, paragraphs: [{ words: '', picture: figuresPicture(['value', 'limit'], told, width, title) }] };
  });
};

/** What forming says beside its own figures, to be printed after the steps; empty where no step carries it. */
export const formingBlocks = (trial: Trial, width: number, units: Units): Block[] => [
  // the same tools and angle give the same figures; why this V hangs on each flange beside
  ...alike(trial, ({ byRule, deduction, range, rangeWords: words }, { punch, die, bendAngle, deduction: mm }) => [punch, die, bendAngle, byRule, deduction, mm, range, words]).flatMap(([forming, steps]): Block[] => [
    { heading: `${listed(steps)}: calculated, and by rule`, paragraphs: [rulesOf(forming, width, units)] },
    { heading: `${listed(steps)}: flat length`, paragraphs: [{ words: `Deduction ${lengthText(steps[0]!.deduction, units)}: ${forming.deduction.words}.`, style: SMALL }] },
    { heading: `${listed(steps)}: stock at the ends of its range`, paragraphs: [{ words: rangeWords(forming, units), style: SMALL }] },
  ]),
  ...alike(trial, ({ whyV }) => whyV).map(([{ whyV }, steps]): Block => ({ heading: `${listed(steps)}: why this V`, paragraphs: whyV.map((words) => ({ words, style: SMALL })) })),
  ...limitBlocks(trial.steps, width, units),
].filter(({ paragraphs }) => paragraphs.length > 0);
