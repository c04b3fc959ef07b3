import { type AirBend, type AirBendSetup, airBend, closedHemDeduction, halfOpening, hemCloseForce, setback } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import type { HemArc, Part } from '../sheet/index.js';
import type { Die, Machine, Punch, Rack } from '../shop/index.js';
import { type Pair, pairOf } from './bodies.js';
import { strongestSheet } from './strongestSheet.js';
import type { Reason } from './trial.js';
import type { VBend } from './vBend.js';

/** A hem of an inside radius up to this many thicknesses counts as closed (as the nominal development takes it). Common practice, no source. */
const CLOSED_HEM = 0.25;
/** A closed hem's faces stay this far apart: it springs open by about so much, and flat faces are never drawn into each other. mm. Common practice, no source. */
const CLOSED_GAP = 0.1;
/** Pre-bends are made in dies of 28 to 35 degrees included. Common practice, no source. */
const PRE_BEND_DIE = 35;
/** Degrees that a pre-bend under load stays more open than die and punch, so that it is not bottomed. */
const SPARE = 1;
/** Degrees by which the first try stands over the die's angle, and how many whole degrees are tried from there. */
const FIRST_TRY = 10;
const TRIES = 8;

/** May this die, or this punch, pre-bend a hem? */
export const preBends = ({ includedAngle }: Pick<Punch | Die, 'includedAngle'>): boolean => includedAngle <= PRE_BEND_DIE;

/** What a hem becomes in an acute die under a tip, and how its arc goes from there to closed. */
export interface HemForming {
  readonly setup: AirBendSetup;
  readonly air: AirBend;
  readonly bend: VBend;
  readonly hem: HemArc;
  readonly closedRadius: number;
  /** N/mm */
  readonly closeForce: number;
}

/** Degrees of bend angle: a hem drawn as parallel lies within this, a tear-drop beyond. */
const MOST_HEM = 180.5;

const isClosedHem = (insideRadius: number, thickness: number): boolean => insideRadius <= CLOSED_HEM * thickness;

const closedArc = (part: Part, bend: number, kFactor: number): { readonly radius: number; readonly length: number } => {
  const { thickness } = part;
  const { bendAngle, insideRadius } = part.bends[bend]!;
  if (isClosedHem(insideRadius, thickness)) {
    const radius = Math.max(insideRadius, CLOSED_GAP / 2);
    return { radius, length: 2 * setback(radius, thickness, bendAngle) - closedHemDeduction(thickness) };
  }
  return { radius: insideRadius, length: ((bendAngle * Math.PI) / 180) * (insideRadius + kFactor * thickness) };
};

/** The sharpest whole degree that the acute die bends in air, and the hem that comes of it. */
export const formedHem = (metal: Metal, part: Part, bend: number, die: Die, tipRadius: number): HemForming | Reason => {
  const { thickness } = part;
  const setup: AirBendSetup = { metal, thickness, tipRadius, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius };
  const refused = (sentence: string): Reason => ({ code: 'hem', bends: [part.bends[bend]!.id], bodies: [die.name], sentence: `${die.name}: ${sentence}` });
  const { id, bendAngle: wanted } = part.bends[bend]!;
  if (wanted > MOST_HEM) return { code: 'hem', bends: [id], by: wanted - 180, sentence: `Hem ${id} is turned through ${wanted.toFixed(1)} degrees of bend angle (a tear-drop): a flattening punch over an anvil closes a hem to 180 degrees and no further.` };
  const first = airBend({ ...setup, bendAngle: 180 - die.includedAngle - FIRST_TRY });
  if (!first.ok) return refused(first.reason.sentence);
  const wished = Math.floor(180 - die.includedAngle - SPARE - first.value.springback) + 1;
  for (let bendAngle = wished; bendAngle > wished - TRIES; bendAngle--) {
    const answer = airBend({ ...setup, bendAngle });
    if (!answer.ok || answer.value.includedAngleUnderLoad < die.includedAngle + SPARE) continue;
    const air = answer.value;
    const closed = closedArc(part, bend, air.kFactor);
    return {
      setup, air, closedRadius: closed.radius, closeForce: closingForce(metal, part, bend),
      hem: { preBendAngle: bendAngle, preBendAngleUnderLoad: air.bendAngleUnderLoad, preInsideRadius: air.insideRadius, preLength: air.allowance, closedLength: closed.length },
      bend: {
        kind: 'V', allowance: air.allowance, beside: Math.max(0, closed.length - air.allowance) / 2,
        neutral: air.allowance / ((bendAngle * Math.PI) / 180) - air.insideRadius, thickness,
        halfOpening: halfOpening(setup), shoulderRadius: die.shoulderRadius, bendAngle, bendAngleUnderLoad: air.bendAngleUnderLoad,
      },
    };
  }
  return refused(`no pre-bend of a hem between ${wished - TRIES + 1} and ${wished} degrees of bend angle was found.`);
};

/** N/mm to close this hem. */
const closingForce = (metal: Metal, part: Part, bend: number): number =>
  hemCloseForce(metal.tensile.typical, part.thickness, isClosedHem(part.bends[bend]!.insideRadius, part.thickness) ? 'closed' : 'open');

/** The flattening pairs of the rack that bear the force, where there are such that of the strongest sheet too; or why there is none. `length`: mm of hem closed at once. */
export const closingPairs = (
  metal: Metal, part: Part, bends: readonly number[], length: number, machine: Machine, rack: Rack,
): { readonly pairs: readonly Pair[]; readonly reason: Reason | null } => {
  const ids = bends.map((b) => part.bends[b]!.id);
  const perLength = Math.max(...bends.map((b) => closingForce(metal, part, b)));
  const dies = rack.dies.filter((d) => d.shape === 'anvil' && machine.seatFamilies.includes(d.tang));
  const punches = rack.punches.filter((p) => p.shape === 'flattening' && machine.clampFamilies.includes(p.tang));
  const all = punches.flatMap((punch) => dies.map((die) => pairOf(machine, punch, die, 'as drawn')));
  if (all.length === 0) {
    return { pairs: [], reason: { code: 'hem', bends: ids, sentence: `Hem ${ids.join(', ')} is closed between a flattening punch and an anvil; no such pair fits this machine.` } };
  }
  const rated = (p: Pair): number => Math.min(p.punch.rating, p.die.rating, machine.ratingPerLength);
  const bearing = (force: number): readonly Pair[] => all.filter((p) => rated(p) >= force);
  const strong = bearing(perLength * strongestSheet(metal, part.thickness));
  const pairs = strong.length > 0 ? strong : bearing(perLength);
  const most = Math.max(...all.map(rated));
  if (pairs.length === 0) {
    return { pairs, reason: { code: 'tool rating', bends: ids, by: perLength - most, sentence: `Closing hem ${ids.join(', ')} asks ${perLength.toFixed(0)} N/mm (common practice, no source) and the weakest of punch, anvil and machine is rated ${most.toFixed(0)} N/mm.` } };
  }
  const force = perLength * length;
  if (force > machine.rating) {
    return { pairs: [], reason: { code: 'force', bends: ids, by: force - machine.rating, sentence: `Closing hem ${ids.join(', ')} asks ${(force / 1000).toFixed(0)} kN (common practice, no source) and the machine is rated ${(machine.rating / 1000).toFixed(0)} kN.` } };
  }
  return { pairs, reason: null };
};
