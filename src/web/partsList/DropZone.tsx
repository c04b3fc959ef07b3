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
interface Told {
  readonly words: string;
  readonly picture?: string;
}
/** What one file gave. */
interface Outcome {
  readonly name: string;
  readonly taken: readonly PartRevision[];
  readonly refused: readonly Told[];
}
/** The file that is on its way: `share` of it sent, `before` those of the same hand that came before it. */
interface Sending {
  readonly name: string;
  readonly share: number;
  readonly number: number;
  readonly of: number;
}

const solid = ({ index, sentence: words, picture }: Refused): Told => ({ words: `Solid ${index + 1}: ${words}`, ...(picture === undefined ? {} : { picture }) });

const handIn = async (file: File, sent: (share: number) => void): Promise<Outcome> => {
  const { name } = file;
  try {
    const { parts, refused } = await upload<Answer>('/api/parts', file, sent);
    return { name, taken: parts, refused: refused.map(solid) };
  } catch (fault) {
    const all = fault instanceof ApiFault ? (fault.body as { readonly refused?: readonly Refused[] } | null)?.refused : undefined;
    const [only] = all ?? [];
    const one: Told = { words: sentence(fault), ...(only?.picture === undefined ? {} : { picture: only.picture }) };
    return { name, taken: [], refused: all && all.length > 1 ? all.map(solid) : [one] };
  }
};

const isFlat = ({ name }: File): boolean => /\.dxf$/i.test(name);

interface DropZoneProps {
  readonly added: () => void;
  /** Takes flat drawings, which are looked at before they are taken in. */
  readonly flat: (files: readonly File[]) => void;
  /** Something else is being looked at: what was said stays, and nothing is taken. */
  readonly busy: boolean;
}

/** Where files are dropped or chosen: a STEP file's solids are taken in or refused one by one, a flat drawing is looked at first. */
export const DropZone = ({ added, flat, busy }: DropZoneProps) => {
  const [sending, setSending] = useState<Sending>();
  const [outcomes, setOutcomes] = useState<readonly Outcome[]>([]);
  const [over, setOver] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);
  const take = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0 || sending || busy) return;
    const solids = files.filter((file) => !isFlat(file));
    setOutcomes([]);
    const came: Outcome[] = [];
    for (const [i, file] of solids.entries()) {
      const sent = (share: number): void => setSending({ name: file.name, share, number: i + 1, of: solids.length });
      sent(0);
      came.push(await handIn(file, sent));
      setOutcomes([...came]);
      added();
    }
    setSending(undefined);
    if (solids.length < files.length) return flat(files.filter(isFlat));
    const [{ taken, refused }] = came as [Outcome];
    if (came.length === 1 && taken.length === 1 && refused.length === 0) go(to.part(taken[0]!.id));
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    void take(Array.from(event.dataTransfer.files));
  };
  return (
    <section aria-label="Hand in a part" className="no-print">
      {!busy && (
        <div className={over ? 'drop over' : 'drop'} onDrop={drop} onDragOver={(event) => { event.preventDefault(); setOver(true); }} onDragLeave={() => setOver(false)}>
          <p><strong>Drop STEP files or flats as DXF here</strong> <span className="soft">(.step, .stp or .dxf, one or several; sheet metal of one thickness)</span></p>
          <div className="buttons">
            <button type="button" className="next" disabled={sending !== undefined} onClick={() => chooser.current?.click()}>Choose files</button>
            <a className="button" href={to.profile}>Type a profile</a>
          </div>
          <input ref={chooser} type="file" multiple accept=".step,.stp,.dxf" className="hidden" tabIndex={-1} aria-label="Part file" onChange={(event) => {
            void take(Array.from(event.target.files ?? []));
            event.target.value = '';
          }} />
        </div>
      )}
      <div aria-live="polite" className="stack">
        {sending && (
          <p className="sending">
            {sending.of > 1 && `File ${sending.number} of ${sending.of}. `}{sending.share < 1 ? `Sending ${sending.name}` : `Reading ${sending.name}: plates, bends and holes`} …
            <progress aria-label={`Taking in ${sending.name}`} {...(sending.share < 1 ? { value: sending.share } : {})} />
          </p>
        )}
        {outcomes.map(({ name, taken, refused }, i) => (
          <div key={`${i} ${name}`} className="stack">
            {taken.length > 0 && <TakenList file={name} parts={taken} changed={added} />}
            {refused.map(({ words, picture }) => (
              <div key={words} className="refusal">
                <Warning word={outcomes.length > 1 ? `${name} refused.` : 'Refused.'}>{words}</Warning>
                {picture !== undefined && <SvgText text={picture} className="refused-picture" />}
              </div>
            ))}
          </div>
        ))}
        {outcomes.length > 1 && !sending && outcomes.some(({ taken }) => taken.length > 0) && <p><a className="button" href={to.fits}>Try them on several machines</a></p>}
      </div>
    </section>
  );
};
