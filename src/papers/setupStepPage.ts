import type { Vec2 } from '../geometry/index.js';
import type { Step, Trial } from '../trial/index.js';
import { STEP_CAUTION } from './cautions.js';
import { drawPicture } from './drawPicture.js';
import { type Units, angleFigure, fineText, forceText, lengthText, roundFigure, roundText } from './format.js';
import { hatchLines } from './hatchLines.js';
import { type Area, type Doc, FRAME, INSET, box, line, paragraph, rule } from './paper.js';
import { LETTERS } from './pens.js';
import { type Picture, area, polyline, strokes, text } from './picture.js';
import { sectionPicture } from './sectionPicture.js';
import { bendsInWords } from './sheetWords.js';
import { extentOfBend, stepPicture } from './stepPicture.js';
import { drawFrame, stripArea } from './titleBlock.js';

const INNER: Area = { x: FRAME.x + INSET, y: FRAME.y + INSET, width: FRAME.width - 2 * INSET, height: FRAME.height - 2 * INSET };

/** The side that lies up: a plain square with A, a hatched one with B. */
export const sidePicture = (side: 'A' | 'B', size = 12): Picture => {
  const ring: Vec2[] = [[0.4, 0.4], [size - 0.4, 0.4], [size - 0.4, size - 0.4], [0.4, size - 0.4]];
  const flat = { rings: [ring], a: 0, b: 0, c: 0, nearest: 0, box: [0, 0, size, size] as const };
  const hatch = side === 'A' ? [] : hatchLines(flat, [1, -1], 1.3);
  const letters = size * 0.62;
  return {
    width: size,
    height: size,
    items: [
      area('paper', ring),
      strokes('hatch', hatch.map(([p, q]) => [[p[0], p[1]], [q[0], q[1]]] as const)),
      polyline('outline', ring, true),
      text([size / 2, size / 2 + letters * 0.37], side, letters, { bold: true, patch: side === 'B' }),
    ],
    title: `Side ${side} up`,
  };
};

type Row = readonly [string, string];

const stopRows = (step: Step, units: Units): Row[] => {
  const { stop } = step;
  if (stop.kind === 'none') return [['Stop', 'none: by the scribed line'], ['Place', stop.sideways]];
  return [
    ['X, face to bend', lengthText(stop.x, units)],
    ['R, from die seat', lengthText(stop.r, units)],
    [`Z of ${stop.z.length > 1 ? 'fingers' : 'finger'}`, `${stop.z.map((z) => roundFigure(z, units)).join(' / ')} ${units}`],
    ['Finger face', stop.face],
    ['Touches', stop.edge],
    ['Retract', stop.retract > 0 ? roundText(stop.retract, units) : 'stays'],
  ];
};

const strokeRows = (step: Step, units: Units): Row[] => [
  ['Depth from touch', fineText(step.depth, units)],
  ['Ram, tip from die seat', fineText(step.ramPosition, units)],
  ['Speed change over die top', roundText(step.speedChange, units)],
  ['Opening in / out', `${roundFigure(step.ramOpening, units)} / ${roundText(step.ramOpeningOut, units)}`],
  ['Station, facing', `${step.station}, ${step.facing}`],
  ['Crowning', step.crowning === null ? 'see words' : fineText(step.crowning, units)],
];

const expectRows = (step: Step, units: Units): Row[] => [
  ['Bend angle', angleFigure(step.bendAngle)],
  ['Included angle', angleFigure(step.includedAngle)],
  ['Bend / incl. under load', `${angleFigure(step.bendAngleUnderLoad)} / ${angleFigure(180 - step.bendAngleUnderLoad)}`],
  ['Inside radius', lengthText(step.insideRadius, units)],
  ['Force', `${forceText(step.force, units)}`],
  ['Cylinder left / right', `${(step.cylinderForces[0] / 1000).toFixed(1)} / ${(step.cylinderForces[1] / 1000).toFixed(1)} kN`],
];

const ROW = 6;

/** A list of figures: names to the left, figures to the right on one line each. */
const table = (doc: Doc, title: string, rows: readonly Row[], x: number, y: number, width: number, big: number): void => {
  line(doc, title, x, y, width, { size: 2.9, bold: true });
  let at = y + 4.6;
  rule(doc, x, at - 0.4, x + width, at - 0.4, 'edge');
  rows.forEach(([name, value], i) => {
    const size = i < big ? 3.7 : 2.8;
    line(doc, name, x, at + 1.7, width * 0.5, { size: 2.3 });
    line(doc, value, x + width * 0.42, at + (i < big ? 0.7 : 1.4), width * 0.58, { size, bold: i < big, align: 'right' });
    at += ROW;
    rule(doc, x, at - 0.3, x + width, at - 0.3, 'rule');
  });
};

