import type { Metal } from '../metal/index.js';
import { type Part, facetHeight, inHits } from '../sheet/index.js';
import { type Die, type Machine, type Punch, type Rack, bendsInV } from '../shop/index.js';
import type { AirBend } from '../forming/index.js';
import { airBendKept } from './airBendKept.js';
import { type Group, bitsOf } from './groups.js';
import { V_LEAST } from './limits.js';
import { bendLength } from './strokeLength.js';
import type { Reason } from './trial.js';

/** mm that corners between hits may stand out over the drawn arc, where the V leaves room for so many hits. Common practice, no source. */
const WISHED_HEIGHT = 0.2;
/** What is told as made at all, and with how many hits. Common practice, no source. */
const MOST_HEIGHT = 1;
const MOST_HITS = 20;
/** What a hit's own radius is begun with, as a multiple of the thickness. Common practice, no source. */
const CORNER = 0.16 * V_LEAST;

const RADIANS = Math.PI / 180;

/** The fewest hits whose corners stand out by no more than `height`. */
const hitsFor = (insideRadius: number, bendAngle: number, height: number): number =>
  Math.max(2, Math.ceil(bendAngle / ((2 * Math.acos(insideRadius / (insideRadius + height))) / RADIANS)));

/**
 * The part with its bends of large radius divided into hits, or why one is not: as many hits as keep the corners between them
 * within the height wished, or as the narrowest V of the rack that bears a hit's force has room for. `told`: what was divided, in sentences.
 */
export const dividedIntoHits = (part: Part, metal: Metal, machine: Machine, rack: Rack): { readonly part: Part; readonly told: readonly string[] } | { readonly refused: Reason } => {
  const t = part.thickness;
  let divided = part;
  const told: string[] = [];
  const dies = rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang) && d.v >= V_LEAST * t).sort((a, b) => a.v - b.v || b.includedAngle - a.includedAngle);
  // as the plan takes them: the sharpest tip, a fragile punch last
  const fragile = (p: Punch): number => (p.shape === 'acute' ? 1 : 0);
  const punches = rack.punches.filter((p) => bendsInV(p) && machine.clampFamilies.includes(p.tang)).sort((a, b) => fragile(a) - fragile(b) || a.tipRadius - b.tipRadius || b.rating - a.rating);
  for (const [index, bend] of part.bends.entries()) {
    if (bend.kind !== 'rolled') continue;
    const { id, insideRadius, bendAngle } = bend;
    const no = (why: string, by: number): { readonly refused: Reason } => ({
      refused: { code: 'rolled', bends: [id], by, sentence: `Bend ${id} has an inside radius of ${insideRadius.toFixed(1)} mm on ${t} mm of sheet: one stroke of a V does not form it, and ${why}.` },
    });
    if (dies.length === 0 || punches.length === 0) return no('the rack has no V for hits', insideRadius);
    const length = bendLength(part, index);
    /** How a hit forms in a V with the first punch that keeps the ratings of die, punch and machine; null where none does. */
    const formedIn = (die: Die, count: number): AirBend | null => {
      for (const { tipRadius, rating, includedAngle } of punches) {
        const air = airBendKept({ metal, thickness: t, tipRadius, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius, bendAngle: bendAngle / count });
        if (!air.ok || includedAngle > air.value.includedAngleUnderLoad) continue;
        const { peakForcePerLength } = air.value;
        if (peakForcePerLength <= Math.min(die.rating, rating, machine.ratingPerLength) && peakForcePerLength * length <= machine.rating) return air.value;
      }
      return null;
    };
    /** The narrowest V that bears so many hits' force, and whether the flat between them is long enough for it (a wider one asks more). Lengths from the hit's middle. */
    const narrowestFor = (count: number): { readonly die: Die; readonly hasRoom: boolean } | null => {
      for (const die of dies) {
        const air = formedIn(die, count);
        if (!air) continue;
        const { minFlange, deduction, allowance, insideRadius: formed } = air;
        return { die, hasRoom: 2 * (insideRadius - formed) * Math.tan((bendAngle / count / 2) * RADIANS) + allowance / 2 >= minFlange - deduction / 2 };
      }
      return null;
    };
    const wished = hitsFor(insideRadius, bendAngle, WISHED_HEIGHT);
    if (wished > MOST_HITS) return no(`hits whose corners stand out by no more than ${WISHED_HEIGHT} mm would be ${wished}, where ${MOST_HITS} are the limit; it is rolled`, wished - MOST_HITS);
    const least = hitsFor(insideRadius, bendAngle, MOST_HEIGHT);
    let count = wished;
    let narrowest = narrowestFor(count);
    for (; count > least && !narrowest?.hasRoom; narrowest = narrowestFor(count)) count--;
    if (!narrowest) return no('no V of the rack bears the force of its hits with a punch and this machine', insideRadius);
    const { die, hasRoom } = narrowest;
    if (!hasRoom) return no(`${least} hits, the fewest whose corners stand out by no more than ${MOST_HEIGHT} mm, lie closer together than ${die.name} has room for`, insideRadius);
    const answer = inHits(divided, index, count, Math.min(CORNER * t, insideRadius / 2));
    if (!answer.ok) return { refused: { code: 'rolled', bends: [id], sentence: answer.failure.sentence, by: insideRadius } };
    divided = answer.value;
    const height = facetHeight(insideRadius, 0, bendAngle / count);
    told.push(`Bend ${id} of inside radius ${insideRadius.toFixed(1)} mm is made in ${count} hits of ${(bendAngle / count).toFixed(1)} degrees bend angle each; its facets touch the drawn arc in their middles, the corners between them stand out by ${height.toFixed(2)} mm at most${count < wished ? `, more than the ${WISHED_HEIGHT} mm wished, since ${die.name} has no room for more hits` : ''}.`);
  }
  return { part: divided, told };
};

