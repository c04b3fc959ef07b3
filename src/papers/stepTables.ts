import { type StopFigure, angleBefore, leavesOpen, scribedLine, stationOf, stopX } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';
import { type Units, angleFigure, fineText, forceText, lengthFigure, lengthText, roundFigure, roundText } from './format.js';

/** Name and figure. */
export type Row = readonly [string, string];

export const stopRows = (trial: Trial, step: Step, units: Units): readonly Row[] => {
  const { stop, kind } = step;
  const line = scribedLine(trial, step);
  if (line) return [['Stop', 'none: by the scribed line'], ['Line on the flat blank', lengthText(line.distance, units)], ['', `from the ${line.from}`]];
  // where it stands along the bed is told in full under the tables
  if (stop.kind === 'none') return [['Stop', step.pass === 2 ? 'none: by the bend begun' : kind === 'hem close' ? 'none: fold set by eye' : 'none: by the scribed line']];
  const { set, face } = stopX(step);
  const row = ({ name, value }: StopFigure): Row => [name, lengthText(value, units)];
  return [
    ...set.map(row),
    ['R, from die seat', lengthText(stop.r, units)],
    ...(face.length > 1 ? [['Face to bend, left / right', `${face.map(({ value }) => lengthFigure(value, units)).join(' / ')} ${units}`] as const] : face.map(row)),
    [`Z of ${stop.z.length > 1 ? 'fingers' : 'finger'}`, `${stop.z.map((z) => roundFigure(z, units)).join(' / ')} ${units}`],
    ['Finger face', stop.face],
    ['Retract before the stroke', stop.retract > 0 ? roundText(stop.retract, units) : 'stays'],
    ['Stop', stop.kind === 'edge' ? (kind === 'hem close' ? 'fold' : 'edge') : 'flange face'],
  ];
};

export const strokeRows = (step: Step, units: Units): readonly Row[] => {
  const shared: readonly Row[] = [
    [step.kind === 'hem close' ? 'Speed change over anvil' : 'Speed change over die top', roundText(step.speedChange, units)],
    ['Opening in / out', `${roundFigure(step.ramOpening, units)} / ${roundText(step.ramOpeningOut, units)}`],
    ['Station, facing', `${step.station}, ${step.facing}`],
  ];
  if (step.kind === 'V bend') {
    return [['Depth from touch', fineText(step.depth, units)], ['Ram, tip from die seat', fineText(step.ramPosition, units)], ...shared, ['Crowning', step.crowning === null ? 'see below' : fineText(step.crowning, units)]];
  }
  return [
    [step.kind === 'hem close' ? 'Ram, punch face from die seat' : 'Ram, punch low land from die seat', fineText(step.ramPosition, units)],
    ['Ram travel from touch', fineText(step.depth, units)],
    [step.kind === 'hem close' ? 'Touches the flange at' : 'Touches the sheet at', fineText(step.ramPosition + step.depth, units)],
    ...shared,
  ];
};

/** mm from the anvil's top to the punch's face at the end: two sheets and what lies between them. */
const hemHeight = (trial: Trial, step: Step): number => step.ramPosition - stationOf(trial, step).dieTop;

export const expectRows = (trial: Trial, step: Step, units: Units): readonly Row[] => {
  const force: Row = [step.kind === 'hem close' ? 'Force to close' : 'Force', forceText(step.force, units)];
  const cylinders: Row = ['Cylinder left / right', `${(step.cylinderForces[0] / 1000).toFixed(1)} / ${(step.cylinderForces[1] / 1000).toFixed(1)} kN`];
  switch (step.kind) {
    case 'V bend':
      return [
        ['Bend angle', angleFigure(step.bendAngle)], ['Included angle', angleFigure(step.includedAngle)],
        ['Bend / incl. under load', `${angleFigure(step.bendAngleUnderLoad)} / ${angleFigure(180 - step.bendAngleUnderLoad)}`], ['Inside radius', lengthText(step.insideRadius, units)], force, cylinders,
      ];
    case 'hem close': {
      const pre = angleBefore(trial, step);
      return [
        [leavesOpen(step) ? 'Height of the hem, closed' : 'Height of the hem, flat', lengthText(hemHeight(trial, step), units)], ['Gap inside the hem', lengthText(2 * step.insideRadius, units)],
        ['Flange, bend angle', `${angleFigure(pre)} to ${angleFigure(step.bendAngle)}`], ['Flange, included angle', `${angleFigure(180 - pre)} to ${angleFigure(step.includedAngle)}`], force, cylinders,
      ];
    }
    case 'offset bend':
      return [
        ['Over both flanges', lengthText(step.measure.length, units)], ['Offset, face to face', lengthText(step.depth, units)],
        ['Both bends, bend / incl.', `${angleFigure(step.bendAngle)} / ${angleFigure(step.includedAngle)}`], ['Inside radius of both', lengthText(step.insideRadius, units)], force, cylinders,
      ];
  }
};

/** What is looked at beside the length that is measured, for the box that it is written into. */
export const checkWords = (trial: Trial, step: Step, units: Units): string => {
  switch (step.kind) {
    case 'V bend':
      return `Bend ${angleFigure(step.bendAngle)}, included ${angleFigure(step.includedAngle)}`;
    case 'hem close':
      return `Height of the hem ${lengthText(hemHeight(trial, step), units)}`;
    case 'offset bend':
      return 'Both flanges parallel';
  }
};

/** What a step is expected to make, in a sentence. */
export const figuresInWords = (trial: Trial, step: Step, units: Units): string => {
  switch (step.kind) {
    case 'V bend':
      return `Bend angle ${angleFigure(step.bendAngle)}, included angle ${angleFigure(step.includedAngle)}; inside radius ${lengthText(step.insideRadius, units)}; depth from touch ${fineText(step.depth, units)}`;
    case 'hem close':
      return `Flange from bend angle ${angleFigure(angleBefore(trial, step))}, included angle ${angleFigure(180 - angleBefore(trial, step))}, to a hem ${lengthText(hemHeight(trial, step), units)} high; ram travel from touch ${fineText(step.depth, units)}`;
    case 'offset bend':
      return `Offset ${lengthText(step.depth, units)} from face to face, inside radius of both bends ${lengthText(step.insideRadius, units)}; ram travel from touch ${fineText(step.depth, units)}`;
  }
};
