import { type DayPlan, PLANNED_ANEW, clockText, riserInWords, stationsInWords } from '../../fit/index.js';
import { CAUTIONS, liftWords } from '../../stroke/index.js';
import type { Trial } from '../../trial/index.js';
import { bytesOf, openDocument } from '../document.js';
import { drawPicture } from '../drawPicture.js';
import { type Block, type Paragraph, flow } from '../flow.js';
import { layoutPicture } from '../layoutPicture.js';
import { type Units, roundText } from '../format.js';
import { type GridCell, type GridColumn, drawRow, rowHeight } from '../grid.js';
import { INNER, type Pages, aboveStrip, columnsFrom, newPages } from '../pages.js';
import { line, paragraph } from '../paper.js';
import { finalAngles, partPicture } from '../partPicture.js';
import { stationInWords } from '../sheetWords.js';
import { testStripWords } from '../testStrip.js';
import { drawRows, stripArea } from '../titleBlock.js';
import { blanksInWords, changesInWords, layoutInWords, stripsInWords } from './dayWords.js';
import { leftOut } from './leftOut.js';

export interface DayPlanOptions {
  readonly date?: string;
  readonly who?: string;
  /** Who comes to see it. */
  readonly buyer?: string;
  readonly units?: Units;
}

const THUMB = { width: 34, height: 25 } as const;
const COLUMNS: readonly GridColumn[] = [{ width: 8 }, { width: 36 }, { width: 44 }, { width: 76 }, { width: 44 }, { width: 25 }, { width: 34 }];
const SIZE = 2.6;
const HEAD: readonly GridCell[] = ['', '', 'Part', 'To the bed before it', 'Cut beforehand: blanks', 'Test strips', 'Times, predicted'].map((words) => ({ words, size: SIZE, bold: true }));
const SMALL = { size: 2.4 } as const;

/** `left`: sentences about what is left out. */
const drawOrder = (pages: Pages, plan: DayPlan, left: readonly string[], trials: readonly Trial[], units: Units): void => {
  const { doc } = pages;
  pages.begin('order of the day');
  let { y } = INNER;
  line(doc, `Demonstration on ${plan.machine.name}`, INNER.x, y, INNER.width, { size: 5.4, bold: true });
  y += 7.6;
  const fewer = plan.changesAsGiven - plan.changes;
  const said = `${plan.stops.length} ${plan.stops.length === 1 ? 'part' : 'parts'} in ${clockText(plan.seconds)} of work: ${plan.changes} rows of tools built, altered or taken off in this order` +
    (fewer > 0 ? `, ${fewer} fewer than in the order given.` : '; no order needs fewer.');
  y += paragraph(doc, said, INNER.x, y, INNER.width, { size: 3.2, bold: true, fill: 'accent' }) + 1;
  for (const words of left) y += paragraph(doc, words, INNER.x, y, INNER.width, { size: 2.8, bold: true }) + 1;
  y += paragraph(doc, plan.model, INNER.x, y, INNER.width, { size: 2.3 }) + 2;
  y += drawRow(doc, COLUMNS, HEAD, INNER.x, y);
  plan.stops.forEach((stop, k) => {
    const { change, prepare, pieces } = stop.seconds;
    const row: GridCell[] = [
      { words: String(k + 1), size: 4.4, bold: true }, { words: '' },
      { words: stop.part, under: `${stop.demo ? 'demo part; ' : ''}first stroke ${clockText(stop.from)} after the start`, size: SIZE, bold: true },
      { words: changesInWords(stop), size: 2.3 }, { words: blanksInWords(stop, units), size: 2.4 }, { words: stripsInWords(stop), size: 2.4 },
      { words: `${change === 0 ? 'nothing to change over' : `change over ${clockText(change)}`}\nmake ready ${clockText(prepare)}\n${stop.blanks.pieces} ${stop.blanks.pieces === 1 ? 'piece' : 'pieces'} ${clockText(pieces)}`, size: 2.4 },
    ];
    const height = Math.max(THUMB.height + 2, rowHeight(doc, COLUMNS, row));
    if (y + height > aboveStrip()) {
      pages.begin('order of the day');
      y = INNER.y + drawRow(doc, COLUMNS, HEAD, INNER.x, INNER.y);
    }
    const { sheet } = trials[stop.trial]!;
    drawPicture(doc, partPicture(sheet, finalAngles(sheet), THUMB), INNER.x + COLUMNS[0]!.width + 1, y + 1);
    y += drawRow(doc, COLUMNS, row, INNER.x, y, height);
  });
};

