import type { Part } from '../sheet/index.js';
import { type Group, bitsOf, groupsOf, singles } from './groups.js';
import type { Offset } from './offsets.js';

/** Bends (index) that are made in two passes, and the bend angle to which the first one takes them, released. Degrees */
export type Twice = ReadonlyMap<number, number>;

export const NEVER_TWICE: Twice = new Map();

/**
 * The strokes of a part and its partial folds as bits of one number: bit b is bend b made (or, a hem, pre-bent; in two passes,
 * begun); the bits after those are the hems closed and the bends finished, hems first, each in the order of the bends.
 */
export interface States {
  /** Bits that a state has in all. */
  readonly count: number;
  /** The strokes with each bend's own group in one. */
  readonly grouped: readonly Group[];
  /** The same with every group taken apart; null when no group has two bends. */
  readonly single: readonly Group[] | null;
}

/** Bends with more than two states, in the order of their later bits. */
const laterOf = (part: Part, twice: Twice): number[] =>
  [...part.bends.flatMap((b, i) => (b.kind === 'hem' ? [i] : [])), ...[...twice.keys()].sort((a, b) => a - b)];

const laterBit = (part: Part, later: readonly number[], bend: number): number => 1 << (part.bends.length + later.indexOf(bend));

/** The strokes that bends ask after their first one. */
const secondsOf = (part: Part, later: readonly number[], groups: readonly Group[], twice: Twice): Group[] =>
  groups.flatMap((group): Group[] => {
    const [first] = group.bends;
    if (!later.includes(first!)) return [];
    const needs = group.bends.reduce((bits, b) => bits | (1 << b), 0);
    const bits = group.bends.reduce((sum, b) => sum | laterBit(part, later, b), 0);
    return [{ ...group, ...(twice.has(first!) ? { pass: 2 } : { closes: true }), bits, needs }];
  });

/** `tooMuch`: groups that ask too much in one stroke, and are taken apart. */
export const statesOf = (part: Part, twice: Twice = NEVER_TWICE, offsets: readonly Offset[] = [], tooMuch: (group: Group) => boolean = () => false): States => {
  const later = laterOf(part, twice);
  const groups = groupsOf(part, offsets).flatMap((g) => (g.bends.length > 1 && tooMuch(g) ? singles(part, g) : [g]));
  const apart = groups.flatMap((g) => singles(part, g));
  const whole = (list: readonly Group[]): readonly Group[] =>
    [...list.map((g): Group => (twice.has(g.bends[0]!) ? { ...g, pass: 1 } : g)), ...secondsOf(part, later, list, twice)];
  return {
    count: part.bends.length + later.length,
    grouped: whole(groups),
    single: groups.some((g) => g.bends.length > 1 && !g.offset) ? whole(apart) : null,
  };
};

/** Each bend's angle in a state: degrees, 0 flat. `part` as its tools form it. */
export const anglesIn = (part: Part, twice: Twice = NEVER_TWICE): ((mask: number) => (bend: number) => number) => {
  const later = laterOf(part, twice);
  const done = part.bends.map((_, b) => (later.includes(b) ? laterBit(part, later, b) : 1 << b));
  return (mask) => (bend) => {
    if ((mask & (1 << bend)) === 0) return 0;
    const { bendAngle, hem } = part.bends[bend]!;
    return (mask & done[bend]!) === 0 ? twice.get(bend) ?? hem!.preBendAngle : bendAngle;
  };
};

/** A second stroke on a bend comes after its first: may this stroke come next, or have been the last? */
export const inTurn = (groups: readonly Group[]): ((group: number, mask: number) => boolean) => {
  const later = groups.map((group) => groups.reduce((bits, g) => (((g.needs ?? 0) & bitsOf(group)) === 0 ? bits : bits | bitsOf(g)), 0));
  return (group, mask) => {
    const needs = groups[group]!.needs ?? 0;
    return (mask & needs) === needs && (mask & later[group]!) === 0;
  };
};
