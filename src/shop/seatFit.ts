import { type LinePoint, halfRange, leastSlope } from './leastHalfRange.js';
import type { Machine, SeatPlace, Seats } from './machine.js';

/** From and to along the bed, mm from its middle. */
export type Window = readonly [from: number, to: number];

export interface SeatFit {
  /** mm, half the span of the gap in the window as it stands, its mean taken off by the depth. */
  readonly asIs: number;
  /** mm by which the ram is set lower per 1,000 mm to the right. */
  readonly tilt: number;
  /** mm by which the crowning lifts the middle of the bed. */
  readonly crowning: number;
  /** mm, plus and minus: what these leave in the window. */
  readonly left: number;
}

/** What may follow the wear: as a machine's `seats.tilt` and `crowning` say. */
export interface Following {
  readonly tilt: boolean;
  readonly crowning: boolean;
}

type Measured = Extract<Seats, { source: 'measured' }>;

/** Rounds of halving thirds in the search for the crowning: 0.66 to their power is under a thousandth of a micrometre of a mm. */
const ROUNDS = 40;

/** The gap at a place between two readings, in a straight line; past the last one it holds for half the way to its neighbour. */
const gapAt = (places: readonly SeatPlace[], along: number): number | null => {
  const last = places.length - 1;
  if (along < places[0]!.along) return places[0]!.along - along <= (places[1]!.along - places[0]!.along) / 2 ? places[0]!.gap : null;
  if (along > places[last]!.along) return along - places[last]!.along <= (places[last]!.along - places[last - 1]!.along) / 2 ? places[last]!.gap : null;
  const i = Math.min(last, Math.max(1, places.findIndex((p) => p.along >= along)));
  const [p, q] = [places[i - 1]!, places[i]!];
  return p.gap + ((q.gap - p.gap) * (along - p.along)) / (q.along - p.along);
};

/** Ends, readings and the middles between them; null where the window reaches past what was measured. */
const pointsIn = (places: readonly SeatPlace[], [from, to]: Window): LinePoint[] | null => {
  const ends = [gapAt(places, from), gapAt(places, to)];
  if (ends[0] === null || ends[1] === null) return null;
  const own: LinePoint[] = [[from, ends[0]!], ...places.filter((p) => p.along > from && p.along < to).map((p): LinePoint => [p.along, p.gap]), [to, ends[1]!]];
  // the crowning's parabola bends between readings, so the middles are asked too
  return own.flatMap((p, i): LinePoint[] => (i === 0 ? [p] : [[(own[i - 1]![0] + p[0]) / 2, (own[i - 1]![1] + p[1]) / 2], p]));
};

/** How much of the crowning's lift at the middle comes to a place: a parabola between the side frames, as the planner takes it under load. */
const shapeAt = (machine: Pick<Machine, 'betweenFrames'>, along: number): number => 1 - ((2 * along) / machine.betweenFrames) ** 2;

/**
 * What a set tilt and crowning take off the wear in a window along the bed, and what stays. Constant, tilt and crowning are chosen so
 * that the largest distance left is least (minimax). Crowning only lifts, and by no more than the map itself spans. Null where the
 * window reaches past what was measured.
 */
export const seatFit = (machine: Pick<Machine, 'betweenFrames'>, { places }: Measured, window: Window, follow: Following): SeatFit | null => {
  const points = pointsIn(places, window);
  if (points === null) return null;
  const crowned = (lift: number): LinePoint[] => points.map(([x, y]) => [x, y - lift * shapeAt(machine, x)]);
  const slopeOf = (lift: number): number => (follow.tilt ? leastSlope(crowned(lift)) : 0);
  const leftBy = (lift: number): number => halfRange(crowned(lift), slopeOf(lift));
  let lift = 0;
  if (follow.crowning) {
    const gaps = places.map((p) => p.gap);
    let [low, high] = [0, Math.max(...gaps) - Math.min(...gaps)];
    // the least over the tilt of a convex function is convex in the lift
    for (let i = 0; i < ROUNDS; i++) {
      const third = (high - low) / 3;
      if (leftBy(low + third) <= leftBy(high - third)) high -= third;
      else low += third;
    }
    const found = (low + high) / 2;
    lift = leftBy(found) < leftBy(0) ? found : 0;
  }
  const slope = slopeOf(lift);
  return { asIs: halfRange(points, 0), tilt: slope * 1000, crowning: lift, left: halfRange(crowned(lift), slope) };
};

/** What a setting found for one window leaves in another one; null past what was measured. mm, plus and minus */
export const leftUnder = (machine: Pick<Machine, 'betweenFrames'>, { places }: Measured, window: Window, set: Pick<SeatFit, 'tilt' | 'crowning'>): number | null => {
  const points = pointsIn(places, window);
  return points === null ? null : halfRange(points.map(([x, y]) => [x, y - set.crowning * shapeAt(machine, x)]), set.tilt / 1000);
};
