import type { Vec2 } from '../geometry/index.js';
import { cautionWords, pictureWords, strokeInWords } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';
import { drawPicture } from './drawPicture.js';
import { type Units, lengthText } from './format.js';
import { hatchLines } from './hatchLines.js';
import { type Area, type Doc, FRAME, INSET, box, line, paragraph, paragraphHeight, rule } from './paper.js';
import { type Picture, area, polyline, strokes, text } from './picture.js';
import { sectionPicture } from './sectionPicture.js';
import { sentence } from './sheetWords.js';
import { stepPicture, stepShape } from './stepPicture.js';
import { type Row, checkWords, expectRows, stopRows, strokeRows } from './stepTables.js';
import { strokeExtent } from './strokeExtent.js';
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

/** mm a row, and how many stand so high; more stand closer. */
const ROW = 5.8;
const MOST_HIGH = 7;

/** A list of figures: names to the left, figures to the right on one line each. */
const table = (doc: Doc, title: string, rows: readonly Row[], x: number, y: number, width: number, big: number, high: number): void => {
  line(doc, title, x, y, width, { size: 2.9, bold: true });
  let at = y + 4.6;
  rule(doc, x, at - 0.4, x + width, at - 0.4, 'edge');
  rows.forEach(([name, value], i) => {
    const size = i < big ? 3.7 : 2.8;
    line(doc, name, x, at + 1.7, width * 0.5, { size: 2.3 });
    line(doc, value, x + width * 0.42, at + (i < big ? 0.7 : 1.4), width * 0.58, { size, bold: i < big, align: 'right' });
    at += high;
    rule(doc, x, at - 0.3, x + width, at - 0.3, 'rule');
  });
};

/** What to measure, and what the first piece and the batch are expected to show. */
const measureWords = ({ measure: { what, tolerance, firstPiece, batch } }: Step, units: Units): readonly [string, string] => [
  `Measure after the stroke: ${what}${tolerance === null ? '; no tolerance asked' : ''}`,
  firstPiece === undefined || batch === undefined ? '' : `Expected: first piece ±${lengthText(firstPiece, units)}, batch ±${lengthText(batch, units)}.`,
];

const CAPTION = { size: 2.5, bold: true } as const;
const EXPECTED = { size: 2.3 } as const;
/** mm: a box that a figure is written into by hand. */
const BY_HAND = 9.5;

/** mm that the boxes take with the words over them. */
const measuredHeight = (doc: Doc, step: Step, width: number, units: Units): number => {
  const [what, expected] = measureWords(step, units);
  return paragraphHeight(doc, what, width, CAPTION) + (expected === '' ? 0 : paragraphHeight(doc, expected, width, EXPECTED)) + 0.8 + BY_HAND;
};

/** Boxes for what is measured on the first piece and after, with their lower edge at the foot of the place; the words over them take what they need. */
const measured = (doc: Doc, trial: Trial, step: Step, place: Area, units: Units): void => {
  const { x, width } = place;
  const { length, tolerance } = step.measure;
  const [what, expected] = measureWords(step, units);
  let y = place.y + place.height - measuredHeight(doc, step, width, units);
  y += paragraph(doc, what, x, y, width, CAPTION);
  if (expected !== '') y += paragraph(doc, expected, x, y, width, EXPECTED);
  y += 0.8;
  const cells: readonly [number, string][] = [
    [4, tolerance === null ? lengthText(length, units) : `${lengthText(length, units)} ±${lengthText(tolerance, units)}`],
    [4.6, checkWords(trial, step, units)],
    [2.2, 'Date'],
    [1.7, 'Initials'],
  ];
  const whole = cells.reduce((sum, [share]) => sum + share, 0);
  let at = x;
  for (const [share, label] of cells) {
    const wide = (width * share) / whole;
    box(doc, { x: at, y, width: wide, height: BY_HAND }, 'edge');
    line(doc, label, at + 1, y + 0.6, wide - 2, { size: 2.2 });
    at += wide;
  }
};

const HEAD = 20;
/** A long bend on a short paper: its flanges would be drawn only some mm high, so its right end is shown larger. mm */
const LONG_BEND = 900;
/** mm of paper between what stands side by side. */
const GAP = 4;

/** The strip at the top: side up, what step this is, and what to do in words. */
const drawHead = (doc: Doc, trial: Trial, step: Step): void => {
  const { x, y, width } = INNER;
  drawPicture(doc, sidePicture(step.sideUp), x, y + 1);
  line(doc, `Step ${step.number} of ${trial.steps.length}`, x + 16, y, 54, { size: 5.4, bold: true });
  line(doc, strokeInWords(trial, step), x + 16, y + 7.4, 54, { size: 3.4, bold: true });
  line(doc, `side ${step.sideUp} up`, x + 16, y + 12.4, 54, { size: 2.9 });
  const [left, wide] = [x + 74, width - 74];
  const size = [3.3, 3, 2.7, 2.4].find((s) => paragraphHeight(doc, step.words, wide, { size: s, bold: true }) <= 12.6) ?? 2.1;
  paragraph(doc, step.words, left, y + 0.3, wide, { size, fill: 'accent', bold: true });
  line(doc, `⚠ Caution: ${cautionWords(step)}`, left, y + 13.4, wide, { size: 2.6, bold: true, fill: 'warning' });
  rule(doc, FRAME.x, y + HEAD - 2, FRAME.x + FRAME.width, y + HEAD - 2);
};

