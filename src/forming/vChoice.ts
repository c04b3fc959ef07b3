import type { Metal } from '../metal/index.js';
import { airBend } from './airBend.js';
import type { AirBend, AirBendSetup } from './airBendTypes.js';
import { DEGREE } from './degrees.js';
import type { VConvention } from './vee.js';

/** A die and a punch as far as forming sees them. */
export interface DieData {
  readonly id: string;
  readonly v: number;
  readonly vConvention: VConvention;
  readonly includedAngle: number;
  readonly shoulderRadius: number;
  /** N/mm */
  readonly rating: number;
}
export interface PunchData {
  readonly id: string;
  readonly tipRadius: number;
  readonly includedAngle: number;
  readonly rating: number;
}

/** What is to be bent. */
export interface VQuestion {
  readonly metal: Metal;
  readonly thickness: number;
  readonly bendAngle: number;
  /** mm, as drawn, if it matters. */
  readonly insideRadius?: number;
  /** Shortest flange, outside. */
  readonly flange?: number;
  readonly friction?: number;
}

/** A pair of tools for the bend, and what speaks against it. */
export interface ToolChoice {
  readonly punch: string;
  readonly die: string;
  readonly v: number;
  readonly vConvention: VConvention;
  readonly vOverThickness: number;
  /** Null when there is no such air bend. */
  readonly bend: AirBend | null;
  /** Greatest pressure of the shoulders on the sheet (Hertz), MPa: how readily it is marked. */
  readonly shoulderPressure: number | null;
  readonly suits: boolean;
  readonly against: readonly string[];
  /** The less, the better; only pairs that suit are compared by it. */
  readonly score: number;
}

export interface VExplanation {
  /** Best first; those that do not suit at the end. */
  readonly ranked: readonly ToolChoice[];
  /** Why the first, and what the next smaller and larger V would do. */
  readonly words: readonly string[];
}

/** The trade's V over t: thin sheet, usual, thick plate, high strength. Common practice, no source. */
const usualV = (metal: Metal, thickness: number): number => {
  if (metal.tensile.typical >= HIGH_STRENGTH) return 12;
  if (thickness < THIN) return 6;
  return thickness <= THICK ? 8 : 10;
};
const HIGH_STRENGTH = 700;
const THIN = 1;
const THICK = 12;

/** How much a radius off the drawing counts beside a V off the usual one, both as logarithms of the ratio. */
const RADIUS_WEIGHT = 1;

/** Ranks every pair of dies and punches for a bend and explains the choice. */
export const explainV = (question: VQuestion, dies: readonly DieData[], punches: readonly PunchData[]): VExplanation => {
  // where nothing else tells punches apart the blunter one goes first: a fragile nose is for bends that need it
  const sturdiest = [...punches].sort((a, b) => b.includedAngle - a.includedAngle || b.rating - a.rating || a.id.localeCompare(b.id));
  const ranked = dies
    .flatMap((die) => sturdiest.map((punch) => choiceOf(question, die, punch)))
    .sort((a, b) => Number(b.suits) - Number(a.suits) || a.score - b.score || a.v - b.v);
  return { ranked, words: wordsOf(question, ranked) };
};

const choiceOf = (q: VQuestion, die: DieData, punch: PunchData): ToolChoice => {
  const setup: AirBendSetup = {
    metal: q.metal, thickness: q.thickness, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle,
    shoulderRadius: die.shoulderRadius, tipRadius: punch.tipRadius, ...(q.friction === undefined ? {} : { friction: q.friction }),
  };
  const result = airBend({ ...setup, bendAngle: q.bendAngle });
  const ratio = die.v / q.thickness;
  const base = { punch: punch.id, die: die.id, v: die.v, vConvention: die.vConvention, vOverThickness: ratio };
  if (!result.ok) return { ...base, bend: null, shoulderPressure: null, suits: false, against: [result.reason.sentence], score: Infinity };
  const bend = result.value;
  const against: string[] = [];
  if (punch.includedAngle > bend.includedAngleUnderLoad) {
    against.push(`The punch's nose of ${punch.includedAngle} degrees included does not go into ${bend.includedAngleUnderLoad.toFixed(1)} degrees.`);
  }
  if (q.flange !== undefined && q.flange < bend.minFlange) {
    against.push(`The flange of ${q.flange.toFixed(2)} mm is ${(bend.minFlange - q.flange).toFixed(1)} mm too short for this V.`);
  }
  const weakest = Math.min(die.rating, punch.rating);
  if (bend.peakForcePerLength > weakest) {
    against.push(`The bend asks ${bend.peakForcePerLength.toFixed(0)} N/mm and the weaker tool is rated ${weakest} N/mm.`);
  }
  const offV = Math.abs(Math.log(ratio / usualV(q.metal, q.thickness)));
  const offRadius = q.insideRadius === undefined ? 0 : Math.abs(Math.log(bend.insideRadius / Math.max(q.insideRadius, LEAST_RADIUS * q.thickness)));
  return { ...base, bend, shoulderPressure: hertz(setup, bend), suits: against.length === 0, against, score: offV + RADIUS_WEIGHT * offRadius };
};