/** Boxes for what is measured on the first piece and after. */
const measured = (doc: Doc, step: Step, x: number, y: number, width: number, units: Units): void => {
  const { what, length, tolerance } = step.measure;
  line(doc, 'Measure after the stroke', x, y, width, { size: 2.9, bold: true });
  const cells: readonly [number, string][] = [
    [5.4, `${what}: ${lengthText(length, units)} ±${lengthText(tolerance, units)}`],
    [4, `Bend angle ${angleFigure(step.bendAngle)} (included ${angleFigure(step.includedAngle)})`],
    [2, 'Date'],
    [1.6, 'Initials'],
  ];
  const whole = cells.reduce((sum, [share]) => sum + share, 0);
  let at = x;
  for (const [share, label] of cells) {
    const wide = (width * share) / whole;
    box(doc, { x: at, y: y + 4.4, width: wide, height: 11.5 }, 'edge');
    line(doc, label, at + 1, y + 5, wide - 2, { size: 2.2 });
    at += wide;
  }
};

const HEAD = 20;
const PICTURES = 80;
const SECTION_WIDTH = 112;

/** A long bend on a short paper: its flanges would be drawn less than this many mm high, so its right end is shown larger. */
const LONG_BEND = 900;

/** One sheet for one step: what to do with the sheet in words, before and after, the section with its dimensions, every figure, boxes. */
export const drawStepPage = (doc: Doc, trial: Trial, step: Step, units: Units): void => {
  drawFrame(doc);
  const { x, width } = INNER;
  const { y } = INNER;
  drawPicture(doc, sidePicture(step.sideUp), x, y + 1);
  line(doc, `Step ${step.number} of ${trial.steps.length}`, x + 16, y, 50, { size: 5.4, bold: true });
  line(doc, `${bendsInWords(step)}, side ${step.sideUp} up`, x + 16, y + 7.6, 50, { size: 3.4, bold: true });
  paragraph(doc, step.words, x + 70, y + 0.3, width - 70, { size: 3.3, fill: 'accent', bold: true });
  line(doc, `⚠ Caution: ${STEP_CAUTION}`, x + 70, y + 14.2, width - 70, { size: 2.6, bold: true, fill: 'warning' });
  rule(doc, FRAME.x, y + HEAD - 1, FRAME.x + FRAME.width, y + HEAD - 1);
  const top = y + HEAD;
  const half = width / 2;
  const closeup = extentOfBend(trial, step) > LONG_BEND;
  (['before', 'after'] as const).forEach((when, k) => {
    const left = x + k * half;
    const words = when === 'before' ? 'Before: at the stop' : 'After: bent and released';
    drawPicture(doc, stepPicture(trial, step.number, when, { width: half - 2, height: PICTURES, closeup }), left, top);
    line(doc, closeup ? `${words} (right end)` : words, left, top, 70, { size: 2.9, bold: true });
  });
  rule(doc, x + half, top - 1, x + half, top + PICTURES + 1, 'rule');
  const low = top + PICTURES + 1;
  rule(doc, FRAME.x, low, FRAME.x + FRAME.width, low);
  const strip = stripArea();
  const bottom = FRAME.y + FRAME.height;
  drawPicture(doc, sectionPicture(trial, step.number, { width: SECTION_WIDTH, height: bottom - low - 1, units }), FRAME.x, low + 0.5);
  line(doc, 'Section, from the operator\'s right', x, low + 1.5, 60, { size: 2.9, bold: true });
  const column = (strip.width - 2 * 4 - INSET) / 3;
  const tables: readonly [string, readonly Row[], number][] = [
    ['Set the stop', stopRows(step, units), 2],
    ['Set the stroke', strokeRows(step, units), 2],
    ['Expect', expectRows(step, units), 2],
  ];
  tables.forEach(([title, rows, big], k) => table(doc, title, rows, strip.x + k * (column + 4), low + 1.5, column, big));
  const place = low + 1.5 + 4.6 + 6 * ROW + 0.6;
  const more = [`Sideways: ${step.stop.sideways}`, ...(step.crowning === null ? [step.crowningWords] : [])].join('. ');
  paragraph(doc, more, strip.x, place, strip.width - INSET, { size: LETTERS.small });
  measured(doc, step, strip.x, strip.y - 17.4, strip.width - INSET, units);
};
