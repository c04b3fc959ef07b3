import { metalById } from '../metal/index.js';
import { blank } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';

/** The line at the foot of every sheet. */
export const FOOTER = 'Prediction from the data stated; not a warranty; verify on a test strip and a first piece.';

export const CAUTIONS: readonly string[] = [
  "Trained people only. Guarding, distance and speed by the local rules and the standards for press brakes; where these or the machine's manual say otherwise than this sheet, they are right.",
  'Hands clear of the pinch of punch and die, of the fingers, and of the sheet: it whips up as it bends, and a return flange closes on what is behind it.',
  'Ratings of machine, punch and die are limits: the plan stays below them as predicted; never go beyond them.',
  "Check every tool's seat, clamp and rating mark before the first stroke.",
];

export const STEP_CAUTION = "Hands clear of the pinch and of the sheet as it swings up. Local rules and the machine's manual come first.";

/** A sheet heavier (kg) or longer (mm) than this asks for help (common practice, no source; local limits may be lower). */
const HEAVY = 20;
const UNWIELDY = 2000;

/** The caution about lifting, with the blank's own mass and length where they are known. */
export const liftCaution = (trial: Trial): string => {
  const flat = blank(trial.sheet);
  if (!flat.ok) return 'Heavy or long sheets need two people or supports.';
  const density = metalById(trial.metal.id)?.density;
  const mass = density === undefined ? null : flat.value.area * flat.value.thickness * density * 1e-9;
  const length = `${flat.value.length.toFixed(0)} mm long`;
  const is = mass === null ? `The blank is ${length}, its mass not known` : `The blank weighs about ${mass.toFixed(mass < 10 ? 2 : 1)} kg and is ${length}`;
  return `${is}: ${(mass ?? 0) > HEAVY || flat.value.length > UNWIELDY ? 'two people or supports are needed' : 'heavy or long sheets need two people or supports'}.`;
};
