import type { MarginKind } from '../../fit/index.js';

/** The kinds of figures in the report, in the order of their numbers. */
const KINDS = [
  'verdict', 'force', 'length', 'daylight', 'throat', 'gauge travel', 'tolerance', 'seconds', 'parts an hour', 'change-over', 'price', 'remedy', 'cheapest', 'option', 'blank',
  'stroke', 'stop', 'measure', 'site', 'piece',
] as const;
export type FigureKind = (typeof KINDS)[number];

/** '(2)': the number under which the report says how a kind of figure came about. */
export const mark = (kind: FigureKind): string => `(${KINDS.indexOf(kind) + 1})`;

/** The margins of the board in the order of their columns, each with its heading. */
export const MARGINS: readonly (readonly [MarginKind & FigureKind, string])[] = [
  ['force', 'Force'], ['length', 'Length'], ['daylight', 'Daylight'], ['throat', 'Throat'], ['gauge travel', 'Gauge travel'], ['tolerance', 'Tolerance'],
];

const HOW: Readonly<Record<FigureKind, string>> = {
  verdict: 'Verdict: orders of the bends are searched with the tools at hand, every stroke at a stop of the gauge; a plan counts as "makes" only after a second, independent engine has replayed it. "With remedy": not as it stands, but with the change named, planned again. "Not decided": a limit of computing time was reached.',
  force: 'Force: the greatest over all strokes, from a strip calculation with the metal\'s hardening, for the thickest and strongest sheet that its standards let through where these are known, times the bend\'s length; its limit is the rating of machine, cylinder or tool as entered.',
  length: 'Length: what tools and part take along the bed, against the bed\'s length in the machine\'s data.',
  daylight: 'Daylight: the opening between punch and die that the tightest step needs to bring the part in and out, against the machine\'s open height less the stack of tools.',
  throat: 'Throat: how far the part reaches behind the bend, against the throat (or its width against the space between the side frames where it passes between them).',
  'gauge travel': 'Gauge travel: where an axis of the back gauge stands, against the end of its travel that it comes nearest to: the place over the furthest, or the nearest over the place; 100 % at either end.',
  tolerance: 'Tolerance: of the dimensions the one nearest to its limit; what the batch is expected to scatter after its first piece is corrected (chain of stops, edges and bends, root of the sum of squares, by the machine\'s repeatability as new or as measured), against the tolerance of the drawing, or of the class of ISO 2768-1 that was asked. "–": something that matters was not measured on this machine, so nothing is promised.',
  seconds: 'Seconds a part: a stated model: ram by the machine\'s own speeds and the opening of each step; handling, turning and set-up by figures that are common practice, no source. Set-up is shared over the quantity. It ranks machines; it is no promised rate.',
  'parts an hour': 'Parts an hour: 3,600 s divided by the predicted seconds a part while it runs, set-up left out; breaks, inspection and waiting are not in it.',
  'change-over': 'Change-over: from the last part of another batch to the first of this, by the same model: the stations of the plan built, machine, blanks and test strip made ready (common practice, no source).',
  price: 'Prices: as entered by the dealer on the date of this report, in the currency named; nothing is added or converted. Prices of demo machines, options and tools are invented.',
  remedy: 'Remedies: single changes, and where none is enough alone changes together; first those that leave the drawing as it is, then those that ask another drawing, two parts or another machine, of each kind the cheapest first; each that is named was planned again and replayed by the independent engine.',
  cheapest: 'Cheapest for all: every combination of machines, options and tools from the confirmed ways is weighed by branch and bound; "proven" says that none of them costs less.',
  option: 'What an option buys: every part was planned and proved once more with the option fitted; minutes are predicted over one batch of every part, the tolerance is that of the dimension that gains most. A part not decided without it is not tried with it. "Nothing": for these parts it changes none of this.',
  blank: 'Blank: the flat lengths of plates and bends put together, by the tools of a plan or by the rule named; the real blank is fixed after the test strip.',
  stroke: 'Angles, radius, depth and force of a stroke: the strip calculation (equilibrium of a strip between punch tip and die shoulders, springback after release). Bend angle is the angle turned through; included angle is 180° minus it.',
  stop: 'Stop: geometry of the partly bent part as it lies in the machine; X axis: from the bending plane to the finger\'s nose; where another face of the finger touches, its distance is told beside it. R from the die seat.',
  measure: 'Flange to measure: outside length as drawn, with the tolerance that the drawing or the general class asked puts on it.',
  piece: 'Pieces: measured by the person named, with the instrument named, on pieces that were made; spread is the standard deviation of the sample. An entry is never changed; a correction is another entry, and only what stands is counted.',
  site: 'Site data: as entered for the machine; to be checked against its own papers.',
};

/** How each kind of figure came about, with its number. */
export const howFiguresCame = (): readonly { readonly sign: string; readonly words: string }[] => KINDS.map((kind) => ({ sign: mark(kind), words: HOW[kind] }));