/** Hits of one bend follow each other from one end of its arc to the other, without other strokes between: may this stroke come next? */
export const hitsInTurn = ({ bends }: Part, groups: readonly Group[]): ((group: number, mask: number) => boolean) => {
  const rows = [...new Set(bends.flatMap((b) => (b.hit ? [b.hit.of] : [])))].map((of) =>
    bends.flatMap((b, i) => (b.hit?.of === of ? [{ bit: 1 << i, number: b.hit.number }] : [])).sort((a, b) => a.number - b.number).map(({ bit }) => bit));
  if (rows.length === 0) return () => true;
  // hits of two bends in one stroke: then neither can wait for the other
  const joint = groups.some((g) => rows.filter((row) => row.some((bit) => (bitsOf(g) & bit) !== 0)).length > 1);
  return (group, mask) => {
    const bits = bitsOf(groups[group]!);
    return rows.every((row) => {
      const made = row.filter((bit) => (mask & bit) !== 0).length;
      const at = row.findIndex((bit) => (bits & bit) !== 0);
      if (at < 0) return joint || made === 0 || made === row.length;
      const before = row.slice(0, at).every((bit) => (mask & bit) !== 0) && made === at;
      const after = row.slice(at + 1).every((bit) => (mask & bit) !== 0) && made === row.length - 1 - at;
      return before || after;
    });
  };
};

/** mm between neighbouring hits on the blank, as they form: what the gauge moves from one to the next. */
export const hitPitch = (part: Part, allowances: readonly number[], of: string): number => {
  const hit = part.bends.findIndex((b) => b.hit?.of === of && b.hit.number === 1);
  const next = part.bends.find((b) => b.hit?.of === of && b.hit.number === 2)!;
  const facet = next.sides[0];
  const { line } = part.bends[hit]!.sides[1];
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const width = (dx * (facet.line.from[1] - line.from[1]) - dy * (facet.line.from[0] - line.from[0])) / Math.hypot(dx, dy);
  return allowances[hit]! + width;
};
