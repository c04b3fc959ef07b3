import { type AirBend, hemMinimumRadius } from '../forming/index.js';
import { type MinimumRadius, minimumRadius } from '../metal/index.js';
import { type Die, bendsInV } from '../shop/index.js';
import { type Step, type Trial, type TrialInput, V_LEAST, V_MOST, airBendKept } from '../trial/index.js';
import type { Unpromised } from './unpromised.js';

/** mm: what is printed alike counts alike. */
const ALIKE = 0.005;

/** Is it a figure that may refuse, or one recalled or of habit that only warns? */
const isFounded = ({ mark }: MinimumRadius): boolean => mark === 'standard' || mark === 'textbook' || mark === 'measured';

interface FormedIn {
  readonly die: Die;
  readonly tip: number;
  readonly air: AirBend;
}

/** What each V and tip that the machine holds forms of a bend of this angle, degrees. */
const formedIn = ({ part: { thickness }, metal, machine, rack }: TrialInput, bendAngle: number): readonly FormedIn[] => {
  const tips = [...new Set(rack.punches.filter((p) => bendsInV(p) && machine.clampFamilies.includes(p.tang)).map((p) => p.tipRadius))];
  const dies = rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang) && d.v >= V_LEAST * thickness && d.v <= V_MOST * thickness);
  return dies.flatMap((die) => tips.flatMap((tip): FormedIn[] => {
    const formed = airBendKept({ metal, thickness, tipRadius: tip, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius, bendAngle });
    return formed.ok ? [{ die, tip, air: formed.value }] : [];
  }));
};

/** The founded least radius that a stroke falls short of, across the grain, which bends best; null where it keeps it or none is founded. */
const fallsShortOf = ({ kind, insideRadius, bendAngle }: Step, { metal, part: { thickness } }: TrialInput): MinimumRadius | null => {
  const least = kind === 'offset bend' ? null : kind === 'hem close' ? hemMinimumRadius(metal, thickness, 'across') : minimumRadius(metal, thickness, 'across', bendAngle);
  return least !== null && isFounded(least) && insideRadius < least.radius - ALIKE ? least : null;
};

/**
 * The strokes of a plan that bend the metal to less than its least inside radius, each with the tools that form no more: every V and tip of
 * the rack of a bend, its own alone of a hem's pre-bend, and none of a hem that is closed, for no other closes it wider.
 */
export const tightBends = ({ steps, punches, dies }: Trial, input: TrialInput): readonly Unpromised[] => {
  const { metal, part } = input;
  const known = new Map<number, readonly FormedIn[]>();
  const inAll = (bendAngle: number): readonly FormedIn[] => {
    const all = known.get(bendAngle) ?? formedIn(input, bendAngle);
    known.set(bendAngle, all);
    return all;
  };
  return steps.flatMap((step): Unpromised[] => {
    const least = fallsShortOf(step, input);
    if (least === null) return [];
    const bends = part.bends.filter((b) => step.bends.includes(b.id));
    const [die, punch] = [dies.find((d) => d.id === step.die)!, punches.find((p) => p.id === step.punch)!];
    const isHem = bends.some((b) => b.kind === 'hem');
    const formed = step.kind === 'V bend' && !isHem ? inAll(step.bendAngle) : [];
    const tight = formed.filter(({ air }) => air.insideRadius < least.radius - ALIKE);
    const widest = formed.reduce<FormedIn | null>((most, one) => (most === null || one.air.insideRadius > most.air.insideRadius ? one : most), null);
    const none = widest === null || tight.length < formed.length ? '' : ` The most that a V of the rack forms is ${widest.air.insideRadius.toFixed(2)} mm (${widest.die.name}).`;
    const drawn = Math.min(...bends.map((b) => b.insideRadius));
    const asked = drawn < least.radius - ALIKE ? `; the drawing itself asks ${drawn.toFixed(2)} mm` : '';
    const doing = step.kind === 'hem close' ? `is closed to an inside radius of ${step.insideRadius.toFixed(2)} mm` : `${isHem ? 'is pre-bent to' : 'comes out with'} an inside radius of ${step.insideRadius.toFixed(2)} mm in ${die.name}`;
    return [{
      step,
      leaveOut: step.bends.flatMap((bend) => (step.kind === 'hem close' ? [] : isHem ? [{ die, tip: punch.tipRadius }] : tight).map((t) => ({ bend, die: t.die.id, tip: t.tip }))),
      likewise: false,
      hopeless: step.kind === 'hem close' || (!isHem && tight.length === formed.length),
      reason: {
        code: 'minimum radius', bends: step.bends, bodies: [die.name], by: least.radius - step.insideRadius,
        sentence: `At step ${step.number} ${step.bends.join(' and ')} ${doing}, and ${least.radius.toFixed(2)} mm is the least for ${metal.name} of ${part.thickness} mm even across the grain (${least.source})${asked}.${none}`,
      },
    }];
  });
};
