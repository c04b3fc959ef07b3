import { rangeInWords } from '../../forming/index.js';
import type { Step, StepForming, Trial } from '../../trial/index.js';
import { asSentence, degrees, figure, kilonewtons, mm } from '../wording.js';

const shown = (value: number, unit: string): string =>
  unit === 'mm' ? mm(value) : unit === 'N' ? kilonewtons(value) : unit === 'degrees' ? degrees(value) : `${figure(value, 1)} ${unit}`;

const sourced = (source: string, mark: string): string => (source.includes(mark) ? source : `${source} (${mark})`);

const Rules = ({ forming }: { readonly forming: StepForming }) => (
  <div className="scroll" tabIndex={0} role="group" aria-label="Calculated, and by rule">
    <table>
      <thead><tr><th scope="col">Figure</th><th scope="col" className="number">Calculated</th><th scope="col" className="number">By rule</th><th scope="col">Rule</th></tr></thead>
      <tbody>
        {forming.byRule.map(({ what, strip, value, unit, source, mark }) => (
          <tr key={`${what} ${source}`}><td>{what}</td><td className="number">{shown(strip, unit)}</td><td className="number">{shown(value, unit)}</td><td className="small">{sourced(source, mark)}</td></tr>
        ))}
      </tbody>
    </table>
  </div>
);

const Limits = ({ step, forming }: { readonly step: Step; readonly forming: StepForming }) => (
  <div className="scroll" tabIndex={0} role="group" aria-label={`Limits of step ${step.number}`}>
    <table>
      <thead><tr><th scope="col">Limit, tightest first</th><th scope="col" className="number">Value</th><th scope="col" className="number">Limit</th><th scope="col" className="number">Margin</th><th scope="col">Kept</th><th scope="col">Source</th></tr></thead>
      <tbody>
        {forming.limits.map(({ name, value, limit, margin, unit, holds, source, mark }) => (
          <tr key={name}><td>{name}</td><td className="number">{shown(value, unit)}</td><td className="number">{shown(limit, unit)}</td><td className="number">{shown(margin, unit)}</td><td>{holds ? '✓ yes' : <strong>⚠ no, watch it</strong>}</td><td className="small">{sourced(source, mark)}</td></tr>
        ))}
      </tbody>
    </table>
  </div>
);

const rangeWords = ({ range, rangeWords: words }: StepForming): string =>
  range === null ? words : `${rangeInWords(range, { angle: degrees, length: mm, bare: (value) => figure(value, 2) })}. ${words}`;

/** Names of the limits that a step goes past. None of them refuses a stroke: a plan past one that does is no plan. */
const watched = ({ forming }: Step): readonly string[] => forming?.limits.filter(({ holds }) => !holds).map(({ name }) => name) ?? [];

/** For each step what forming says beside its own figures: rules, limits, the stock's scatter, why this V; folded away until asked for. */
export const FormingFigures = ({ trial: { steps } }: { readonly trial: Trial }) => {
  if (!steps.some((s) => s.forming)) return null;
  return (
    <section className="section" aria-labelledby="forming-title">
      <h2 id="forming-title">Rules, limits and scatter</h2>
      {steps.some((s) => watched(s).length > 0) && (
        <p className="small soft">⚠ names what goes past a good-practice limit. Such a limit forbids no stroke, so it does not change the verdict: look at that place on the first piece.</p>
      )}
      {steps.map((step) => step.forming && (
        <details key={step.number} className="forming">
          <summary>Step {step.number}: {step.bends.join(', ')}{watched(step).length > 0 && <strong> ⚠ watch: {watched(step).join('; ')}</strong>}</summary>
          <div className="stack">
            {step.forming.whyV.map((words) => <p key={words}>{asSentence(words)}</p>)}
            <p><strong>Stock at the ends of its range.</strong> {rangeWords(step.forming)}</p>
            <p><strong>Flat length.</strong> Deduction {mm(step.deduction)}: {asSentence(step.forming.deduction.words)}</p>
            <p><strong>Deflection.</strong> {asSentence(step.crowningWords)}</p>
            <Rules forming={step.forming} />
            <Limits step={step} forming={step.forming} />
          </div>
        </details>
      ))}
    </section>
  );
};
