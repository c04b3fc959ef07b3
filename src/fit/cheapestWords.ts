import type { Cheapest, FitBoard } from './fitBoard.js';
import { money } from './money.js';
import { nothingCostsLess } from './nothingCostsLess.js';

/** Said in place of a set where one cannot be reckoned. */
export const SEVERAL_CURRENCIES = 'not reckoned, since the prices are in several currencies';

/** What is to be said of a set, each piece without its full stop. */
export interface CheapestTold {
  /** What is bought, each with its price; null where the set makes none of the parts. */
  readonly bought: readonly string[] | null;
  readonly price: string;
  /** That nothing costs less, or what is not shown. */
  readonly proof: string;
  /** Parts made only with a change to their drawing. */
  readonly asked: readonly string[];
  /** Parts that something makes whose price is not entered. */
  readonly unpriced: readonly string[];
  /** Indices of the parts that are not made by it, without those. */
  readonly not: readonly number[];
}

export const NONE_MADE = 'not shown to make any of these parts, whatever of what was looked at is added';

interface Told {
  readonly parts: readonly { readonly name: string }[];
  /** Columns by which a machine that stands still is known, where they are at hand. */
  readonly machines?: FitBoard['machines'];
}

/** What a set costs and makes, piece by piece. `proven` is said where it is; `alone`: the one machine need not be named again. */
export const cheapestTold = (cheapest: Cheapest, { parts, machines = [] }: Told, proven: string, alone = false): CheapestTold => {
  const { currency, cannot, unpriced = [] } = cheapest;
  const name = (part: number): string => parts[part]!.name;
  return {
    bought: cannot.length === parts.length ? null
      : [
        ...(alone ? [] : cheapest.machines).map(({ id, name: called, price }) =>
          `${called} (${money(price, currency)}${machines.some((m) => m.machineId === id && m.name === called && m.standsStill) ? ', ⚠ stands still' : ''})`),
        ...[...cheapest.options, ...cheapest.tools].map((b) => `${b.name} (${money(b.price, currency)})`),
      ],
    price: money(cheapest.price, currency),
    proof: cheapest.proven ? proven : `not proven the cheapest; none costs less than ${money(cheapest.bound, currency)}`,
    asked: cheapest.asked.map(({ part, what }) => `${name(part)} only with ${what}, if the drawing allows it`),
    unpriced: unpriced.map(({ part, what }) => `${name(part)} is made with ${what}, whose price is not entered, so it is not in the sum`),
    not: cannot.filter((part) => !unpriced.some((it) => it.part === part)),
  };
};

/** Why a board has no set over all machines: the end of a sentence. */
export const notReckoned = ({ alone }: Pick<FitBoard, 'alone'>): string => (alone.length === 0 ? 'not reckoned, since not every part has been tried on every machine' : SEVERAL_CURRENCIES);

/** The sets over all machines of a board, or why there is none, a sentence each without its full stop. */
export const cheapestOfAll = (board: Pick<FitBoard, 'cheapest' | 'drawingsFree' | 'alone' | 'parts' | 'machines'>): readonly string[] =>
  board.cheapest === null ? [notReckoned(board)] : [
    cheapestWords(board.cheapest, board, nothingCostsLess(board)),
    ...(board.drawingsFree ? [`if drawings may change wherever it saves money, ${cheapestWords(board.drawingsFree, board, nothingCostsLess())}`] : []),
  ];

/** How many parts, by what, for how much, and how many of them ask for another drawing; null where the set makes none. */
const inShort = (set: Cheapest, board: Told, proven: string): string | null => {
  const { parts } = board;
  const { bought, price, proof } = cheapestTold(set, board, proven);
  if (bought === null) return null;
  const made = parts.length - set.cannot.length;
  const asked = set.asked.length === 0 ? '' : `, ${set.asked.length} of them only if the drawing allows a change`;
  const what = made < parts.length ? `${made} of ${parts.length}` : made === 1 ? 'this part' : made === 2 ? 'both parts' : `all ${made} parts`;
  return `${what}${asked}, by ${bought.length === 0 ? 'nothing that has to be bought' : bought.join(' + ')}: ${price} in all, ${proof}.`;
};

/** The sets over all machines for the head, a sentence each: the one that changes drawings least, and where it costs less or makes more the one that changes them freely; none where there is no set. */
export const cheapestInShort = (board: Pick<FitBoard, 'cheapest' | 'drawingsFree' | 'alone' | 'parts' | 'machines'>): readonly string[] => {
  const { cheapest, drawingsFree } = board;
  const first = cheapest && inShort(cheapest, board, nothingCostsLess(board));
  if (first === null) return [];
  const free = drawingsFree ? inShort(drawingsFree, board, nothingCostsLess()) : null;
  return free === null ? [`The most for the least: ${first}`] : [`The most with the fewest drawings changed: ${first}`, `If drawings may change wherever it saves money: ${free}`];
};

/** What a set costs and makes in a sentence without its full stop; null is one that has prices in several currencies. */
export const cheapestWords = (cheapest: Cheapest | null, board: Told, proven: string, alone = false): string => {
  if (cheapest === null) return SEVERAL_CURRENCIES;
  const { bought, price, proof, asked, unpriced, not } = cheapestTold(cheapest, board, proven, alone);
  if (bought === null) return [NONE_MADE, ...unpriced].join('; ');
  const what = bought.length === 0 ? (alone ? 'with nothing more' : 'with nothing to buy') : `${alone ? 'with ' : ''}${bought.join(' + ')}`;
  const left = not.length > 0 ? [`not shown to be made by it: ${not.map((p) => board.parts[p]!.name).join('; ')}`] : cheapest.cannot.length === 0 ? ['it makes every part'] : [];
  return [`${what}: ${price} in all, ${proof}`, ...left, ...unpriced, ...asked].join('; ');
};
