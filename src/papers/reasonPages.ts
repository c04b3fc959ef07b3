import { costInAll, reasonsTold } from '../fit/index.js';
import type { Reason, Trial } from '../trial/index.js';
import { drawPicture } from './drawPicture.js';
import { type Block, type Paragraph, flow } from './flow.js';
import type { Units } from './format.js';
import { type Area, type Doc, FRAME, INSET } from './paper.js';
import { finalAngles, partPicture } from './partPicture.js';
import { reasonPicture } from './reasonPicture.js';
import { sentence } from './sheetWords.js';
import { wordBlocks } from './setupFirstPage.js';
import { TITLE, drawFrame, titleArea } from './titleBlock.js';

const HEADLINE: Readonly<Record<Trial['verdict'], string>> = {
  makes: 'Steps',
  'makes with remedy': 'Why not as it stands; a remedy is named here',
  'does not make': 'Why this machine does not make the part',
  'not decided': 'Not decided, a limit was reached; so far in the way',
};

/** mm of paper for the picture beside a reason, and for the finished part over the title block. */
const PICTURE = { width: 62, height: 40 } as const;
const PART_HEIGHT = 56;

const foldInWords = (reason: Reason): string => {
  if (reason.made === undefined) return reason.bends.length > 0 ? `Concerns ${reason.bends.join(', ')}.` : 'Concerns the whole part.';
  const made = reason.made.length > 0 ? `${reason.made.join(', ')} made` : 'nothing made';
  return `Drawn with ${made}${reason.bends.length > 0 ? `; thick line: ${reason.bends.join(', ')}, asked for` : ''}.`;
};

const reasonParagraph = (trial: Trial, words: string, reason: Reason, k: number): Paragraph => {
  const picture = reasonPicture(trial, reason, PICTURE);
  return {
    words: `${words}\n${foldInWords(reason)}`,
    sign: String(k + 1),
    style: { size: 3 },
    ...(picture ? { picture } : {}),
  };
};

const remedyParagraph = (trial: Trial, k: number): Paragraph => {
  const { sentence, confirmed, items = [] } = trial.remedies[k]!;
  // one thing alone has its price in the sentence
  const inAll = costInAll(items);
  const cost = inAll === '' ? '' : ` In all ${inAll}.`;
  return {
    words: `${sentence}${cost}${confirmed ? '' : ' Not confirmed by planning again.'}`,
    sign: String(k + 1),
    style: { size: 2.8 },
  };
};

/**
 * In place of steps when the verdict is not 'makes': the reasons as sentences, each with the partial fold in which it
 * bites, the remedies, and what was tried. `newSheet` starts another sheet and gives its columns.
 */
export const drawReasonPages = (doc: Doc, trial: Trial, units: Units, newSheet: () => readonly Area[]): void => {
  drawFrame(doc);
  const title = titleArea();
  const [x, y] = [FRAME.x + INSET, FRAME.y + INSET];
  const bottom = FRAME.y + FRAME.height;
  drawPicture(doc, partPicture(trial.sheet, finalAngles(trial.sheet), { width: TITLE.width - INSET, height: PART_HEIGHT }), title.x, y);
  const reasons = reasonsTold(trial.reasons).map(({ sentence: words, reason }, k) => reasonParagraph(trial, words, trial.reasons[reason]!, k));
  const none: Paragraph = { words: 'No single reason was found.', style: { size: 3 } };
  // no plan stands, so there is nothing to set up or to time
  const { before, after } = wordBlocks({ ...trial, stations: [], steps: [] }, units);
  const blocks: Block[] = [
    { heading: HEADLINE[trial.verdict], paragraphs: reasons.length > 0 ? reasons : [none] },
    ...(trial.remedies.length > 0
      ? [{ heading: 'Remedies: first what leaves the drawing as it is, of each kind the cheapest first', paragraphs: trial.remedies.map((_, k) => remedyParagraph(trial, k)) }]
      : []),
    ...(trial.inVain === undefined ? [] : [{ heading: 'No remedy found', paragraphs: [{ words: trial.inVain, style: { size: 2.8 } }] }]),
    { heading: 'What was tried', paragraphs: [{ words: sentence(trial.model), style: { size: 2.8 } }] },
    ...[...before, ...after].filter(
      ({ heading }) => heading === 'Warnings' || heading === 'Taken for granted' || heading === 'Cautions',
    ),
  ];
  const right = y + PART_HEIGHT + 2;
  flow(
    doc,
    blocks,
    [
      { x, y, width: title.x - x - 4, height: bottom - y - INSET },
      { x: title.x, y: right, width: TITLE.width - INSET, height: title.y - right - 1 },
    ],
    newSheet,
  );
};
