import { useRef, useState, type DragEvent } from 'react';
import { type Part, UNIT_WORDS } from '../../sheet/index.js';
import type { PartRevision } from '../../store/index.js';
import { ApiFault, sentence, upload } from '../ask.js';
import { to, useGo } from '../place.js';
import { SvgText } from '../sheet/Drawing.js';
import { Warning } from '../sheet/Fault.js';
import { type Alike, TakenList } from './TakenList.js';

interface Refused {
  readonly index: number;
  /** Which solid of several. */
  readonly name?: string;
  readonly sentence: string;
  readonly unitDoubted?: boolean;
  /** SVG: the body with the faces marked that the sentence names. */
  readonly picture?: string;
}
interface Answer {
  readonly parts: readonly PartRevision[];
  readonly refused: readonly Refused[];
  /** Parts that are one shape with an earlier one of the file. */
  readonly alike: readonly Alike[];
}
type Unit = Part['unit'];
const UNITS = Object.entries(UNIT_WORDS) as [Unit, string][];

interface Told {
  readonly words: string;
  readonly picture?: string;
}
/** What one file gave. */
interface Outcome {
  readonly name: string;
  readonly taken: readonly PartRevision[];
  readonly alike: readonly Alike[];
  readonly refused: readonly Told[];
  /** Nothing was taken, and the unit that it declares is in doubt: it may be sent again. */
  readonly again?: File;
}
/** The file that is on its way: `share` of it sent, `before` those of the same hand that came before it. */
interface Sending {
  readonly name: string;
  readonly share: number;
  readonly number: number;
  readonly of: number;
}

const solid = ({ index, name, sentence: words, picture }: Refused): Told => ({ words: `Solid ${index + 1}${name === undefined ? '' : `, ${name}`}: ${words}`, ...(picture === undefined ? {} : { picture }) });

const handIn = async (file: File, unit: Unit | undefined, sent: (share: number) => void): Promise<Outcome> => {
  const { name } = file;
  try {
    const { parts, refused, alike } = await upload<Answer>('/api/parts', file, unit === undefined ? {} : { unit }, sent);
    return { name, taken: parts, alike, refused: refused.map(solid) };
  } catch (fault) {
    const all = fault instanceof ApiFault ? (fault.body as { readonly refused?: readonly Refused[] } | null)?.refused : undefined;
    const [only] = all ?? [];
    const one: Told = { words: sentence(fault), ...(only?.picture === undefined ? {} : { picture: only.picture }) };
    const doubted = all?.some(({ unitDoubted }) => unitDoubted) ?? false;
    return { name, taken: [], alike: [], refused: all && all.length > 1 ? all.map(solid) : [one], ...(doubted ? { again: file } : {}) };
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
  const go = useGo();
  const [sending, setSending] = useState<Sending>();
  const [outcomes, setOutcomes] = useState<readonly Outcome[]>([]);
  const [over, setOver] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);
  const take = async (files: readonly File[], unit?: Unit): Promise<void> => {
    if (files.length === 0 || sending || busy) return;
    const solids = files.filter((file) => !isFlat(file));
    setOutcomes([]);
    const came: Outcome[] = [];
    for (const [i, file] of solids.entries()) {
      const sent = (share: number): void => setSending({ name: file.name, share, number: i + 1, of: solids.length });
      sent(0);
      came.push(await handIn(file, unit, sent));
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
        {outcomes.map(({ name, taken, alike, refused, again }, i) => (
          <div key={`${i} ${name}`} className="stack">
            {taken.length > 0 && <TakenList file={name} parts={taken} alike={alike} changed={added} />}
            {refused.map(({ words, picture }) => (
              <div key={words} className="refusal">
                <Warning word={outcomes.length > 1 ? `${name} refused.` : 'Refused.'}>{words}</Warning>
                {picture !== undefined && <SvgText text={picture} className="refused-picture" />}
              </div>
            ))}
            {again && (
              <div className="buttons">
                <span>Read {name} again in</span>
                {UNITS.map(([unit, words]) => <button key={unit} type="button" disabled={sending !== undefined} onClick={() => void take([again], unit)}>{words}</button>)}
              </div>
            )}
          </div>
        ))}
        {outcomes.length > 1 && !sending && outcomes.some(({ taken }) => taken.length > 0) && <p><a className="button" href={to.fits}>Try them on several machines</a></p>}
      </div>
    </section>
  );
};
