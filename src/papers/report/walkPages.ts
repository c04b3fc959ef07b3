import { scribedLine, stopX, strokeInWords } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { drawPicture } from '../drawPicture.js';
import { type Units, forceText, lengthText } from '../format.js';
import { type Area, line, paragraph, rule } from '../paper.js';
import { stepPicture } from '../stepPicture.js';
import { figuresInWords } from '../stepTables.js';
import { unfoldingPath } from '../unfoldingPath.js';
import { mark } from './figureKinds.js';
import { INNER, type Pages, aboveStrip } from '../pages.js';

const PATH = 52;
const GAP = 4;

const stopWords = (trial: Trial, step: Step, units: Units): string => {
  const { stop, pass, kind } = step;
  const line = scribedLine(trial, step);
  if (line) return `Placed by eye to a line scribed on the flat blank ${lengthText(line.distance, units)} from the ${line.from}`;
  if (stop.kind === 'none') return pass === 2 ? 'Placed by the bend begun' : kind === 'hem close' ? 'The fold placed by eye under the punch' : 'Placed by eye to a scribed line';
  const { set, face } = stopX(step);
  const told = [...set, ...face].map(({ name, value }, i) => `${i === 0 ? name : `${name.charAt(0).toLowerCase()}${name.slice(1)}`} ${lengthText(value, units)}`);
  return `${told.join(', ')}, R ${lengthText(stop.r, units)} ${mark('stop')}`;
};

const figuresOf = (trial: Trial, step: Step, units: Units): string =>
  `${figuresInWords(trial, step, units)}; force ${forceText(step.force, units)} ${mark('stroke')}. ${stopWords(trial, step, units)}. ` +
  `Measure ${step.measure.what}: ${lengthText(step.measure.length, units)} ${step.measure.tolerance === null ? '(no tolerance asked)' : `± ${lengthText(step.measure.tolerance, units)}`} ${mark('measure')}.`;

const drawStep = (pages: Pages, trial: Trial, step: Step, at: Area, units: Units): void => {
  const { doc } = pages;
  line(doc, `Step ${step.number}: ${strokeInWords(trial, step)}, side ${step.sideUp} up, station ${step.station}`, at.x, at.y, at.width, { size: 3, bold: true });
  const picture = { width: (at.width - 2) / 2, height: at.height - 27 };
  drawPicture(doc, stepPicture(trial, step.number, 'before', { ...picture, units }), at.x, at.y + 5);
  drawPicture(doc, stepPicture(trial, step.number, 'after', { ...picture, units }), at.x + picture.width + 2, at.y + 5);
  const y = at.y + 6 + picture.height;
  const used = paragraph(doc, step.words, at.x, y, at.width, { size: 2.4, bold: true, fill: 'accent' });
  paragraph(doc, figuresOf(trial, step, units), at.x, y + used + 0.6, at.width, { size: 2.2 });
};

/** One part's way through the machine, stroke by stroke: in its place before, and after. */
export const drawWalkPages = (pages: Pages, trial: Trial, units: Units): void => {
  const { doc } = pages;
  const name = trial.sheet.part.name;
  const what = `${name} on ${trial.machine.name}: stroke by stroke`;
  pages.begin(`${name}: stroke by stroke`);
  line(doc, what, INNER.x, INNER.y, INNER.width, { size: 4.4, bold: true });
  paragraph(
    doc,
    `Predicted, and replayed by a second engine: ${trial.proof.passed ? 'passed' : 'not passed'}${trial.proof.smallestClearance === null ? '' : `, smallest clearance ${lengthText(trial.proof.smallestClearance, units)}`}. ` +
    'Left of each pair: in its place before the stroke; right: after the stroke.',
    INNER.x, INNER.y + 6.4, INNER.width, { size: 2.5 },
  );
  drawPicture(doc, unfoldingPath(trial, { width: INNER.width, height: PATH }), INNER.x, INNER.y + 11);
  const half = (INNER.width - GAP) / 2;
  const firstTop = INNER.y + 11 + PATH + 2;
  const places = (top: number, rows: number): Area[] => {
    const height = (aboveStrip() - top - (rows - 1) * GAP) / rows;
    return Array.from({ length: rows * 2 }, (_, k): Area => ({ x: INNER.x + (k % 2) * (half + GAP), y: top + Math.floor(k / 2) * (height + GAP), width: half, height }));
  };
  rule(doc, INNER.x, firstTop - 1.5, INNER.x + INNER.width, firstTop - 1.5);
  // two steps or one that are left over have a sheet to themselves: one over the other, each over the whole width
  const stacked = (top: number, rows: number): Area[] => {
    const height = (aboveStrip() - top - (rows - 1) * GAP) / rows;
    return Array.from({ length: rows }, (_, k): Area => ({ x: INNER.x, y: top + k * (height + GAP), width: INNER.width, height }));
  };
  let left = places(firstTop, 1);
  for (const [done, step] of trial.steps.entries()) {
    if (left.length === 0) {
      pages.begin(`${name}: stroke by stroke`);
      const open = trial.steps.length - done;
      left = open <= 2 ? stacked(INNER.y, open) : places(INNER.y, 2);
    }
    drawStep(pages, trial, step, left.shift()!, units);
  }
};
