import { useRef, useState, type DragEvent } from 'react';
import type { PartRevision } from '../../store/index.js';
import { ApiFault, sentence, upload } from '../ask.js';
import { go, to } from '../place.js';
import { SvgText } from '../sheet/Drawing.js';
import { Warning } from '../sheet/Fault.js';
import { TakenList } from './TakenList.js';

interface Refused {
  readonly index: number;
  readonly sentence: string;
  /** SVG: the body with the faces marked that the sentence names. */
  readonly picture?: string;
}
interface Answer {
  readonly parts: readonly PartRevision[];
  readonly refused: readonly Refused[];
}
type State =
  | { readonly is: 'open' }
  | { readonly is: 'sending'; readonly name: string; readonly share: number }
  | { readonly is: 'answered'; readonly name: string; readonly taken: readonly PartRevision[]; readonly refused: readonly Told[] };

interface Told {
  readonly words: string;
  readonly picture?: string;
}

const solid = ({ index, sentence: words, picture }: Refused): Told => ({ words: `Solid ${index + 1}: ${words}`, ...(picture === undefined ? {} : { picture }) });

/** Where a file is dropped or chosen: a STEP file's solids are taken in or refused one by one, a flat drawing is looked at first. */
export const DropZone = ({ added, flat }: { readonly added: () => void; readonly flat: (file: File) => void }) => {
  const [state, setState] = useState<State>({ is: 'open' });
  const [over, setOver] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (!file || state.is === 'sending') return;
    const { name } = file;
    if (/\.dxf$/i.test(name)) return flat(file);
    setState({ is: 'sending', name, share: 0 });
    try {
      const answer = await upload<Answer>('/api/parts', file, (share) => setState({ is: 'sending', name, share }));
      if (answer.parts.length === 1 && answer.refused.length === 0) return go(to.part(answer.parts[0]!.id));
      setState({ is: 'answered', name, taken: answer.parts, refused: answer.refused.map(solid) });
      added();
    } catch (fault) {
      const all = fault instanceof ApiFault ? (fault.body as { readonly refused?: readonly Refused[] } | null)?.refused : undefined;
      const [only] = all ?? [];
      const one: Told = { words: sentence(fault), ...(only?.picture === undefined ? {} : { picture: only.picture }) };
      setState({ is: 'answered', name, taken: [], refused: all && all.length > 1 ? all.map(solid) : [one] });
    }
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer.files[0]);
  };
  return (
    <section aria-label="Hand in a part" className="no-print">
      <div className={over ? 'drop over' : 'drop'} onDrop={drop} onDragOver={(event) => { event.preventDefault(); setOver(true); }} onDragLeave={() => setOver(false)}>
        <p><strong>Drop a STEP file or a flat as DXF here</strong> <span className="soft">(.step, .stp or .dxf, sheet metal of one thickness)</span></p>
        <div className="buttons">
          <button type="button" className="next" disabled={state.is === 'sending'} onClick={() => chooser.current?.click()}>Choose a file</button>
          <a className="button" href={to.profile}>Type a profile</a>
        </div>
        <input ref={chooser} type="file" accept=".step,.stp,.dxf" className="hidden" tabIndex={-1} aria-label="Part file" onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = '';
        }} />
      </div>
      <div aria-live="polite" className="stack">
        {state.is === 'sending' && (
          <p className="sending">
            {state.share < 1 ? `Sending ${state.name}` : `Reading ${state.name}: plates, bends and holes`} …
            <progress aria-label={`Taking in ${state.name}`} {...(state.share < 1 ? { value: state.share } : {})} />
          </p>
        )}
        {state.is === 'answered' && state.taken.length > 0 && <TakenList file={state.name} parts={state.taken} changed={added} />}
        {state.is === 'answered' && state.refused.map(({ words, picture }) => (
          <div key={words} className="refusal">
            <Warning word="Refused.">{words}</Warning>
            {picture !== undefined && <SvgText text={picture} className="refused-picture" />}
          </div>
        ))}
      </div>
    </section>
  );
};
