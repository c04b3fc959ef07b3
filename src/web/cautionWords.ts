/** The trade's cautions beside every plan; they defer to local rules, the machine's manual and trained people. */
export const CAUTIONS: readonly string[] = [
  'Trained people only. Guarding, distance and speed by the local rules and the standards for press brakes; where these or the machine’s manual say otherwise than this sheet, they are right.',
  'Hands clear of the pinch of punch and die, of the stop fingers and of the sheet: it whips up as it bends, and a return flange closes on what is behind it.',
  'Heavy or long sheets need two people or supports.',
  'Ratings of machine, punch and die are limits: never go beyond them. Check every tool’s seat, clamp and rating mark before the first stroke.',
];

export const STEP_CAUTION = 'Hands clear of the pinch and of the sheet as it whips up. Guarding by the local rules and the machine’s manual.';
