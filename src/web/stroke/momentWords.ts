import type { Moment } from '../../stroke/index.js';
import type { Step } from '../../trial/index.js';
import { degrees, figure, mm } from '../wording.js';

/** What there is to read at a moment of the stroke: the angles, and of a stroke that is no V bend how far the ram has come. */
export const momentWords = (step: Step, { angle, tip, travel }: Moment): string => {
  const angles = `bend angle ${degrees(angle)}, included angle ${degrees(180 - angle)}`;
  if (step.kind === 'V bend') return angles;
  const ram = `ram ${mm(tip)} over the die seat${travel === null ? '' : `, ${figure(travel, 2)} of ${mm(step.depth)} from touch`}`;
  return `${ram}; ${step.kind === 'hem close' ? 'the flange at' : 'both bends at'} ${angles}`;
};
