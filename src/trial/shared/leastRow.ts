import { type Candidate, createCandidates } from './candidates.js';
import type { Fits, Merged, PartPlan, UnitWay } from './merging.js';
import { type Bed, type RowStation, type Standing, spanOf, stand } from './row.js';

/** What is asked: plans of each part, the bed, and what the rack can make up. */
export interface RowQuestion<W extends UnitWay, C> {
  /** For each part its plans, of which one is to be taken; the first is its own best. */
  readonly parts: readonly (readonly PartPlan<W>[])[];
  readonly bed: Bed;
  readonly fits: Fits;
  /** Segments for all stations at once, or null. */
  readonly compose: (stations: readonly { readonly kind: string; readonly length: number }[]) => C | null;
  /** Can these two stand under one ram at all? */
  readonly together: (a: W, b: W) => boolean;
  /** The stations as they stand under one ram (on risers, where heights ask for them); null where they cannot. */
  readonly underOneRam: (stations: readonly Merged<W>[]) => readonly Merged<W>[] | null;
  readonly stopNow: () => boolean;
}

export interface LeastRow<W extends UnitWay, C> {
  /** mm, outer edge to outer edge. */
  readonly span: number;
  /** Left to right. */
  readonly stations: readonly Merged<W>[];
  readonly standing: Standing;
  readonly composed: C;
  /** For each part, which of its plans. */
  readonly plans: readonly number[];
}

export interface RowAnswer<W extends UnitWay, C> {
  readonly best: LeastRow<W, C> | null;
  /** mm: no row of these plans is shorter; Infinity where there is none at all. */
  readonly bound: number;
  /** Every choice was looked into, or could not be better. */
  readonly proven: boolean;
  /** Choices of plans and sharing looked into, and beginnings of orders looked at. */
  readonly counts: { readonly candidates: number; readonly orders: number };
}

/** Looks at the clock once in so many times. */
const CLOCK = 64;

/**
 * The shortest row of stations that serves every part, exactly: every choice of plans and every way to share stations, by the
 * least length that it could have; for each every order from the left, as far as its beginning is not too long already; for each
 * order the lengths that the rack makes up. Of equal rows the one that keeps more to the parts' own best plans.
 */
export const leastRow = <W extends UnitWay, C>({ parts, bed, fits, compose, together, underOneRam, stopNow }: RowQuestion<W, C>): RowAnswer<W, C> => {
  let best: (LeastRow<W, C> & { readonly dearness: number }) | null = null;
  let stopped = false;
  let looks = 0;
  const counts = { candidates: 0, orders: 0 };
  const timeIsOver = (): boolean => {
    if (!stopped && looks++ % CLOCK === 0) stopped = stopNow();
    return stopped;
  };
  const beaten = (span: number, dearness: number): boolean => best !== null && (span > best.span || (span === best.span && dearness >= best.dearness));

  /** The row in this order with lengths that the rack makes up: branches on what it does not. */
  const withLengths = (candidate: Candidate<W>, stations: readonly Merged<W>[], row: readonly RowStation[]): void => {
    const span = spanOf(row, bed);
    if (span === null || beaten(span, candidate.dearness) || timeIsOver()) return;
    const standing = stand(row, bed);
    if (!standing) return;
    const { lengths } = standing;
    const odd = lengths.findIndex((length, k) => !fits(stations[k]!.kind, length));
    const composed = odd < 0 ? compose(lengths.map((length, k) => ({ kind: stations[k]!.kind, length }))) : null;
    if (composed !== null) {
      best = { span, stations, standing, composed, plans: candidate.plans, dearness: candidate.dearness };
      return;
    }
    const k = odd >= 0 ? odd : row.findIndex(({ least, most }) => least < most);
    if (k < 0) return;
    const narrowed = (least: number, most: number): void => {
      if (least <= most) withLengths(candidate, stations, row.map((s, i) => (i === k ? { ...s, least, most } : s)));
    };
    const length = lengths[k]!;
    if (odd < 0) narrowed(length, length);
    narrowed(row[k]!.least, length - 1);
    narrowed(length + 1, row[k]!.most);
  };

  const inOrder = (candidate: Candidate<W>, placed: readonly Merged<W>[], rest: readonly Merged<W>[]): void => {
    if (timeIsOver()) return;
    counts.orders++;
    if (placed.length > 0) {
      const span = spanOf(placed, bed);
      if (span === null || beaten(rest.reduce((sum, s) => sum + s.least + bed.between, span), candidate.dearness)) return;
      if (rest.length === 0) {
        withLengths(candidate, placed, placed);
        return;
      }
    }
    for (const next of rest) {
      // nothing stands to the left of the first and to the right of the last
      if (next.endOnly && placed.length > 0 && rest.length > 1) continue;
      inOrder(candidate, [...placed, next], rest.filter((s) => s !== next));
    }
  };

  const candidates = createCandidates({ parts, bed, fits, together, beaten, stopNow: timeIsOver });
  let least = 0;
  for (;;) {
    const candidate = candidates.next();
    if (!candidate) break;
    ({ least } = candidate);
    const stations = underOneRam(candidate.stations);
    counts.candidates++;
    if (stations) inOrder(candidate, [], stations);
    if (stopped) break;
  }
  const found = best as LeastRow<W, C> | null;
  const span = found?.span ?? Infinity;
  return { best: found, proven: !stopped, bound: stopped ? Math.min(span, Math.max(least, candidates.least())) : span, counts };
};
