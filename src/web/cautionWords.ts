/** The trade's cautions beside every plan; they defer to local rules, the machine's manual and trained people. */
export const CAUTIONS: readonly string[] = [
  'Trained people only. Guarding, distance and speed by the local rules and the standards for press brakes; where these or the machine’s manual say otherwise than this sheet, they are right.',
  'Hands clear of the pinch of punch and die, of the stop fingers and of the sheet: it whips up as it bends, and a return flange closes on what is behind it.',
  'Ratings of machine, punch and die are limits: never go beyond them. Check every tool’s seat, clamp and rating mark before the first stroke.',
];

/** Beside these wherever the sheet at hand is not known to be one that a single person lifts. */
export const LIFT_CAUTION = 'Heavy or long sheets need two people or supports.';

/** Ends the caution on each step's page. */
export const GUARDING = 'Guarding by the local rules and the machine’s manual.';
