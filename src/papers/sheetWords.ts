import type { Placed, Station, Trial } from '../trial/index.js';
import { type Units, lengthText, roundFigure, roundText } from './format.js';
import { dieOf, punchOf } from '../stroke/index.js';

/** "100 at −100, 50 ear left at 0": the segments from left to right, each with the place of its left end. */
const segmentsInWords = (segments: readonly Placed[], units: Units): string =>
  segments
    .map(({ length, from, ear }) => `${roundFigure(length, units)}${ear ? ` ear ${ear}` : ''} at ${roundFigure(from, units)}`)
    .join(' · ');

const demo = (it: { readonly demo: boolean }): string => (it.demo ? ' (demo)' : '');

/** A station's tools, left to right, as they are carried to the machine: one sentence a tool. */
export const stationInWords = (trial: Trial, station: Station, units: Units): readonly string[] => {
  const [punch, die] = [punchOf(trial, station.punch), dieOf(trial, station.die)];
  return [
    `${station.id} punch: ${punch.name}${demo(punch)}, facing ${station.punchFacing}, clamp: ${punch.tang}. Left to right: ${segmentsInWords(station.punchSegments, units)} ${units}.`,
    `${station.id} die: ${die.name}${demo(die)}, facing ${station.dieFacing}, seat: ${die.tang}. Left to right: ${segmentsInWords(station.dieSegments, units)} ${units}.` +
      (station.riser > 0 ? ` On ${roundText(station.riser, units)} of risers.` : '') +
      ` Die top ${roundText(station.dieTop, units)} over the die seat.`,
  ];
};

/** Words as a sentence: a capital at the front, one full stop at the end. */
export const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/[.\s]+$/, '')}.`;

/** Minutes and seconds, rounded before they are split. */
const timeText = (exact: number): string => {
  const seconds = Math.round(exact);
  return seconds < 100 ? `${seconds} s` : `${Math.floor(seconds / 60)} min ${seconds % 60} s`;
};

export const timeInWords = (trial: Trial): readonly string[] => [
  `${timeText(trial.seconds)} for one part, set-up shared over ${trial.quantity}. ${sentence(trial.model)}`,
  trial.timeModel.map(({ what, seconds }) => `${what}: ${timeText(seconds)}`).join(' · '),
];

/** What the independent check found, for the paper. */
export const proofInWords = (trial: Trial, units: Units): string => {
  const { proof } = trial;
  if (!proof.checked) return 'Not checked by the second engine.';
  const least =
    proof.smallestClearance === null
      ? ''
      : ` Smallest clearance ${lengthText(proof.smallestClearance, units)}${proof.where ? ` (${proof.where})` : ''}.`;
  const motion =
    proof.largestMotion === null
      ? ''
      : ` Between two checked poses no point moved further than ${lengthText(proof.largestMotion, units)}.`;
  const found = proof.findings.length > 0 ? ` Findings: ${proof.findings.join('; ')}.` : '';
  return `${proof.passed ? 'Checked by a second engine: passed.' : 'Checked by a second engine: NOT passed.'}${least}${motion}${found}`;
};
