import type { Metal } from '../metal/index.js';
import { type Part, profilePart, trayPart } from '../sheet/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { planJudged } from './planJudged.js';
import type { PlanAndProveHooks } from './planAndProve.js';

interface EnvelopeHooks extends Pick<PlanAndProveHooks, 'now' | 'cancelled'> {
  /** Plans elsewhere, in a worker, what `planJudged` would plan here; null where that gave no plan. */
  readonly verdict?: (input: TrialInput) => Promise<Trial['verdict'] | null>;
}

/** How far something reaches. */
export interface Reach {
  /** mm; null where not even the least was made. */
  readonly mm: number | null;
  /** False where the next beyond it was not decided: it may reach further. */
  readonly decided: boolean;
}

/** What one machine reaches with one rack in one metal, each figure by planning and proving. */
export interface Envelope {
  readonly machine: string;
  readonly metal: string;
  /** For each length along the bed the thickest sheet of the list that is bent square over it. mm */
  readonly thickest: readonly { readonly length: number; readonly thickness: Reach }[];
  /** For each thickness the shortest outside flange of a square angle, to half a millimetre. mm */
  readonly shortest: readonly { readonly thickness: number; readonly flange: Reach }[];
  /** The highest walls of a box of four, to 5 mm, on a base of this size outside and in this thickness. mm */
  readonly deepest: { readonly base: readonly [number, number]; readonly thickness: number; readonly depth: Reach };
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
 * The furthest of a list, easiest first, that is made, taken to be made up to some place and no further: halving, so a gap in between is not
 * seen. What is not decided ends the way there as a no does.
 */
const furthest = async (list: readonly number[], made: (mm: number) => Promise<Answer>): Promise<Reach> => {
  let [low, high] = [-1, list.length];
  let beyond: Answer = 'no';
  while (high - low > 1) {
    const middle = low < 0 && high === list.length ? 0 : Math.floor((low + high) / 2);
    const answer = await made(list[middle]!);
    if (answer === 'yes') low = middle;
    else [high, beyond] = [middle, answer];
  }
  return { mm: list[low] ?? null, decided: beyond === 'no' };
};

type Answer = 'yes' | 'no' | 'not decided';
const ANSWERS: Readonly<Record<Trial['verdict'], Answer>> = { makes: 'yes', 'makes with remedy': 'no', 'does not make': 'no', 'not decided': 'not decided' };

const steps = (least: number, most: number, step: number): readonly number[] => Array.from({ length: Math.floor((most - least) / step) + 1 }, (_, i) => least + i * step);

/** The envelope of a machine with a rack in a metal. Pure but for the hooks; some forty plans with their proofs. */
export const envelope = async (machine: Machine, rack: Rack, metal: Metal, hooks: EnvelopeHooks = {}): Promise<Envelope> => {
  const made = async (part: Part | null): Promise<Answer> => {
    // there is no such part
    if (part === null) return 'no';
    if (hooks.cancelled?.() === true) return 'not decided';
    const input: TrialInput = { part, machine, rack, metal, quantity: 50, limits: { seconds: SECONDS, scribedLine: 'refused' } };
    const verdict = hooks.verdict ? await hooks.verdict(input) : (await planJudged(input, hooks)).verdict;
    return verdict === null ? 'not decided' : ANSWERS[verdict];
  };
  const whole = machine.length - BED_END;
  const thickest = [];
  for (const length of [...LENGTHS.filter((l) => l < whole), whole]) {
    thickest.push({ length, thickness: await furthest(THICKNESSES, (mm) => made(square(mm, length, Math.max(60, 10 * mm), Math.max(80, 12 * mm)))) });
  }
  const shortest = [];
  for (const thickness of FLANGES_FOR) {
    const falling = [...steps(FLANGE.least, FLANGE.most, FLANGE.step)].reverse();
    shortest.push({ thickness, flange: await furthest(falling, (mm) => made(square(thickness, 100, mm, 80))) });
  }
  const depth = await furthest(steps(BOX.least, BOX.most, BOX.step), (mm) => made(box(mm)));
  return {
    machine: machine.id, metal: metal.id, thickest, shortest, deepest: { base: BOX.base, thickness: BOX.thickness, depth },
    model: `Square bends planned, held to the ratings for the worst sheet and proved, with ${rack.name}; found by halving, so a gap below a figure is not seen; what is not decided in ${SECONDS} s of search, or not confirmed by the independent check, ends a figure, which is then said not to be decided beyond. Flanges on 100 mm of bend.`,
  };
};
