import { apply, compose } from '../geometry/index.js';
import type { Step, Trial } from '../trial/index.js';
import { sideFrame } from './bendShape.js';
import type { Metal } from './metal.js';
import { filledSpans } from './metalSpans.js';
import { machinePoses } from './seatFindings.js';
import type { Setting } from './setting.js';

/** What rounding of a written force may add. Share. */
const ROUNDING = 1e-6;

/** The force that a step writes down, held against what its own tools and the machine are rated for. N, N/mm. */
export const forceFindings = ({ machine, punches, dies }: Trial, step: Step): string[] => {
  const findings: string[] = [];
  const hold = (what: string, asked: number, rated: number, unit: string): void => {
    if (asked > rated * (1 + ROUNDING)) findings.push(`Step ${step.number}: it asks ${asked.toFixed(0)} ${unit} of ${what}, rated ${rated.toFixed(0)} ${unit}.`);
  };
  const punch = punches.find((p) => p.id === step.punch);
  const die = dies.find((d) => d.id === step.die);
  if (punch) hold(`the punch ${punch.name}`, step.forcePerLength, punch.rating, 'N/mm');
  if (die) hold(`the die ${die.name}`, step.forcePerLength, die.rating, 'N/mm');
  hold('the machine', step.forcePerLength, machine.ratingPerLength, 'N/mm');
  hold('the machine', step.force, machine.rating, 'N');
  hold('one cylinder', Math.max(...step.cylinderForces), machine.rating / 2, 'N');
  return findings;
};

/** What the written force and its two reactions may differ by from what is worked out here. Share of the force. */
const WRITTEN = 1e-3;

/** Where the stroke's metal lies along the bed; an offset tool presses on the length of the first bend named. */
const pressedSpans = (setting: Setting, metal: Metal, angles: readonly number[]): (readonly [number, number])[] => {
  const poses = machinePoses(setting, metal, angles, setting.before);
  const bends = setting.offset ? [setting.first] : [...setting.running];
  return bends.flatMap((i) => {
    const { sides: [{ plate, line }], zone } = setting.sheet.part.bends[i]!;
    const frame = compose(poses.get(plate)!, sideFrame(line));
    return filledSpans(zone).map((span) => {
      const ends = span.map((u) => apply(frame, [u, 0, 0])[0]);
      return [Math.min(...ends), Math.max(...ends)] as const;
    });
  });
};

/**
 * The force is what a mm asks (from the record) times the metal bent; the cylinders share it by the moments of its pieces about each of them.
 * A record that says otherwise may hide an overload.
 */
export const loadFindings = (setting: Setting, metal: Metal, angles: readonly number[]): string[] => {
  const { step, machine: { cylinders: { spacing } } } = setting;
  const spans = pressedSpans(setting, metal, angles);
  const force = spans.reduce((sum, [from, to]) => sum + step.forcePerLength * (to - from), 0);
  const right = spans.reduce((sum, [from, to]) => sum + (step.forcePerLength * (to - from) * ((from + to) / 2 + spacing / 2)) / spacing, 0);
  const findings: string[] = [];
  const hold = (what: string, written: number, found: number): void => {
    if (Math.abs(written - found) > WRITTEN * force) findings.push(`Step ${step.number}: ${what} is written as ${written.toFixed(0)} N; ${step.forcePerLength.toFixed(0)} N/mm over the metal where it lies make ${found.toFixed(0)} N.`);
  };
  hold('its force', step.force, force);
  hold('the force on the left cylinder', step.cylinderForces[0], force - right);
  hold('the force on the right cylinder', step.cylinderForces[1], right);
  return findings;
};
