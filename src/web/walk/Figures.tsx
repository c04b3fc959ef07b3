import type { Step } from '../../trial/index.js';
import { degrees, figure, mm } from '../wording.js';

const Big = ({ name, value, unit, more }: { readonly name: string; readonly value: string; readonly unit: string; readonly more?: string }) => (
  <div className="figure"><dt>{name}</dt><dd><span className={value.length > 9 ? 'value long' : 'value'}>{value}</span> <span className="unit">{unit}</span>{more && <span className="more">{more}</span>}</dd></div>
);

/** The numbers to set and to expect, to be read at two metres. */
export const Figures = ({ step }: { readonly step: Step }) => {
  const { stop } = step;
  return (
    <dl className="step-figures">
      {stop.kind === 'none'
        ? <Big name="Stop" value="by eye" unit="" more={stop.sideways} />
        : (
          <>
            <Big name={stop.skew === undefined ? 'X, stop' : 'X, left and right finger'} value={[0, ...(stop.skew === undefined ? [] : [stop.skew])].map((by) => figure(stop.axisX + by, 2)).join(' / ')} unit="mm" more={`finger face: ${stop.face}; ${stop.retract > 0 ? `retract ${mm(stop.retract, 1)}` : 'stays'}`} />
            <Big name="R, from the die seat" value={figure(stop.r, 2)} unit="mm" more={stop.edge} />
            <Big name={stop.z.length > 1 ? 'Z, fingers left and right' : 'Z, finger'} value={stop.z.map((z) => figure(z, 1)).join(' / ')} unit="mm" more={stop.sideways} />
          </>
        )}
      <Big name="Measure" value={figure(step.measure.length, 2)} unit="mm" more={`± ${mm(step.measure.tolerance)}, ${step.measure.what}${step.measure.firstPiece === undefined ? '' : `; expected of the first piece ± ${mm(step.measure.firstPiece)}, of the batch ± ${mm(step.measure.batch ?? 0)}`}`} />
      <Big name="Depth from touch" value={figure(step.depth, 2)} unit="mm" more={`speed changes ${mm(step.speedChange, 1)} over the die top`} />
      <Big name="Ram position, tip from the die seat" value={figure(step.ramPosition, 2)} unit="mm" more={`opening in ${mm(step.ramOpening, 0)}, out ${mm(step.ramOpeningOut, 0)}`} />
      <Big name="Bend angle" value={degrees(step.bendAngle)} unit="" more={`bend angle ${degrees(step.bendAngleUnderLoad)} under load`} />
      <Big name="Included angle" value={degrees(step.includedAngle)} unit="" more={`included angle ${degrees(180 - step.bendAngleUnderLoad)} under load`} />
    </dl>
  );
};
