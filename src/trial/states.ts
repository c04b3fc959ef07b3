import type { Part } from '../sheet/index.js';
import { type Group, groupsOf, singles } from './groups.js';

/**
 * The strokes of a part and its partial folds as bits of one number: bit b is bend b made (or, a hem, pre-bent); the bits
 * after those are the hems closed, in the order of the bends.
 */
export interface States {
  /** Bits that a state has in all. */
  readonly count: number;
  /** The strokes with each bend's own group in one. */
  readonly grouped: readonly Group[];
  /** The same with every group taken apart; null when no group has two bends. */
  readonly single: readonly Group[] | null;
}

const closesOf = (part: Part, hems: readonly number[], groups: readonly Group[]): Group[] =>
  groups.flatMap((group): Group[] => {
    if (part.bends[group.bends[0]!]!.kind !== 'hem') return [];
    const needs = group.bends.reduce((bits, b) => bits | (1 << b), 0);
    const bits = group.bends.reduce((sum, b) => sum | closedBit(part, hems, b), 0);
    return [{ ...group, closes: true, bits, needs }];
  });

const hemsOf = (part: Part): number[] => part.bends.flatMap((b, i) => (b.kind === 'hem' ? [i] : []));

const closedBit = (part: Part, hems: readonly number[], bend: number): number => 1 << (part.bends.length + hems.indexOf(bend));

export const statesOf = (part: Part): States => {
  const hems = hemsOf(part);
  const groups = groupsOf(part);
  const apart = groups.flatMap((g) => singles(part, g));
  const withCloses = (list: readonly Group[]): readonly Group[] => [...list, ...closesOf(part, hems, list)];
  return {
    count: part.bends.length + hems.length,
    grouped: withCloses(groups),
    single: groups.some((g) => g.bends.length > 1) ? withCloses(apart) : null,
  };
};

/** Each bend's angle in a state: degrees, 0 flat. `part` as its tools form it. */
export const anglesIn = (part: Part): ((mask: number) => (bend: number) => number) => {
  const hems = hemsOf(part);
  const closed = part.bends.map((_, b) => (hems.includes(b) ? closedBit(part, hems, b) : 1 << b));
  return (mask) => (bend) => {
    if ((mask & (1 << bend)) === 0) return 0;
    const { bendAngle, hem } = part.bends[bend]!;
    return (mask & closed[bend]!) === 0 ? hem!.preBendAngle : bendAngle;
  };
};

/** A hem is closed after its pre-bend, and pre-bent before it is closed: may this stroke come next, or have been the last? */
export const inTurn = (groups: readonly Group[]): ((group: number, mask: number) => boolean) => {
  const later = groups.map(({ bends, closes }) => (closes ? 0 : groups.reduce((bits, g) => (g.closes && bends.includes(g.bends[0]!) ? bits | g.bits! : bits), 0)));
  return (group, mask) => {
    const needs = groups[group]!.needs ?? 0;
    return (mask & needs) === needs && (mask & later[group]!) === 0;
  };
};
