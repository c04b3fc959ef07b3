import { metalById } from '../metal/index.js';
import { blank } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';

/** The line at the foot of every page. */
export const FOOTER = 'Prediction from the data stated; not a warranty; verify on a test strip and a first piece.';

/** The cautions that belong on every set-up sheet and beside every plan on a page. */
export const CAUTIONS: readonly string[] = [
  'Ratings of machine, punch and die are limits: the plan stays below them as predicted; never go beyond them.',
  'Trained people only. Guarding, distance and speed by the local rules and the standards for press brakes; where these or the machine\'s manual say otherwise than this sheet, they are right.',
  'Hands clear of the pinch of punch and die, of the fingers, and of the sheet: it whips up as it bends, and a return flange closes on what is behind it.',
  'Check every tool\'s seat, clamp and rating mark before the first stroke.',
];

/** What the short line on each step's page says. */
export const STEP_CAUTION = 'Hands clear of the pinch and of the sheet as it swings up.';

/** kg: a sheet heavier than this asks for help (common practice, no source; local limits may be lower). */
const HEAVY = 20;
/** mm: a sheet longer than this asks for help whatever it weighs (common practice, no source). */
const UNWIELDY = 2000;

/** Mass of the blank in kg where the metal's density is known, and its longest side in mm; null when the part has no blank. */
const sheetToLift = (trial: Trial): { readonly mass: number | null; readonly longest: number } | null => {
  const flat = blank(trial.sheet);
  if (!flat.ok) return null;
  const density = trial.metal.density ?? metalById(trial.metal.id)?.density;
  const mass = density === undefined ? null : flat.value.area * flat.value.thickness * density * 1e-9;
  return { mass, longest: flat.value.length };
};

/** The caution about lifting, with the sheet's own mass and length. */
export const liftCaution = (trial: Trial): string => {
  const sheet = sheetToLift(trial);
  if (!sheet) return 'Heavy or long sheets need two people or supports.';
  const length = `${sheet.longest.toFixed(0)} mm long`;
  const is = sheet.mass === null ? `The sheet is ${length}, its mass not known` : `The sheet weighs about ${sheet.mass.toFixed(1)} kg and is ${length}`;
  const help =
    (sheet.mass ?? 0) > HEAVY || sheet.longest > UNWIELDY
      ? 'two people or supports are needed'
      : 'heavy or long sheets need two people or supports';
  return `${is}: ${help}.`;
};
