import { type Die, type Machine, type Punch, profileOf } from '../shop/index.js';
import { type Body, bodiesOf, bodyOf } from './body.js';
import type { Ears } from './ears.js';

/** A punch and die as they face each other in one station, on one machine. */
export interface Pair {
  readonly key: string;
  /** What of it comes down, and what stands below: questions about one are the same whatever the other is. */
  readonly punchKey: string;
  readonly dieKey: string;
  readonly punch: Punch;
  readonly die: Die;
  readonly punchFacing: 'as drawn' | 'reversed';
  readonly dieFacing: 'as drawn' | 'reversed';
  /** The ear segments at both ends of the punch; null for plain segments throughout. */
  readonly ears: Ears | null;
  /** Height of the die's top face over the die seat, risers included. mm */
  readonly dieTop: number;
  /** mm between tip and die top with the ram at its highest. */
  readonly opening: number;
  /** Convex pieces in (back, up) from the punch's tip: the punch itself, and what runs bed-long over it. */
  readonly punchBodies: readonly Body[];
  readonly ramBodies: readonly Body[];
  /** Convex pieces in (back, up) from the die top: the die itself, and what runs bed-long under it. */
  readonly dieBodies: readonly Body[];
  readonly bedBodies: readonly Body[];
}

/** mm: the floor and the press reach as far as any sheet. */
const FAR = 20_000;

export const pairOf = (machine: Machine, punch: Punch, die: Die, punchFacing: 'as drawn' | 'reversed', riser = 0, ears: Ears | null = null): Pair => {
  const dieTop = die.height + riser;
  const floor = bodyOf([[-FAR, -FAR], [FAR, -FAR], [FAR, -machine.bedHeight - dieTop], [-FAR, -machine.bedHeight - dieTop]]);
  // both halves of an offset tool turn together
  const dieFacing = die.offset ? punchFacing : 'as drawn';
  const punchKey = `${punch.id}/${punchFacing === 'reversed' ? 'reversed' : 'drawn'}`;
  const dieKey = `${die.id}/${riser}${dieFacing === 'reversed' ? '/reversed' : ''}`;
  return {
    key: ears ? `${punchKey}/${dieKey}/ears ${ears.reach} ${ears.footHeight} ${ears.slides}` : `${punchKey}/${dieKey}`,
    punchKey,
    dieKey,
    ears,
    punch,
    die,
    punchFacing,
    dieFacing,
    dieTop,
    opening: machine.openHeight - dieTop - punch.height,
    punchBodies: bodiesOf(profileOf(punch, punchFacing)),
    ramBodies: [...machine.beam, ...machine.clamp].flatMap((c) => bodiesOf(c, [0, punch.height])),
    dieBodies: bodiesOf(profileOf(die, dieFacing)),
    bedBodies: [...machine.bed.flatMap((c) => bodiesOf(c, [0, -dieTop])), floor],
  };
};