const toolBlock = (kit: DayPlan['kit'], kind: 'punch' | 'die'): Block => {
  const all = kit.flatMap((it) => (it.kind !== 'riser' && it.kind === kind ? [it] : []));
  return {
    heading: kind === 'punch' ? 'Punches to lay out' : 'Dies to lay out',
    paragraphs: [...new Set(all.map(({ id }) => id))].map((id): Paragraph => {
      const items = all.filter((it) => it.id === id);
      const pieces = items.map(({ length, ear, needed, atHand, weight }) =>
        `${needed} × ${length} mm${ear ? ` ear ${ear}` : ''} (of ${atHand} at hand${needed > atHand ? ', ⚠ too few' : ''}; ${weight.toFixed(1)} kg each)`);
      return { words: `${items[0]!.name}${items[0]!.demo && !/demo/i.test(items[0]!.name) ? ' (demo)' : ''}: ${pieces.join(', ')}.`, sign: '☐', style: SMALL };
    }),
  };
};

const kitBlocks = ({ kit }: DayPlan, units: Units): Block[] => [
  toolBlock(kit, 'punch'), toolBlock(kit, 'die'),
  {
    heading: 'Risers to lay out',
    paragraphs: kit.filter((it) => it.kind === 'riser').map((riser): Paragraph => ({ words: `${riserInWords(riser, (mm) => roundText(mm, units))}.`, sign: '☐', style: SMALL })),
  },
];

/** The bed that all parts share, with the bend lines of each under it. */
const drawLayout = (pages: Pages, plan: DayPlan, layout: NonNullable<DayPlan['layout']>, trials: readonly Trial[], units: Units): void => {
  const { doc } = pages;
  pages.begin('the layout');
  let { y } = INNER;
  y += paragraph(doc, layoutInWords(layout, plan, units), INNER.x, y, INNER.width, { size: 3.6, bold: true }) + 1;
  for (const words of stationsInWords(layout)) y += paragraph(doc, words, INNER.x, y, INNER.width, { size: 3 }) + 0.6;
  y += paragraph(doc, `⚠ ${PLANNED_ANEW}`, INNER.x, y, INNER.width, { size: 3, bold: true }) + 1;
  y += paragraph(doc, layout.model, INNER.x, y, INNER.width, { size: 2.3 }) + 2;
  drawPicture(doc, layoutPicture(trials[0]!, { width: INNER.width, mostHeight: aboveStrip() - y, units, others: trials.slice(1) }), INNER.x, y);
};

const blocksOf = (plan: DayPlan, trials: readonly Trial[], units: Units): Block[] => {
  const tick = (words: string): Paragraph => ({ words, sign: '☐', style: SMALL });
  return [
    { heading: 'To check beforehand', paragraphs: plan.checks.map(tick) },
    ...kitBlocks(plan, units),
    ...plan.stops.map((stop, k): Block => ({
      heading: `${k + 1}. ${stop.part}: stations, left to right`,
      paragraphs: [
        ...stop.stations.flatMap((station) => stationInWords(trials[stop.trial]!, station, units)).map(tick),
        ...stop.strips.map((strip) => tick(testStripWords(strip, units))),
        ...liftWords(trials[stop.trial]!).map((words): Paragraph => ({ words, sign: '⚠', style: SMALL })),
      ],
    })),
    { heading: 'Cautions', paragraphs: CAUTIONS.map((words): Paragraph => ({ words, sign: '⚠', style: SMALL })) },
  ].filter(({ paragraphs }) => paragraphs.length > 0);
};

/** The day plan on paper: the order with what is done to the bed, then what to check, lay out and cut. `trials` in the order that the plan was made from. */
export const dayPlanPdf = async (plan: DayPlan, trials: readonly Trial[], options: DayPlanOptions = {}): Promise<Uint8Array> => {
  const { date = '', who = '', buyer = '', units = 'mm' } = options;
  const doc = openDocument(`Demonstration on ${plan.machine.name}`, who);
  const pages = newPages(doc);
  const left = leftOut(doc, plan, INNER.width);
  drawOrder(pages, plan, left.over, trials, units);
  if (plan.layout) drawLayout(pages, plan, plan.layout, trials.filter(({ verdict }) => verdict === 'makes'), units);
  const more = (): ReturnType<typeof columnsFrom> => {
    pages.begin('to check, lay out and cut');
    return columnsFrom(INNER.y, 3);
  };
  flow(doc, [...left.after, ...blocksOf(plan, trials, units)], more(), more);
  pages.names.forEach((name, k) => {
    doc.switchToPage(k);
    drawRows(doc, [
      [
        { share: 2.4, label: 'Demonstration for', value: buyer, bold: true }, { share: 1.6, label: 'Metal', value: plan.metal }, { share: 1.8, label: 'What', value: name, bold: true },
      ],
      [
        { share: 2.4, label: 'Machine', value: plan.machine.name }, { share: 1, label: 'Date', value: date }, { share: 1.2, label: 'Who', value: who },
        { share: 1.2, label: 'Sheet', value: `sheet ${k + 1} of ${pages.names.length}` },
      ],
    ], stripArea());
  });
  return bytesOf(doc);
};
