import type { MeasuredDeduction } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import { type Die, type Machine, type Punch, bendsInV } from '../shop/index.js';
import { type Forming, formed } from './forming.js';
import { preBends } from './hemTooling.js';
import type { TrialInput } from './input.js';
import type { Twice } from './states.js';
import { bendLength } from './strokeLength.js';
import type { Reason } from './trial.js';

/** How much nearer to the drawn radius (as a logarithm) an acute punch must bring a bend to be chosen. Common practice, no source. */
const FRAGILE = 0.5;

/** Can this punch form the bend at all: its tip, and sharp enough for the angle under load? */
const shaped = (punch: Punch, { tipRadius, air }: Forming): boolean =>
  bendsInV(punch) && punch.tipRadius === tipRadius && punch.includedAngle <= air.includedAngleUnderLoad;

/** Has a tip like this the punches that let a flange stand up behind them? */
export const isRelieved = ({ shape }: Punch): boolean => shape === 'gooseneck';

/** Can it form the bend and bear its force? */
export const suits = (punch: Punch, forming: Forming): boolean => shaped(punch, forming) && punch.rating >= forming.air.peakForcePerLength;

interface Asked {
  readonly part: Part;
  readonly metal: Metal;
  readonly machine: Machine;
  /** Those that the machine holds. */
  readonly dies: readonly Die[];
  readonly punches: readonly Punch[];
  readonly measured: readonly MeasuredDeduction[];
  readonly leaveOut: NonNullable<TrialInput['leaveOut']>;
  readonly twice: Twice;
}

/**
 * The best forming of a bend (index) with a V of this width, each worked out once: the die that opens widest, the tip whose radius comes
 * nearest to the drawing, or of the tips that have relieved punches; null where there is none. A bend counts by itself here: what bends
 * of one stroke ask together is for who gathers them. `reasons` gathers why tools fell out.
 */
export const formingChoice = ({ part, metal, machine, dies, punches: all, measured, leaveOut, twice }: Asked, reasons: Reason[]): ((v: number, bend: number, relieved?: boolean) => Forming | null) => {
  /** Why this forming asks too much of machine or tools; null where it does not. */
  const overload = (bend: number, { die, air: { peakForcePerLength } }: Forming, held: readonly Punch[]): Reason | null => {
    const { id } = part.bends[bend]!;
    const length = bendLength(part, bend);
    const weakest = Math.min(die.rating, machine.ratingPerLength, Math.max(...held.map((p) => p.rating)));
    if (peakForcePerLength > weakest) {
      return {
        code: 'tool rating', bends: [id], bodies: [die.name], by: peakForcePerLength - weakest,
        sentence: `Bend ${id} in ${die.name} asks ${peakForcePerLength.toFixed(0)} N/mm and the weakest of die, punch and machine is rated ${weakest.toFixed(0)} N/mm.`,
      };
    }
    const force = peakForcePerLength * length;
    return force <= machine.rating ? null : {
      code: 'force', bends: [id], bodies: [die.name], by: force - machine.rating,
      sentence: `Bend ${id} in ${die.name} asks ${(force / 1000).toFixed(0)} kN and the machine is rated ${(machine.rating / 1000).toFixed(0)} kN.`,
    };
  };
  const choose = (v: number, bend: number, punches: readonly Punch[]): Forming | null => {
    const tips = [...new Set(punches.map((p) => p.tipRadius))];
    const { id, kind, insideRadius: drawn } = part.bends[bend]!;
    const isHem = kind === 'hem';
    const mayUse = (die: Die): boolean => die.v === v && (!isHem || preBends(die)) && !leaveOut.some((o) => o.bend === id && o.die === die.id && o.tip === undefined);
    let best: Forming | null = null;
    let least = Infinity;
    for (const die of dies.filter(mayUse).sort((a, b) => b.includedAngle - a.includedAngle)) {
      for (const tip of isHem ? [...new Set(punches.filter(preBends).map((p) => p.tipRadius))] : tips) {
        if (leaveOut.some((o) => o.bend === id && o.die === die.id && o.tip === tip)) continue;
        const answer = formed(metal, part, bend, die, tip, measured, twice.get(bend));
        if ('code' in answer) {
          reasons.push(answer);
          continue;
        }
        const held = punches.filter((p) => shaped(p, answer));
        if (held.length === 0) continue;
        const over = overload(bend, answer, held);
        if (over) {
          reasons.push(over);
          continue;
        }
        // a radius a little nearer to the drawing is no reason to reach for a fragile punch
        const fragile = held.every((p) => p.shape === 'acute') ? FRAGILE : 0;
        const miss = Math.abs(Math.log(Math.max(answer.air.insideRadius, 0.1) / Math.max(drawn, 0.1))) + fragile;
        if (miss < least - 1e-9) [best, least] = [answer, miss];
      }
      if (best) break;
    }
    return best;
  };
  const known = new Map<string, Forming | null>();
  const relievedOnes = all.filter(isRelieved);
  return (v, bend, relieved = false) => {
    const { id, bendAngle, insideRadius } = part.bends[bend]!;
    const key = `${v}|${relieved}|${bendAngle}|${insideRadius}|${bendLength(part, bend)}|${twice.get(bend) ?? ''}|${leaveOut.some((o) => o.bend === id) ? id : ''}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = choose(v, bend, relieved ? relievedOnes : all);
    known.set(key, found);
    return found;
  };
};

/** Punches that have the shape for a bend but bear less than it asks, each with its figures. */
export const tooWeak = (part: Part, bend: number, forming: Forming, punches: readonly Punch[]): readonly Reason[] => {
  const { peakForcePerLength } = forming.air;
  const { id } = part.bends[bend]!;
  return punches.filter((p) => shaped(p, forming) && p.rating < peakForcePerLength).map((punch): Reason => ({
    code: 'tool rating', bends: [id], bodies: [punch.name, forming.die.name], by: peakForcePerLength - punch.rating,
    sentence: `${punch.name} is left out of bend ${id} in ${forming.die.name}: it is rated ${punch.rating.toFixed(0)} N/mm and ${peakForcePerLength.toFixed(0)} is asked.`,
  }));
};
