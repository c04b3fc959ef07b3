import type { FitBoard, FitCell } from '../../fit/index.js';
import type { Block, Paragraph } from '../flow.js';
import { VERDICT_SIGN } from '../titleBlock.js';
import { mark } from './figureKinds.js';
import { shortNames } from './reportWords.js';

const SIZE = 2.5;
/** Machines named in a heading, which is one line; of more it is told how many. */
const MOST_NAMED = 4;

const SCATTER = / scatters by (\d+(?:\.\d+)?) mm( on .*? at the best stops and order tried)/;
const AT_BEND = /^At bend (\S+(?: and \S+)?) (with .*)$/s;

/** Of one dimension tried with several tools only the least scatter is told: the others are worse still. `null`: it is no such reason. */
const scatterOf = (sentence: string): { readonly dimension: string; readonly mm: number } | null => {
  const at = SCATTER.exec(sentence);
  return at ? { dimension: sentence.slice(0, at.index), mm: Number(at[1]) } : null;
};

/**
 * The reasons of one cell as a buyer reads them: a dimension out of its tolerance once, with the least that any tools scatter; the same of
 * several bends with one pair of tools once. Each where it stood first.
 */
export const reasonsTold = (reasons: FitCell['reasons']): readonly string[] => {
  const told = new Map<string, { words: string; code: string; mm: number; bends: string[] }>();
  for (const { sentence, code } of reasons) {
    const scatter = scatterOf(sentence);
    const [, bend, tail] = AT_BEND.exec(sentence) ?? [];
    const key = `${code} ${scatter?.dimension ?? tail ?? sentence}`;
    const known = told.get(key);
    if (!known) told.set(key, { words: tail ?? sentence, code, mm: scatter?.mm ?? 0, bends: bend === undefined ? [] : [bend] });
    else if (scatter && scatter.mm < known.mm) Object.assign(known, { words: sentence, mm: scatter.mm });
    else if (bend !== undefined && !known.bends.includes(bend)) known.bends.push(bend);
  }
  return [...told.values()].map(({ words, code, bends }) => `${bends.length === 0 ? words : `At ${bends.length > 1 ? 'bends' : 'bend'} ${bends.join('; ')} ${words}`} (${code})`);
};

/** What follows the reasons: remedies, or what was tried in vain. */
const afterwards = (cell: FitCell): readonly Pick<Paragraph, 'words' | 'style'>[] => [
  ...cell.remedies.map((remedy, k) => ({
    words: `Remedy ${mark('remedy')}: ${remedy.sentence}${remedy.confirmed ? '' : ' Not confirmed by planning again.'}`, style: { size: SIZE, bold: k === 0 },
  })),
  ...(cell.inVain !== undefined && cell.remedies.length === 0 ? [{ words: `No remedy found. ${cell.inVain}`, style: { size: SIZE } }] : []),
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
    const verdict = `${VERDICT_SIGN[cell.verdict]} ${HEADS[cell.verdict] ?? 'Why not as it stands'}`;
    const reasons = reasonsTold(cell.reasons).map((words) => nameless(words, machines[m]!.name));
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
