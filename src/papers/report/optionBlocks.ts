import { money } from '../../fit/index.js';
import type { OptionWorth } from '../../fit/index.js';
import type { Block, Paragraph } from '../flow.js';
import { mark } from './figureKinds.js';
import type { ReportData } from './reportData.js';
import { shortNames } from './reportWords.js';

const STYLE = { size: 2.4 } as const;

/** First what makes a part possible, then what saves most. */
const byWorth = (a: OptionWorth, b: OptionWorth): number => b.makes.length - a.makes.length || b.minutesPerBatch - a.minutesPerBatch || a.price - b.price;

/** "Quick clamps on General (8,600 EUR) and on Small and fast (4,200 EUR); Powered R on ...": each option's name once. */
const named = (options: readonly OptionWorth[], nameOf: (machine: string) => string): string => {
  const byName = new Map<string, string[]>();
  for (const { name, machine, price, currency } of options) byName.set(name, [...(byName.get(name) ?? []), `on ${nameOf(machine)} (${money(price, currency)})`]);
  return [...byName].map(([name, on]) => `${name} ${on.join(', ')}`).join('; ');
};

/** What each option buys for these parts: each that buys something in a line; those that buy nothing together, and why. */
export const optionBlocks = ({ board, machines }: ReportData): Block[] => {
  if (board.options.length === 0) return [];
  const short = shortNames(board.machines);
  const nameOf = (id: string): string => short[board.machines.findIndex((machine) => machine.id === id)] ?? id;
  const counted = new Set(machines.flatMap(({ id, options }) => options.filter(({ effect }) => effect).map((option) => `${id}/${option.id}`)));
  const worth = board.options.filter(({ nothing }) => !nothing).sort(byWorth);
  const none = board.options.filter(({ nothing }) => nothing);
  const groups = new Map<string, OptionWorth[]>();
  for (const option of none) {
    const open = option.notDecided.length > 0 ? `; ${option.notDecided.join(', ')}: not decided` : '';
    const key = counted.has(option.id) ? `Nothing for these parts${open}` : "Nothing that the planner counts, for it changes no figure of the machine's data";
    groups.set(key, [...(groups.get(key) ?? []), option]);
  }
  const paragraph = (words: string): Paragraph => ({ words, sign: '–', style: STYLE });
  return [{
    heading: `What each option buys for these parts ${mark('option')}`,
    paragraphs: [
      ...worth.map(({ name, machine, price, currency, sentence }) => paragraph(`${name} on ${nameOf(machine)}, ${money(price, currency)}: ${sentence.slice(name.length + 2)}`)),
      ...[...groups].map(([why, options]) => paragraph(`${why}: ${named(options, nameOf)}.`)),
    ],
  }];
};
