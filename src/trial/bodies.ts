import { type Convex, type Vec2, convexPieces, flatten } from '../geometry/index.js';
import type { Contour } from '../geometry/index.js';
import { type Die, type Machine, type Punch, profileOf } from '../shop/index.js';
import { CHORD_ERROR } from './limits.js';

/** A punch and die as they face each other in one station, on one machine. */
export interface Pair {
  readonly key: string;
  readonly punch: Punch;
  readonly die: Die;
  readonly punchFacing: 'as drawn' | 'reversed';
  /** Height of the die's top face over the die seat, risers included. mm */
  readonly dieTop: number;
  /** mm between tip and die top with the ram at its highest. */
  readonly opening: number;
  /** Convex pieces in (back, up) from the punch's tip: the punch itself, and what runs bed-long over it. */
  readonly punchBodies: readonly Convex[];
  readonly ramBodies: readonly Convex[];
  /** Convex pieces in (back, up) from the die top: the die itself, and what runs bed-long under it. */
  readonly dieBodies: readonly Convex[];
  readonly bedBodies: readonly Convex[];
}

/** mm: the floor and the press reach as far as any sheet. */
const FAR = 20_000;

export const sectionPieces = (contour: Contour, by: Vec2 = [0, 0]): readonly Convex[] =>
  convexPieces(flatten(contour, CHORD_ERROR)).map((p) => p.map((q): Vec2 => [q[0] + by[0], q[1] + by[1]]));

export const pairOf = (machine: Machine, punch: Punch, die: Die, punchFacing: 'as drawn' | 'reversed', riser = 0): Pair => {
  const dieTop = die.height + riser;
  const floor: Convex = [[-FAR, -FAR], [FAR, -FAR], [FAR, -machine.bedHeight - dieTop], [-FAR, -machine.bedHeight - dieTop]];
  return {
    key: `${punch.id}/${punchFacing === 'reversed' ? 'reversed' : 'drawn'}/${die.id}/${riser}`,
    punch,
    die,
    punchFacing,
    dieTop,
    opening: machine.openHeight - dieTop - punch.height,
    punchBodies: sectionPieces(profileOf(punch, punchFacing)),
    ramBodies: [...machine.beam, ...machine.clamp].flatMap((c) => sectionPieces(c, [0, punch.height])),
    dieBodies: sectionPieces(die.profile),
    bedBodies: [...machine.bed.flatMap((c) => sectionPieces(c, [0, -dieTop])), floor],
  };
};
