import type { Rigid, Vec3 } from '../geometry/index.js';
import type { Carrier } from './body.js';
import type { Element, Wing } from './element.js';

export type PhaseName = 'way in' | 'close' | 'retract' | 'bend' | 'open' | 'way out';

interface PhaseCommon {
  readonly name: PhaseName;
  /** The pose of a wing's root plate in the machine. `s` runs from 0 to 1; straight phases are described by their start. */
  root(wing: Wing, s: number): Rigid;
  /** The angle of the running bends, radians. */
  angle(s: number): number;
  /** Where what a carrier bears stands: added to the bodies as they are drawn. At the start, in a straight phase. */
  offset(carrier: Carrier, s: number): Vec3;
  /** In words, where in the phase `s` is. */
  at(s: number): string;
}

/** Bodies and part shift against each other: what a body covers on its way is checked as a whole, nothing is sampled. */
export interface StraightPhase extends PhaseCommon {
  readonly kind: 'straight';
  /** How the bodies of each carrier shift, seen from the part. Those that do not are left out: the phase before saw them. */
  readonly sweep: Readonly<Partial<Record<Carrier, Vec3>>>;
}

/** The part turns (a bend or a tilt): checked pose by pose. */
export interface TurnPhase extends PhaseCommon {
  readonly kind: 'turn';
  /** Degrees of bend angle, or of the tilt, from s = 0 to 1. */
  readonly degrees: number;
  /** No point of the element moves further than this between s0 and s1, seen from the carrier's bodies. mm */
  travel(element: Element, carrier: Carrier, s0: number, s1: number): number;
}

export type Phase = StraightPhase | TurnPhase;
