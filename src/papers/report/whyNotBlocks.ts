import { type FitBoard, type FitCell, VERDICT_SIGNS, reasonsTold } from '../../fit/index.js';
import type { Block, Paragraph } from '../flow.js';
import { mark } from './figureKinds.js';
import { shortNames } from './reportWords.js';

const SIZE = 2.5;
/** Machines named in a heading, which is one line; of more it is told how many. */
const MOST_NAMED = 4;

/** What follows the reasons: remedies, or what was tried in vain. */
const afterwards = (cell: FitCell): readonly Pick<Paragraph, 'words' | 'style'>[] => [
  ...cell.remedies.map((remedy, k) => ({
    words: `Remedy ${mark('remedy')}: ${remedy.sentence}${remedy.confirmed ? '' : ' Not confirmed by planning again.'}`, style: { size: SIZE, bold: k === 0 },
  })),
  ...(cell.inVain !== undefined && cell.remedies.length === 0 ? [{ words: cell.remediesCut ? cell.inVain : `No remedy found. ${cell.inVain}`, style: { size: SIZE } }] : []),
];

const HEADS: Readonly<Partial<Record<FitCell['verdict'], string>>> = { 'not decided': 'Not decided', 'not tried': 'Not tried' };

/** Sentences with the machine's own name taken out, so that the same told of two machines reads the same. */
const nameless = (words: string, name: string): string => words.split(` on ${name}`).join('');

/** For every no and every open cell of a part its reasons and remedies; machines with the same reasons share a block. */
export const whyNotBlocks = ({ machines, cells }: Pick<FitBoard, 'machines' | 'cells'>, p: number): Block[] => {
  const names = shortNames(machines);
  const groups = new Map<string, { readonly verdict: string; readonly reasons: readonly string[]; readonly of: number[] }>();
  cells[p]!.forEach((cell, m) => {
    if (cell.verdict === 'makes') return;
    const verdict = `${VERDICT_SIGNS[cell.verdict]} ${HEADS[cell.verdict] ?? 'Why not as it stands'}`;
    const reasons = reasonsTold(cell.reasons).map(({ sentence }) => nameless(sentence, machines[m]!.name));
    const key = JSON.stringify([verdict, reasons]);
    const group = groups.get(key) ?? { verdict, reasons, of: [] };
    groups.set(key, group);
    group.of.push(m);
  });
  return [...groups.values()].map(({ verdict, reasons, of }): Block => {
    const further = new Map<string, { readonly what: ReturnType<typeof afterwards>[number]; readonly on: number[] }>();
    for (const m of of) {
      for (const what of afterwards(cells[p]![m]!)) {
        const entry = further.get(what.words) ?? { what, on: [] };
        further.set(what.words, entry);
        entry.on.push(m);
      }
    }
    const everyOne = of.length === machines.length && of.length > 1;
    const on = of.map((m) => names[m]!).join('; ');
    return {
      heading: `${verdict}: ${everyOne ? `each of the ${of.length} machines` : of.length > MOST_NAMED ? `${of.length} machines` : on}`,
      paragraphs: [
        ...(!everyOne && of.length > MOST_NAMED ? [{ words: `${on}.`, style: { size: SIZE } }] : []),
        ...reasons.map((words): Paragraph => ({ words, sign: '–', style: { size: SIZE } })),
        ...[...further.values()].map(({ what, on }): Paragraph => ({ ...what, sign: '→', words: on.length === of.length ? what.words : `${on.map((m) => names[m]!).join('; ')}: ${what.words}` })),
      ],
    };
  });
};
