import { money } from '../../fit/index.js';
import { CAUTIONS, LIFT_CAUTION } from '../../stroke/index.js';
import { type Block, type Paragraph, fitCount, flow } from '../flow.js';
import { bewareWords } from './bewareWords.js';
import { howFiguresCame, mark } from './figureKinds.js';
import { INNER, type Pages, columnsFrom } from '../pages.js';
import type { ReportData } from './reportData.js';
import { siteMachines } from './siteMachines.js';
import { takenForGranted } from './takenForGranted.js';

const SMALL = { size: 2.4 } as const;
const signed = (sign: string) => (words: string): Paragraph => ({ words, sign, style: SMALL });
const plain = (words: string): Paragraph => ({ words, style: SMALL });

const siteWords = (data: ReportData): string[] => siteMachines(data).map(({ name, site, price, currency }) => {
  const [long, deep] = site.footprint;
  return `${name}: ${money(price, currency)} ${mark('price')}; mass ${site.mass.toLocaleString('en-GB')} kg, footprint ${long.toLocaleString('en-GB')} by ${deep.toLocaleString('en-GB')} mm, ` +
    `height ${site.height.toLocaleString('en-GB')} mm, supply ${site.supply} ${mark('site')}.`;
});

const asEntered = (words: string | undefined): Paragraph[] => (words === undefined || words.trim() === '' ? [] : [plain(words)]);

/** The last sheets: what was typed, site data, assumptions, cautions, and how each kind of figure came about. */
export const drawClosingPages = (pages: Pages, data: ReportData): void => {
  const { delivery, warranty, remarks } = data.typed;
  const blocks: Block[] = [
    { heading: 'Delivery, as typed', paragraphs: asEntered(delivery) },
    { heading: 'Warranty, as typed', paragraphs: asEntered(warranty) },
    { heading: 'Remarks, as typed', paragraphs: asEntered(remarks) },
    { heading: 'Pieces demonstrated', paragraphs: data.demonstrated.length > 0 ? [] : [plain('None has been written down: every figure of this report is a prediction.')] },
    { heading: 'Will it fit your shop', paragraphs: siteWords(data).map(signed('–')) },
    { heading: 'Cautions', paragraphs: [...CAUTIONS, LIFT_CAUTION].map(signed('⚠')) },
    { heading: 'Beware of all these parts', paragraphs: bewareWords(data.board).ofAll.map(signed('⚠')) },
    { heading: 'Taken for granted', paragraphs: takenForGranted(data).map(signed('–')) },
  ].filter(({ paragraphs }) => paragraphs.length > 0);
  const start = (): ReturnType<typeof columnsFrom> => {
    pages.begin('terms, assumptions, cautions, sources');
    return columnsFrom(INNER.y, 3);
  };
  // looked up from every sheet, so it is never torn apart: with the rest where all fits on one sheet, else on the last
  const how: Block = { heading: 'How each figure came about', paragraphs: howFiguresCame().map(({ sign, words }) => ({ words: `${sign} ${words}`, style: SMALL })) };
  const columns = start();
  if (fitCount(pages.doc, [...blocks, how], columns) > blocks.length) {
    flow(pages.doc, [...blocks, how], columns, start);
    return;
  }
  flow(pages.doc, blocks, columns, start);
  flow(pages.doc, [how], start(), start);
};
