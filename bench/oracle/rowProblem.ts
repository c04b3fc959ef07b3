import type { RowQuestion } from '../../src/trial/shared/leastRow.js';
import type { PartPlan, UnitWay } from '../../src/trial/shared/merging.js';
import type { Bed, RowUse } from '../../src/trial/shared/row.js';

/** A small question of stations along a bed, all in whole mm. */
export interface RowProblem {
  readonly parts: readonly (readonly PartPlan<UnitWay>[])[];
  readonly bed: Bed;
  /** For each kind the lengths that it comes in, and how much of it there is in all. */
  readonly lengths: Readonly<Record<string, readonly number[]>>;
  readonly most: Readonly<Record<string, number>>;
  /** Two kinds that do not stand under one ram. */
  readonly apart: readonly [string, string] | null;
}

const KINDS = ['a', 'b', 'c'];

/** A seeded problem: two or three parts of one or two plans with three stations at most, each with one or two ways. */
export const randomRow = (random: () => number): RowProblem => {
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const use = (): RowUse => {
    const need = [whole(-3, 0), whole(1, 3)] as const;
    const window = [random() < 0.4 ? -Infinity : need[0] - whole(0, 2), random() < 0.4 ? Infinity : need[1] + whole(0, 3)] as const;
    const metal = [need[0] - whole(0, 4), need[1] + whole(0, 4)] as const;
    return { need, window, metal, place: random() < 0.3 ? [whole(-8, 0), whole(1, 8)] : [-Infinity, Infinity] };
  };
  const way = (dearness: number): UnitWay => ({ kind: KINDS[whole(0, 2)]!, dearness, endOnly: random() < 0.1, uses: Array.from({ length: whole(1, 2) }, use) });
  const plan = (dearness: number, stations: number): PartPlan<UnitWay> => ({ dearness, stations: Array.from({ length: stations }, () => Array.from({ length: random() < 0.4 ? 2 : 1 }, (_, k) => way(k))) });
  const three = random() < 0.5;
  const lengths = Object.fromEntries(KINDS.map((kind) => [kind, [whole(2, 4), whole(5, 6), whole(7, 9)]]));
  return {
    // three stations at most: every row is looked at by the twin
    parts: Array.from({ length: three ? 3 : 2 }, (_, p) => Array.from({ length: random() < 0.4 ? 2 : 1 }, (__, k) => plan(10 * k, !three && p === 0 && random() < 0.6 ? 2 : 1))),
    bed: { length: 2 * whole(10, 13), between: 1, beside: 1 }, lengths,
    most: Object.fromEntries(KINDS.map((kind) => [kind, whole(6, 14)])), apart: random() < 0.3 ? ['a', 'b'] : null,
  };
};

export const standApart = ({ apart }: RowProblem, a: string, b: string): boolean => apart !== null && apart.includes(a) && apart.includes(b) && a !== b;

/** The problem as the planner's search is asked it. */
export const questionOf = (problem: RowProblem): RowQuestion<UnitWay, true> => ({
  parts: problem.parts, bed: problem.bed, fits: (kind, length) => problem.lengths[kind]!.includes(length) && length <= problem.most[kind]!,
  compose: (stations) => {
    const used = new Map<string, number>();
    for (const { kind, length } of stations) used.set(kind, (used.get(kind) ?? 0) + length);
    return [...used].every(([kind, sum]) => sum <= problem.most[kind]!) ? true : null;
  },
  together: (a, b) => !standApart(problem, a.kind, b.kind), underOneRam: (stations) => stations, stopNow: () => false,
});
