import FlatQueue from 'flatqueue';
import { type Fits, type Merged, type PartPlan, type UnitWay, merged } from './merging.js';
import type { Bed } from './row.js';

/** One choice of plans with one way to share stations. */
export interface Candidate<W extends UnitWay> {
  /** For each part, which of its plans. */
  readonly plans: readonly number[];
  readonly stations: readonly Merged<W>[];
  /** mm: tools and the room between them alone; no row of it is shorter. */
  readonly least: number;
  readonly dearness: number;
}

/** Some parts have been given their stations, the others not yet. */
interface Partial<W extends UnitWay> extends Candidate<W> {
  readonly served: number;
}

export interface Candidates<W extends UnitWay> {
  /** The next by its least length, then by its dearness; null when there is none left. */
  readonly next: () => Candidate<W> | null;
  /** mm: none that is still to come is shorter. */
  readonly least: () => number;
}

interface Asked<W extends UnitWay> {
  readonly parts: readonly (readonly PartPlan<W>[])[];
  readonly bed: Bed;
  readonly fits: Fits;
  /** Can these two stand under one ram at all? */
  readonly together: (a: W, b: W) => boolean;
  /** Longer or dearer ones are of no more use. */
  readonly beaten: (least: number, dearness: number) => boolean;
  readonly stopNow: () => boolean;
}

/** Far below a millimetre, and so many of them still are. */
const PER_DEARNESS = 1e-6;
/** Among equals the one with more parts served goes first. */
const PER_PART = 1e-9;

/** All choices of plans and ways to share stations, part by part, the shortest first: a part more never makes a row shorter. */
export const createCandidates = <W extends UnitWay>({ parts, bed, fits, together, beaten, stopNow }: Asked<W>): Candidates<W> => {
  const kinds = (plans: readonly PartPlan<W>[]): number => new Set(plans.flatMap(({ stations }) => stations.flat().map(({ kind }) => kind))).size;
  // those with the least choice first: then what is still to come adds little
  const order = [...parts.keys()].sort((a, b) => kinds(parts[a]!) - kinds(parts[b]!));
  const queue = new FlatQueue<number>();
  const waiting: (Partial<W> | null)[] = [];
  const lengthOf = (stations: readonly Merged<W>[]): number => stations.reduce((sum, s) => sum + s.least, Math.max(0, stations.length - 1) * bed.between);
  const push = (one: Partial<W>): void => {
    if (!beaten(one.least, one.dearness)) queue.push(waiting.push(one) - 1, one.least + one.dearness * PER_DEARNESS - one.served * PER_PART);
  };
  const expand = ({ plans, stations, dearness, served }: Partial<W>): void => {
    const part = order[served]!;
    parts[part]!.forEach((plan, index) => {
      const chosen = plans.map((before, p) => (p === part ? index : before));
      const serve = (k: number, standing: readonly Merged<W>[], dear: number): void => {
        const least = lengthOf(standing);
        if (beaten(least, dear)) return;
        if (k === plan.stations.length) {
          push({ plans: chosen, stations: standing, dearness: dear, served: served + 1, least });
          return;
        }
        for (const way of plan.stations[k]!) {
          if (!standing.every((s) => s.kind === way.kind || together(s.ways[0]!, way))) continue;
          standing.forEach((s, i) => {
            const one = s.kind === way.kind ? merged([...s.ways, way], bed, fits) : null;
            if (one) serve(k + 1, standing.map((other, j) => (j === i ? one : other)), dear + way.dearness);
          });
          const alone = merged([way], bed, fits);
          if (alone) serve(k + 1, [...standing, alone], dear + way.dearness);
        }
      };
      serve(0, stations, dearness + plan.dearness);
    });
  };
  push({ plans: parts.map(() => -1), stations: [], dearness: 0, served: 0, least: 0 });
  return {
    least: () => {
      const next = queue.peek();
      return next === undefined ? Infinity : waiting[next]!.least;
    },
    next: () => {
      for (;;) {
        if (stopNow()) return null;
        const at = queue.pop();
        if (at === undefined) return null;
        const one = waiting[at]!;
        waiting[at] = null;
        if (beaten(one.least, one.dearness)) continue;
        if (one.served === parts.length) return one;
        expand(one);
      }
    },
  };
};
