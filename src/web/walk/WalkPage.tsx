import { useEffect } from 'react';
import { reasonsTold } from '../../fit/index.js';
import type { TrialView } from '../../server/index.js';
import { cautionWords, pictureWords, strokeInWords } from '../../stroke/index.js';
import { go, to } from '../place.js';
import { Drawing } from '../sheet/Drawing.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { StrokeView } from '../stroke/StrokeView.js';
import { trialBlock } from '../trial/trialBlock.js';
import { useAnswer } from '../useAnswer.js';
import { Figures } from './Figures.js';
import { ToolNotes } from './ToolNotes.js';

/** Ends the caution on each step's page. */
const GUARDING = 'Guarding by the local rules and the machine’s manual.';

/** Keys pressed in a field or in the view belong to it. */
const taken = (target: EventTarget | null): boolean => target instanceof Element && target.closest('input, select, textarea, .space, dialog') !== null;

/** One step, filling the tablet: what to do, before and after, the numbers large, and the stroke in motion. */
export const WalkPage = ({ id, number }: { readonly id: string; readonly number: number }) => {
  const here = `/api/trials/${encodeURIComponent(id)}`;
  const { value, fault, again } = useAnswer<TrialView>(here);
  const last = value?.trial.steps.length ?? number;
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (taken(event.target) || event.altKey || event.ctrlKey || event.metaKey) return;
      if ((event.key === 'ArrowRight' || event.key === 'PageDown') && number < last) go(to.walk(id, number + 1));
      else if ((event.key === 'ArrowLeft' || event.key === 'PageUp') && number > 1) go(to.walk(id, number - 1));
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [id, number, last]);
  const step = value?.trial.steps.find((it) => it.number === number);
  if (value && value.verdict !== 'makes') {
    return (
      <Sheet title="Not to be bent" trail={[['Parts', to.parts], [value.partName, to.part(value.partId)], ['Trial', to.trial(id)]]} block={trialBlock(value, ['Sheet', `Step ${number}`])}>
        <div className="body stack">
          <Warning word="Not to be bent.">The trial has no plan that is shown to hold. {reasonsTold(value.trial.reasons)[0]?.sentence}</Warning>
          <p><a href={to.trial(id)}>Go to the trial.</a></p>
        </div>
      </Sheet>
    );
  }
  if (!value || !step) {
    return (
      <Sheet title={`Step ${number}`} trail={[['Parts', to.parts], ['Trial', to.trial(id)]]} block={[['Sheet', `Step ${number}`]]}>
        <div className="body">{fault ? <Fault sentence={fault} again={again} /> : value ? <p>The trial has no step {number}. <a href={to.trial(id)}>Go to the trial.</a></p> : <Waiting what="Fetching the step" />}</div>
      </Sheet>
    );
  }
  const words = pictureWords(step);
  const picture = (when: 'before' | 'after') => `${here}/steps/${number}/picture.svg?when=${when}`;
  return (
    <Sheet
      title={`Step ${number} of ${last}`}
      close
      under={<span className="step-bends">{strokeInWords(value.trial, step)} <span className={`side-mark side-${step.sideUp}`}>{step.sideUp}</span> side {step.sideUp} up, station {step.station}</span>}
      trail={[['Parts', to.parts], [value.partName, to.part(value.partId)], ['Trial', to.trial(id)]]}
      block={trialBlock(value, ['Sheet', `Step ${number} of ${last}`])}
      notes={<ToolNotes trial={value.trial} step={step} />}
    >
      <div className="body walk">
        {value.standsStill.length > 0 && <div className="stand-still">{value.standsStill.map((still) => <Warning key={still} word="Beware.">{still}</Warning>)}</div>}
        <div className="do-row">
          <p className="do">{step.words}</p>
          <Warning word="Caution.">{cautionWords(step)} {GUARDING}</Warning>
        </div>
        <Figures trial={value.trial} step={step} />
        <div className="seen">
          <div className="pictures">
            <figure><figcaption>{words.before}</figcaption><Drawing path={picture('before')} /></figure>
            <figure><figcaption>{words.after}</figcaption><Drawing path={picture('after')} /></figure>
          </div>
          <section className="no-print" aria-label="The stroke in motion">
            <StrokeView key={number} trial={value.trial} step={step} instead={<Drawing path={`${here}/steps/${number}/section.svg`} />} />
          </section>
          {step.kind !== 'V bend' && <div className="print-only"><Drawing path={`${here}/steps/${number}/section.svg`} /></div>}
        </div>
        <nav className="turn-over no-print" aria-label="Steps">
          {number > 1 ? <a className="button" href={to.walk(id, number - 1)}><span aria-hidden="true">←</span> Step {number - 1}</a> : <a className="button" href={to.trial(id)}>To the trial</a>}
          <span className="small soft">The arrow keys turn the pages.</span>
          {number < last ? <a className="button next" href={to.walk(id, number + 1)}>Step {number + 1} <span aria-hidden="true">→</span></a> : <a className="button next" href={to.pieces(id)}>Last step: write the piece down</a>}
        </nav>
      </div>
    </Sheet>
  );
};