/** A sharp drawing radius is compared as this share of the thickness. */
const LEAST_RADIUS = 0.2;

/** Line contact of the shoulder's arc on a flat of the sheet's modulus, die steel beneath (Hertz). */
const hertz = (setup: AirBendSetup, bend: AirBend): number => {
  const b = (bend.bendAngleUnderLoad / 2) * DEGREE;
  const normal = bend.forcePerLength / 2 / Math.cos(b);
  const compliance = (1 - setup.metal.poisson ** 2) / setup.metal.modulus + (1 - 0.3 ** 2) / DIE_MODULUS;
  return Math.sqrt(normal / (Math.PI * compliance * setup.shoulderRadius));
};
const DIE_MODULUS = 210000;

const wordsOf = (q: VQuestion, ranked: readonly ToolChoice[]): string[] => {
  const best = ranked[0];
  if (best === undefined) return ['There are no tools to choose from.'];
  if (!best.suits || best.bend === null) return [`No pair suits: ${best.against.join(' ')}`];
  return wordsFor(q, best, ranked);
};

/**
 * Why a pair that is already chosen does, and what the next smaller and larger V of `dies` would do with the same punch;
 * null when the pair makes no air bend.
 */
export const explainChosenV = (question: VQuestion, chosen: DieData, punch: PunchData, dies: readonly DieData[]): readonly string[] | null => {
  const next = (way: -1 | 1): DieData[] => dies.filter((d) => way * (d.v - chosen.v) > 0).sort((a, b) => way * (a.v - b.v));
  const pair = choiceOf(question, chosen, punch);
  // of several dies with the next V the first that bends it in air speaks for it
  const beside = [next(-1), next(1)].flatMap((row) => {
    const choices: ToolChoice[] = [];
    for (const die of row) {
      const choice = choiceOf(question, die, punch);
      choices.push(choice);
      if (choice.bend !== null) break;
    }
    return choices.slice(-1);
  });
  return pair.bend === null ? null : [...wordsFor(question, pair, beside), ...pair.against];
};

const wordsFor = (q: VQuestion, best: ToolChoice, ranked: readonly ToolChoice[]): string[] => {
  if (best.bend === null) return [];
  const usual = usualV(q.metal, q.thickness);
  const words = [
    `V ${best.v} (${best.vConvention}) with punch ${best.punch}: ${best.vOverThickness.toFixed(1)} times the thickness, where ${usual} times is usual for this sheet (common practice, no source); it forms an inside radius of ${best.bend.insideRadius.toFixed(2)} mm${q.insideRadius === undefined ? '' : ` for ${q.insideRadius.toFixed(2)} mm drawn`}, asks ${best.bend.peakForcePerLength.toFixed(0)} N/mm at its peak and takes flanges from ${best.bend.minFlange.toFixed(1)} mm.`,
  ];
  const others = ranked.filter((c) => c.punch === best.punch && c.bend !== null);
  const smaller = others.filter((c) => c.v < best.v).sort((a, b) => b.v - a.v)[0];
  const larger = others.filter((c) => c.v > best.v).sort((a, b) => a.v - b.v)[0];
  for (const [word, other] of [['smaller', smaller], ['larger', larger]] as const) {
    if (other?.bend) {
      words.push(
        `The next ${word}, V ${other.v}: inside radius ${other.bend.insideRadius.toFixed(2)} mm, ${other.bend.peakForcePerLength.toFixed(0)} N/mm, flanges from ${other.bend.minFlange.toFixed(1)} mm, springback ${other.bend.springback.toFixed(1)} against ${best.bend.springback.toFixed(1)} degrees, shoulder pressure ${percent(other.shoulderPressure! / best.shoulderPressure!)} (marks).${other.suits ? '' : ` ${other.against.join(' ')}`}`,
      );
    } else words.push(`There is no ${word} V that bends it in air with this punch.`);
  }
  return words;
};

const percent = (ratio: number): string => `${ratio >= 1 ? '+' : ''}${Math.round((ratio - 1) * 100)} %`;
