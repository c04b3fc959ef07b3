import { angleBefore, leavesOpen, scribedLine, stationOf, stopX } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { degrees, figure, mm } from '../wording.js';

interface BigFigure {
  readonly name: string;
  readonly value: string;
  readonly unit?: string;
  readonly more: string;
}

const Big = ({ name, value, unit = '', more }: BigFigure) => (
  <div className="figure"><dt>{name}</dt><dd><span className={value.length > 9 ? 'value long' : 'value'}>{value}</span> <span className="unit">{unit}</span><span className="more">{more}</span></dd></div>
);

const stopFigures = (trial: Trial, step: Step): readonly BigFigure[] => {
  const { stop, kind } = step;
  const line = scribedLine(trial, step);
  if (line) return [{ name: `Scribed line, from the ${line.from}`, value: figure(line.distance, 2), unit: 'mm', more: `scribed on the flat blank, set by eye under the punch tip; ${stop.sideways}` }];
  if (stop.kind === 'none') return [{ name: kind === 'hem close' ? 'Fold' : 'Stop', value: 'by eye', more: stop.sideways }];
  const { set, face } = stopX(step);
  const faceAt = face.map(({ name, value }) => `; ${name.charAt(0).toLowerCase()}${name.slice(1)} ${mm(value)}`).join('');
  return [
    { name: set.length > 1 ? 'X axes, left and right finger' : set[0]!.name, value: set.map(({ value }) => figure(value, 2)).join(' / '), unit: 'mm', more: `finger face: ${stop.face}${faceAt}; ${stop.retract > 0 ? `retract ${mm(stop.retract, 1)}` : 'stays'}` },
    { name: 'R, from the die seat', value: figure(stop.r, 2), unit: 'mm', more: stop.edge },
    { name: stop.z.length > 1 ? 'Z, fingers left and right' : 'Z, finger', value: stop.z.map((z) => figure(z, 1)).join(' / '), unit: 'mm', more: stop.sideways },
  ];
};

const measureFigure = ({ measure: { what, length, tolerance, firstPiece, batch } }: Step): BigFigure => ({
  name: 'Measure', value: figure(length, 2), unit: 'mm',
  more: `${tolerance === null ? 'no tolerance asked' : `± ${mm(tolerance)}`}, ${what}${firstPiece === undefined ? '' : `; expected of the first piece ± ${mm(firstPiece)}, of the batch ± ${mm(batch ?? 0)}`}`,
});

const openings = ({ ramOpening, ramOpeningOut }: Step): string => `opening in ${mm(ramOpening, 0)}, out ${mm(ramOpeningOut, 0)}`;

const vFigures = (step: Step): readonly BigFigure[] => [
  { name: 'Depth from touch', value: figure(step.depth, 2), unit: 'mm', more: `speed changes ${mm(step.speedChange, 1)} over the die top` },
  { name: 'Ram position, tip from the die seat', value: figure(step.ramPosition, 2), unit: 'mm', more: openings(step) },
  { name: 'Bend angle', value: degrees(step.bendAngle), more: `bend angle ${degrees(step.bendAngleUnderLoad)} under load` },
  { name: 'Included angle', value: degrees(step.includedAngle), more: `included angle ${degrees(180 - step.bendAngleUnderLoad)} under load` },
];

const travel = (step: Step, over: string): BigFigure => ({
  name: 'Ram travel from touch', value: figure(step.depth, 2), unit: 'mm',
  more: `touches at ${mm(step.ramPosition + step.depth)} from the die seat; speed changes ${mm(step.speedChange, 1)} over the ${over}`,
});

const hemFigures = (trial: Trial, step: Step): readonly BigFigure[] => {
  const pre = angleBefore(trial, step);
  const { thickness } = trial.sheet.part;
  return [
    travel(step, 'anvil'),
    { name: 'Ram position, punch face from the die seat', value: figure(step.ramPosition, 2), unit: 'mm', more: openings(step) },
    { name: `Height of the hem, ${leavesOpen(step) ? 'closed' : 'flat'}`, value: figure(step.ramPosition - stationOf(trial, step).dieTop, 2), unit: 'mm', more: `twice ${mm(thickness)} of sheet, ${mm(2 * step.insideRadius)} between` },
    { name: 'Flange, bend angle', value: `${figure(pre, 0)}° → ${figure(step.bendAngle, 0)}°`, more: `included angle ${degrees(180 - pre)} before, ${degrees(step.includedAngle)} after` },
  ];
};

const offsetFigures = (step: Step): readonly BigFigure[] => [
  travel(step, 'die top'),
  { name: 'Ram position, punch low land from the die seat', value: figure(step.ramPosition, 2), unit: 'mm', more: openings(step) },
  { name: 'Offset, face to face', value: figure(step.depth, 2), unit: 'mm', more: 'both flanges stay level' },
  { name: 'Both bends, bend angle', value: degrees(step.bendAngle), more: `included angle ${degrees(step.includedAngle)}; pressed by the tools, no springback counted` },
];

/** The numbers to set and to expect, to be read at two metres: of each kind of stroke those that it has. */
export const Figures = ({ trial, step }: { readonly trial: Trial; readonly step: Step }) => {
  const own = step.kind === 'V bend' ? vFigures(step) : step.kind === 'hem close' ? hemFigures(trial, step) : offsetFigures(step);
  return <dl className="step-figures">{[...stopFigures(trial, step), measureFigure(step), ...own].map((it) => <Big key={it.name} {...it} />)}</dl>;
};
