import { useEffect, useState } from 'react';
import { reachInWords } from '../../fit/index.js';
import type { Metal } from '../../metal/index.js';
import type { EnvelopeView } from '../../server/index.js';
import { get, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { useAnswer } from '../useAnswer.js';

/** ms between two looks while it is worked out. */
const LOOK = 2000;

const mm = (value: number): string => `${value.toLocaleString('en-GB')} mm`;

const Figures = ({ envelope: { thickest, shortest, deepest, model } }: { readonly envelope: Extract<EnvelopeView, { state: 'done' }>['envelope'] }) => (
  <>
    <div className="columns">
      <table>
        <thead><tr><th scope="col" className="number">Length of the bend</th><th scope="col" className="number">Thickest sheet, bent square</th></tr></thead>
        <tbody>{thickest.map(({ length, thickness }) => <tr key={length}><td className="number">{mm(length)}</td><td className="number">{reachInWords(thickness)}</td></tr>)}</tbody>
      </table>
      <table>
        <thead><tr><th scope="col" className="number">Thickness</th><th scope="col" className="number">Shortest flange, outside</th></tr></thead>
        <tbody>{shortest.map(({ thickness, flange }) => <tr key={thickness}><td className="number">{mm(thickness)}</td><td className="number">{reachInWords(flange)}</td></tr>)}</tbody>
      </table>
    </div>
    <p>Deepest box on a base of {deepest.base.join(' by ')} mm in {deepest.thickness} mm: {reachInWords(deepest.depth)}.</p>
    <p className="small soft">{model}</p>
  </>
);

/** What this machine reaches in a metal, by planning and proving; worked out when asked. */
export const EnvelopeSection = ({ id }: { readonly id: string }) => {
  const { value } = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const [metalId, setMetal] = useState('dc01');
  const [asked, setAsked] = useState(false);
  const [view, setView] = useState<EnvelopeView>();
  const [fault, setFault] = useState<string>();
  useEffect(() => {
    if (!asked) return undefined;
    let timer: ReturnType<typeof setTimeout>;
    let gone = false;
    const look = async (): Promise<void> => {
      try {
        const now = await get<EnvelopeView>(`/api/machines/${encodeURIComponent(id)}/envelope?metalId=${encodeURIComponent(metalId)}`);
        if (gone) return;
        setView(now);
        if (now.state === 'computing') timer = setTimeout(() => void look(), LOOK);
      } catch (refusal) {
        if (!gone) setFault(sentence(refusal));
      }
    };
    void look();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [asked, id, metalId]);
  return (
    <section className="section" aria-labelledby="envelope-title">
      <h2 id="envelope-title">What it reaches: thickest by longest, shortest flange, deepest box</h2>
      <label className="field envelope-metal no-print"><span>Metal</span>
        <select value={metalId} onChange={(event) => { setMetal(event.target.value); setView(undefined); setAsked(false); }}>
          {(value?.metals ?? []).map(({ id: metal, name, temper }) => <option key={metal} value={metal}>{name}{temper && `, ${temper}`}</option>)}
        </select>
      </label>
      {!asked && <div className="buttons no-print"><button type="button" onClick={() => setAsked(true)}>Work the envelope out (about forty plans)</button></div>}
      <Fault sentence={fault ?? (view?.state === 'failed' ? view.why : undefined)} />
      {asked && view?.state !== 'done' && view?.state !== 'failed' && <p role="status">{view ? `Working it out: plan ${view.plans}` : 'Asking'}</p>}
      {view?.state === 'done' && <Figures envelope={view.envelope} />}
    </section>
  );
};
