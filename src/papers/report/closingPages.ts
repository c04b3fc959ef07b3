import { toldInVain } from '../../fit/index.js';
import { CAUTIONS } from '../cautions.js';
import { type Block, type Paragraph, flow } from '../flow.js';
import { howFiguresCame, mark } from './figureKinds.js';
import { INNER, type Pages, columnsFrom } from '../pages.js';
import type { ReportData } from './reportData.js';
import { money } from './reportWords.js';

const SMALL = { size: 2.4 } as const;
const signed = (sign: string) => (words: string): Paragraph => ({ words, sign, style: SMALL });
const plain = (words: string): Paragraph => ({ words, style: SMALL });

const siteWords = ({ machines }: ReportData): string[] => [...new Map(machines.map((m) => [m.id, m])).values()].map(({ name, site, price, currency }) => {
  const [long, deep] = site.footprint;
  return `${name}: ${money(price, currency)} ${mark('price')}; mass ${site.mass.toLocaleString('en-GB')} kg, footprint ${long.toLocaleString('en-GB')} by ${deep.toLocaleString('en-GB')} mm, ` +
    `height ${site.height.toLocaleString('en-GB')} mm, supply ${site.supply} ${mark('site')}.`;
});

const assumed = ({ parts, board, walk }: ReportData): string[] => [
  ...new Set([
    ...parts.flatMap(({ sheet }) => sheet.part.assumptions.map(({ sentence }) => `${sheet.part.name}: ${sentence}`)),
    ...(walk?.assumptions ?? []),
    `The model of "cheapest": ${board.cheapest?.model ?? 'not reckoned, since the prices are in several currencies'}`,
  ]),
];

/** What the planner warned of: each sentence once for a part, with the machines that it holds for. */
const beware = ({ board }: ReportData): string[] => {
  const all = board.parts.flatMap(({ name }, p) => {
    const by = new Map<string, string[]>();
    board.cells[p]!.forEach(({ warnings }, m) => warnings.filter(isWarning).forEach((words) => by.set(words, [...(by.get(words) ?? []), board.machines[m]!.id])));
    return [...by].map(([words, on]) => ({ name, words, on }));
  });
  const everywhere = new Set(all.map(({ words }) => words).filter((words) => all.filter((it) => it.words === words).length === board.parts.length && board.parts.length > 1));
  return [...everywhere, ...all.filter(({ words }) => !everywhere.has(words)).map(({ name, words, on }) => `${name} on ${on.join(', ')}: ${words}`)];
};

/** What was tried in vain stands with its part. */
const isWarning = (words: string): boolean => !toldInVain(words);

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
    { heading: 'Cautions', paragraphs: [...CAUTIONS, 'Heavy or long sheets need two people or supports.'].map(signed('⚠')) },
    { heading: 'Beware', paragraphs: beware(data).map(signed('⚠')) },
    { heading: 'Taken for granted', paragraphs: assumed(data).map(signed('–')) },
    { heading: 'How each figure came about', paragraphs: howFiguresCame().map(({ sign, words }) => ({ words: `${sign} ${words}`, style: SMALL })) },
  ].filter(({ paragraphs }) => paragraphs.length > 0);
  const start = (): ReturnType<typeof columnsFrom> => {
    pages.begin('terms, assumptions, cautions, sources');
    return columnsFrom(INNER.y, 3);
  };
  flow(pages.doc, blocks, start(), start);
};