interface Places {
  readonly before: Area;
  readonly after: Area;
  readonly section: Area;
  /** Where the three tables stand side by side, and the row of boxes under them. */
  readonly tables: Area;
  readonly boxes: Area;
}

/** Tall scenes stand side by side with the section over the tables; wide ones have the upper half of the sheet to themselves. */
const placesFor = (tall: boolean, pressed: boolean): Places => {
  const top = INNER.y + HEAD - 1.5;
  const strip = stripArea();
  const bottom = FRAME.y + FRAME.height;
  if (tall) {
    const height = 101;
    const low = top + height + 1.5;
    const picture = 80;
    const tables = { x: INNER.x, y: low, width: INNER.width, height: 44 };
    const boxes = { x: INNER.x, y: strip.y - 1.5, width: strip.x - INNER.x - GAP, height: strip.height };
    if (pressed) {
      // small beside its tools: three moments of it, larger than the sheet in the machine
      const one = (height - 1) / 2;
      return {
        before: { x: INNER.x, y: top, width: picture, height: one },
        after: { x: INNER.x, y: top + one + 1, width: picture, height: one },
        section: { x: INNER.x + picture + GAP, y: top, width: INNER.width - picture - GAP, height },
        tables, boxes,
      };
    }
    return {
      before: { x: INNER.x, y: top, width: picture, height },
      after: { x: INNER.x + picture + GAP, y: top, width: picture, height },
      section: { x: INNER.x + 2 * (picture + GAP), y: top, width: INNER.width - 2 * (picture + GAP) + INSET, height },
      tables, boxes,
    };
  }
  const height = 79;
  const low = top + height + 1.5;
  const half = INNER.width / 2;
  return {
    before: { x: INNER.x, y: top, width: half - GAP / 2, height },
    after: { x: INNER.x + half + GAP / 2, y: top, width: half - GAP / 2, height },
    section: { x: FRAME.x, y: low, width: strip.x - FRAME.x - GAP, height: bottom - low - 1 },
    tables: { x: strip.x, y: low, width: strip.width - INSET, height: 44 },
    boxes: { x: strip.x, y: strip.y - 18, width: strip.width - INSET, height: 16 },
  };
};

const drawPictures = (doc: Doc, trial: Trial, step: Step, places: Places, units: Units): void => {
  const [low, high] = strokeExtent(trial, step);
  const closeup = high - low > LONG_BEND;
  for (const when of ['before', 'after'] as const) {
    const { x, y, width, height } = places[when];
    const words = pictureWords(step)[when];
    drawPicture(doc, stepPicture(trial, step.number, when, { width, height: height - 5, closeup, units }), x, y + 5);
    line(doc, closeup ? `${words} (right end)` : words, x, y, width, { size: 2.9, bold: true });
  }
  const { x, y, width, height } = places.section;
  drawPicture(doc, sectionPicture(trial, step.number, { width, height: height - 4, units }), x, y + 4);
  line(doc, step.kind === 'V bend' ? 'Section, from the operator\'s right' : `Section from the right: ${step.kind === 'hem close' ? 'height of the hem' : 'over both flanges'} (left), ram's way from touch (right)`, Math.max(x, INNER.x), y, width, { size: 2.9, bold: true });
};

/** One sheet for one step: what to do with the sheet in words, before and after, the section with its dimensions, every figure, boxes. */
export const drawStepPage = (doc: Doc, trial: Trial, step: Step, units: Units): void => {
  drawFrame(doc);
  drawHead(doc, trial, step);
  const places = placesFor(stepShape(trial, step.number) < 1.05, step.kind !== 'V bend');
  drawPictures(doc, trial, step, places, units);
  const { x, y, width } = places.tables;
  rule(doc, FRAME.x, y - 1.5, FRAME.x + FRAME.width, y - 1.5);
  const column = (width - 2 * GAP) / 3;
  const tables: readonly [string, readonly Row[]][] = [
    ['Set the stop', stopRows(trial, step, units)],
    ['Set the stroke', strokeRows(step, units)],
    ['Expect', expectRows(trial, step, units)],
  ];
  const most = Math.max(...tables.map(([, rows]) => rows.length));
  const high = Math.min(ROW, (MOST_HIGH * ROW) / most);
  tables.forEach(([title, rows], k) => table(doc, title, rows, x + k * (column + GAP), y, column, 2, high));
  const under = y + 4.6 + most * high + 1;
  const more = [
    `Stop: ${step.stop.edge}`,
    `Sideways: ${step.stop.sideways}`,
    `least clearance of the step ${lengthText(step.clearance, units)}`,
    ...(step.crowning === null ? [step.crowningWords] : []),
  ].map(sentence).join(' ');
  const boxesTop = places.boxes.y + places.boxes.height - measuredHeight(doc, step, places.boxes.width, units);
  const size = [2.35, 2.2, 2.05].find((it) => under + paragraphHeight(doc, more, width, { size: it }) <= boxesTop) ?? 1.9;
  paragraph(doc, more, x, under, width, { size });
  measured(doc, trial, step, places.boxes, units);
};
