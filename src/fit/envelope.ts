import type { Metal } from '../metal/index.js';
import { type Part, profilePart, trayPart } from '../sheet/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { TrialInput } from '../trial/index.js';
import { planJudged } from './planJudged.js';
import type { PlanAndProveHooks } from './planAndProve.js';

interface EnvelopeHooks extends Pick<PlanAndProveHooks, 'now' | 'cancelled'> {
  /** Tells elsewhere, in a worker, what `planJudged` would tell here: is it made? */
  readonly makes?: (input: TrialInput) => Promise<boolean>;
}

/** What one machine reaches with one rack in one metal, each figure by planning and proving; null where not even the least was made. */
export interface Envelope {
  readonly machine: string;
  readonly metal: string;
  /** For each length along the bed the thickest sheet of the list that is bent square over it. mm */
  readonly thickest: readonly { readonly length: number; readonly thickness: number | null }[];
  /** For each thickness the shortest outside flange of a square angle, to half a millimetre. mm */
  readonly shortest: readonly { readonly thickness: number; readonly flange: number | null }[];
  /** The highest walls of a box of four, to 5 mm, on a base of this size outside and in this thickness. mm */
  readonly deepest: { readonly base: readonly [number, number]; readonly thickness: number; readonly depth: number | null };
  /** How it was come by. */
  readonly model: string;
}

/** Sheets and plates as they are commonly stocked, mm. Common practice, no source. */
const THICKNESSES = [0.5, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20];
/** Lengths asked, mm; the machine's own is added. */
const LENGTHS = [250, 500, 1000, 2000, 3000];
const FLANGES_FOR = [1, 2, 3, 6];
/** Least and most of what is looked between, and the step of the answer. mm */
const FLANGE = { least: 3, most: 120, step: 0.5 };
const BOX = { base: [300, 250], thickness: 1.5, least: 20, most: 600, step: 5 } as const;
/** mm of metal left bare at both ends of a bed-long bend. */
const BED_END = 20;
/** s of search for each plan. */
const SECONDS = 6;

const square = (thickness: number, width: number, flange: number, other: number): Part | null => {
  const made = profilePart({ name: `angle ${flange} + ${other}`, thickness, insideRadius: thickness, width, flanges: [flange, other], turns: [90] });
  return made.ok ? made.value : null;
};

const box = (depth: number): Part | null => {
  const arm = [{ length: depth, turn: 90 }];
  const made = trayPart({ name: `box ${depth} deep`, thickness: BOX.thickness, insideRadius: BOX.thickness, base: BOX.base, arms: [arm, arm, arm, arm] });
  return made.ok ? made.value : null;
};

/**
 * The furthest of a rising list for which `can` holds, taken to hold up to some place and no further: halving, so a gap in between is not seen.
 * -1 when it does not hold for the first.
 */
const furthest = async (count: number, can: (index: number) => Promise<boolean>): Promise<number> => {
  let [low, high] = [-1, count];
  while (high - low > 1) {
    const middle = low < 0 && high === count ? 0 : Math.floor((low + high) / 2);
    if (await can(middle)) low = middle;
    else high = middle;
  }
  return low;
};

const steps = (least: number, most: number, step: number): readonly number[] => Array.from({ length: Math.floor((most - least) / step) + 1 }, (_, i) => least + i * step);

/** The envelope of a machine with a rack in a metal. Pure but for the hooks; some forty plans with their proofs. */
export const envelope = async (machine: Machine, rack: Rack, metal: Metal, hooks: EnvelopeHooks = {}): Promise<Envelope> => {
  const can = async (part: Part | null): Promise<boolean> => {
    if (part === null || hooks.cancelled?.() === true) return false;
    const input: TrialInput = { part, machine, rack, metal, quantity: 50, limits: { seconds: SECONDS, scribedLine: 'refused' } };
    return hooks.makes ? hooks.makes(input) : (await planJudged(input, hooks)).verdict === 'makes';
  };
  const whole = machine.length - BED_END;
  const thickest = [];
  for (const length of [...LENGTHS.filter((l) => l < whole), whole]) {
    const at = await furthest(THICKNESSES.length, (i) => can(square(THICKNESSES[i]!, length, Math.max(60, 10 * THICKNESSES[i]!), Math.max(80, 12 * THICKNESSES[i]!))));
    thickest.push({ length, thickness: THICKNESSES[at] ?? null });
  }
  const shortest = [];
  for (const thickness of FLANGES_FOR) {
    const falling = [...steps(FLANGE.least, FLANGE.most, FLANGE.step)].reverse();
    const at = await furthest(falling.length, (i) => can(square(thickness, 100, falling[i]!, 80)));
    shortest.push({ thickness, flange: falling[at] ?? null });
  }
  const depths = steps(BOX.least, BOX.most, BOX.step);
  const at = await furthest(depths.length, (i) => can(box(depths[i]!)));
  return {
    machine: machine.id, metal: metal.id, thickest, shortest, deepest: { base: BOX.base, thickness: BOX.thickness, depth: depths[at] ?? null },
    model: `Square bends planned, held to the ratings for the worst sheet and proved, with ${rack.name}; found by halving, so a gap below a figure is not seen. Flanges on 100 mm of bend.`,
  };
};
