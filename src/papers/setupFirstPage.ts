import { testStrips, toldTogether } from '../fit/index.js';
import { blank } from '../sheet/index.js';
import { CAUTIONS, liftWords } from '../stroke/index.js';
import type { Trial } from '../trial/index.js';
import { blankPicture } from './blankPicture.js';
import { drawPicture } from './drawPicture.js';
import type { Block } from './flow.js';
import { fitCount, flow } from './flow.js';
import { type Units, lengthText } from './format.js';
import { layoutPicture } from './layoutPicture.js';
import { type Area, type Doc, FRAME, INSET, box, heading, line, rule } from './paper.js';
import { proofInWords, stationInWords, timeInWords } from './sheetWords.js';
import { testStripWords } from './testStrip.js';
import { TITLE, drawFrame, titleArea } from './titleBlock.js';
import { unfoldingPath } from './unfoldingPath.js';

const INNER: Area = { x: FRAME.x + INSET, y: FRAME.y + INSET, width: FRAME.width - 2 * INSET, height: FRAME.height - 2 * INSET };
const SMALL = { size: 2.4 } as const;

/** All that the sheet says in words: what is wanted before the first stroke, and what can be read after the steps. */
export const wordBlocks = (trial: Trial, units: Units): { readonly before: readonly Block[]; readonly after: readonly Block[] } => {
  const note = (words: string): { words: string; style: { size: number } } => ({ words, style: SMALL });
  const signed = (sign: string) => (words: string) => ({ words, sign, style: SMALL });
  const strips = testStrips(trial);
  const misses = trial.misses ?? [];
  const told = (blocks: readonly Block[]): readonly Block[] => blocks.filter(({ paragraphs }) => paragraphs.length > 0);
  const before = told([
    { heading: 'Tools, left to right', paragraphs: trial.stations.flatMap((station) => stationInWords(trial, station, units)).map(note) },
    { heading: 'Test strip first', paragraphs: strips.map((strip) => note(testStripWords(strip, units))) },
    { heading: 'Cautions', paragraphs: [...CAUTIONS, ...liftWords(trial)].map(signed('⚠')) },
    { heading: 'Warnings', paragraphs: toldTogether(trial.warnings).map(signed('⚠')) },
    {
      heading: 'What a blank already cut misses',
      paragraphs: misses.map(({ bend, flange, miss }) => note(`${flange} at ${bend}: ${miss >= 0 ? 'longer' : 'shorter'} by ${lengthText(Math.abs(miss), units)} than drawn.`)),
    },
  ]);
  const after = told([
    { heading: 'Proof', paragraphs: [note(proofInWords(trial, units))] },
    { heading: 'Predicted making time', paragraphs: trial.steps.length > 0 ? timeInWords(trial).map(note) : [] },
    { heading: 'Taken for granted', paragraphs: [...new Set([...trial.assumptions, ...trial.sheet.part.assumptions.map((a) => a.sentence)])].map(signed('–')) },
  ]);
  return { before, after };
};

/** Thickness and size of the blank, each with a box for what is measured before anything is bent. */
const measureFirst = (doc: Doc, trial: Trial, area: Area, units: Units): void => {
  let y = area.y + heading(doc, 'Measure first', area.x, area.y, area.width);
  const flat = blank(trial.sheet);
  const rows: [string, string][] = [['Thickness', lengthText(trial.sheet.part.thickness, units)]];
  if (flat.ok) rows.push(['Blank length', lengthText(flat.value.length, units)], ['Blank width', lengthText(flat.value.width, units)]);
  const rowHeight = 6.4;
  const table = rows.length * rowHeight + 4;
  if (flat.ok) {
    const height = area.height - (y - area.y) - table - 1;
    drawPicture(doc, blankPicture(flat.value, { width: area.width, height, units, sizes: false }), area.x, y);
    y += height + 1;
  } else {
    line(doc, flat.failure.sentence, area.x, y, area.width, SMALL);
    y += 6;
  }
  line(doc, 'as drawn', area.x + 22, y, 20, { size: 2 });
  line(doc, 'as measured', area.x + 48, y, 30, { size: 2 });
  y += 3;
  for (const [what, value] of rows) {
    line(doc, what, area.x, y + 1.6, 21, { size: 2.6 });
    line(doc, value, area.x + 22, y + 1.6, 25, { size: 2.6, bold: true });
    box(doc, { x: area.x + 48, y: y + 0.5, width: area.width - 48, height: rowHeight - 1 }, 'edge');
    y += rowHeight;
  }
};

/** Three columns of a page that holds words only. */
export const wordColumns = (keepClear: number): Area[] => {
  const gap = 6;
  const width = (INNER.width - 2 * gap) / 3;
  return [0, 1, 2].map((k) => ({
    x: INNER.x + k * (width + gap),
    y: INNER.y,
    width,
    // the title strip stands under the right-hand columns
    height: INNER.height - (k === 0 ? 0 : keepClear),
  }));
};

/** How the first sheet's height is shared out: path, bed, and what stands below them. mm */
const PATH_HEIGHT = { few: 46, many: 64 } as const;
/** What the blank to be measured and the title block need. */
const LOWEST = 60;
const MANY_STEPS = 9;
/** The path's heading stands over it. */
const PATH_BELOW = 3;
const BLANK_WIDTH = 68;

/**
 * The first sheet: the unfolding as one path, the bed with its ruler, the blank to be measured first, tools and notes. What is wanted
 * before the first stroke goes on over new sheets, which `newSheet` starts; notes to be read at leisure that find no room come back, to
 * stand after the steps rather than on a sheet of their own before them.
 */
export const drawFirstPage = (doc: Doc, trial: Trial, units: Units, newSheet: () => readonly Area[]): readonly Block[] => {
  drawFrame(doc);
  const { x, width } = INNER;
  let { y } = INNER;
  const pathHeight = trial.steps.length > MANY_STEPS ? PATH_HEIGHT.many : PATH_HEIGHT.few;
  heading(doc, 'From blank to finished piece', x, y, 70);
  drawPicture(doc, unfoldingPath(trial, { width, height: pathHeight }), x, y + PATH_BELOW);
  y += pathHeight + PATH_BELOW + 0.5;
  rule(doc, FRAME.x, y, FRAME.x + FRAME.width, y);
  y += 2;
  const bottom = INNER.y + INNER.height;
  y += heading(doc, `Along the bed, from the front (${units} from the middle)`, x, y, 110) - 1;
  const layout = layoutPicture(trial, { width, units, mostHeight: bottom - LOWEST - y });
  drawPicture(doc, layout, x, y);
  y += layout.height + 0.5;
  rule(doc, FRAME.x, y, FRAME.x + FRAME.width, y);
  y += 2.5;
  measureFirst(doc, trial, { x, y, width: BLANK_WIDTH, height: bottom - y }, units);
  const title = titleArea();
  const middle = x + BLANK_WIDTH + 5;
  rule(doc, middle - 2.5, y - 2.5, middle - 2.5, FRAME.y + FRAME.height);
  const columns: Area[] = [
    { x: middle, y, width: title.x - middle - 3, height: bottom - y },
    { x: title.x, y, width: TITLE.width - INSET, height: title.y - y - 1 },
  ];
  const { before, after } = wordBlocks(trial, units);
  const all = [...before, ...after];
  const room = columns.filter((c) => c.height > 12);
  const here = fitCount(doc, all, room);
  // a new sheet that must be begun anyway takes all the notes
  const shown = here < before.length ? all.length : here;
  flow(doc, all.slice(0, shown), room, newSheet);
  return all.slice(shown);
};
