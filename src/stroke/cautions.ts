import type { Trial } from '../trial/index.js';
import { liftOf } from './liftOf.js';

/** The cautions beside every plan, on paper and on pages; they defer to local rules, the machine's manual and trained people. */
export const CAUTIONS: readonly string[] = [
  'Ratings of machine, punch and die are limits: the plan stays below them as predicted; never go beyond them.',
  'Trained people only. Guarding, distance and speed by the local rules and the standards for press brakes; where these or the machine\'s manual say otherwise than this sheet, they are right.',
  'Hands clear of the pinch of punch and die, of the stop fingers, and of the sheet: it whips up as it bends, and a return flange closes on what is behind it.',
  'Check every tool\'s seat, clamp and rating mark before the first stroke.',
];

/** Beside these where no one sheet is spoken of, or its figures are not known. */
export const LIFT_CAUTION = 'Heavy or long sheets need two people or supports.';

/** The caution about lifting, with the sheet's own mass and length; none for a sheet that one person lifts. */
export const liftWords = (trial: Trial): readonly string[] => {
  const { mass, longest, help } = liftOf(trial);
  if (help === 'not asked') return [];
  if (longest === null) return [LIFT_CAUTION];
  const length = `${longest.toFixed(0)} mm long`;
  const is = mass === null ? `The sheet is ${length}, its mass not known` : `The sheet weighs about ${mass.toFixed(1)} kg and is ${length}`;
  return [`${is}: ${help === 'asked' ? 'two people or supports are needed' : 'heavy or long sheets need two people or supports'}.`];
};
