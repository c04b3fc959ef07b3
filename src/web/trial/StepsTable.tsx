import { type StopFigure, stopX, strokeInWords } from '../../stroke/index.js';
import type { Step, Trial } from '../../trial/index.js';
import { to } from '../place.js';
import { figure } from '../wording.js';

/** What the X axis is set to, and under it where the touching face stands when that is another figure. */
const StopX = ({ step }: { readonly step: Step }) => {
  const { set, face } = stopX(step);
  if (set.length === 0) return <>by eye</>;
  const figures = (of: readonly StopFigure[]): string => of.map(({ value }) => figure(value, 2)).join(' / ');
  return <>{figures(set)}{face.length > 0 && <span className="small soft"><br />face at {figures(face)}</span>}</>;
};

/** The steps with their numbers; each leads to its sheet. */
export const StepsTable = ({ id, trial }: { readonly id: string; readonly trial: Trial }) => (
  <section className="section" aria-labelledby="steps-title">
    <h2 id="steps-title">Steps</h2>
    <div className="scroll" tabIndex={0} role="group" aria-label="Table of steps">
      <table className="steps">
        <thead>
          <tr>
            <th scope="col">Step</th><th scope="col">Stroke</th><th scope="col">Station</th><th scope="col">Side up</th>
            <th scope="col" className="number">Bend angle,{'\u00a0'}°</th><th scope="col" className="number">Included angle,{'\u00a0'}°</th>
            <th scope="col" className="number">X axis mm</th><th scope="col" className="number">R mm</th>
            <th scope="col" className="number">Depth mm<br />from touch</th><th scope="col" className="number">Force kN</th><th scope="col" className="number">Clearance<br />mm</th>
            <th scope="col">Against the stop</th>
          </tr>
        </thead>
        <tbody>
          {trial.steps.map((step) => (
            <tr key={step.number}>
              <th scope="row"><a className="touch" href={to.walk(id, step.number)} aria-label={`Step ${step.number}`}>{step.number}</a></th>
              <td>{strokeInWords(trial, step)}</td><td>{step.station}</td>
              <td><span className={`side-mark side-${step.sideUp}`}>{step.sideUp}</span></td>
              <td className="number">{figure(step.bendAngle, 1)}</td><td className="number">{figure(step.includedAngle, 1)}</td>
              <td className="number"><StopX step={step} /></td>
              <td className="number">{step.stop.kind === 'none' ? '–' : figure(step.stop.r, 2)}</td>
              <td className="number">{figure(step.depth, 2)}</td><td className="number">{figure(step.force / 1000, 1)}</td>
              <td className="number">{figure(step.clearance, 1)}</td>
              <td>{step.stop.kind !== 'none' ? step.stop.edge : step.pass === 2 ? 'the bend begun' : step.kind === 'hem close' ? 'the fold, by eye' : 'scribed line'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </section>
);
