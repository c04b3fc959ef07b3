/**
 * Advance widths of the paper's lettering (DejaVu Sans Condensed, characters 32 to 126) in thousandths of the em, read
 * from the font, so that a pure function can leave room for a number without opening a font file.
 */
const PLAIN = [
  286, 360, 414, 754, 572, 855, 702, 247, 351, 351, 450, 754, 286, 325, 286, 303, 572, 572, 572, 572,
  572, 572, 572, 572, 572, 572, 303, 303, 754, 754, 754, 478, 900, 615, 617, 628, 693, 568, 518, 697,
  677, 265, 265, 590, 501, 776, 673, 708, 542, 708, 625, 571, 549, 659, 615, 890, 616, 549, 616, 351,
  303, 351, 754, 450, 450, 551, 571, 495, 571, 554, 316, 571, 570, 250, 250, 521, 250, 876, 570, 550,
  571, 571, 370, 469, 353, 570, 532, 736, 532, 532, 472, 572, 303, 572, 754,
];

const BOLD = [
  313, 410, 469, 754, 626, 901, 785, 275, 411, 411, 470, 754, 342, 374, 342, 329, 626, 626, 626, 626,
  626, 626, 626, 626, 626, 626, 360, 360, 754, 754, 754, 522, 900, 696, 686, 660, 747, 615, 615, 738,
  753, 334, 334, 697, 573, 896, 753, 765, 659, 765, 693, 648, 614, 730, 696, 993, 694, 651, 652, 411,
  329, 411, 754, 450, 450, 607, 644, 533, 644, 610, 391, 644, 641, 308, 308, 598, 308, 938, 641, 618,
  644, 644, 444, 536, 430, 641, 586, 831, 580, 586, 523, 641, 329, 641, 754,
];

/** The signs that the papers use beyond ASCII; anything else is taken as wide as a digit. */
const SIGNS: Readonly<Record<string, number>> = { '°': 450, '×': 754, '±': 754, '–': 450, '·': 286, '−': 754, '→': 754, '²': 360, '⚠': 807 };

const DIGIT = 572;

/** Width of a line of letters in mm at the given size (em, mm). */
export const textWidth = (letters: string, size: number, bold = false): number => {
  const table = bold ? BOLD : PLAIN;
  let sum = 0;
  for (const c of letters) sum += table[c.charCodeAt(0) - 32] ?? SIGNS[c] ?? DIGIT;
  return (sum * size) / 1000;
};
