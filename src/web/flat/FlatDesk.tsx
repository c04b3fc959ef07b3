import { useEffect, useRef, useState } from 'react';
import type { DxfPartResult } from '../../intake/index.js';
import { type DxfReading, type LayerRole, type Part, UNIT_WORDS } from '../../sheet/index.js';
import { sendFile, sentence } from '../ask.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { KeptFigure } from '../sheet/FigureField.js';
import { mm } from '../wording.js';
import { FlatPicture } from './FlatPicture.js';

/** The server's answer to a look at a drawing (docs/api.md). */
interface Look {
  readonly seen: DxfPartResult['seen'];
  readonly part?: Part;
  readonly failure?: { readonly code: string; readonly sentence: string };
}

interface FlatDeskProps {
  readonly file: File;
  readonly told: DxfReading;
  /** What the button says that takes the drawing as it is now read. */
  readonly action: string;
  readonly take: (told: DxfReading) => Promise<void>;
  readonly leave: () => void;
}

const ROLES: readonly (readonly [LayerRole, string])[] = [
  ['cut', 'cut line'], ['bend', 'bend line'], ['bend A', 'bend line, up (towards A)'], ['bend B', 'bend line, down (towards B)'], ['ignore', 'left out'],
];
/** ms between the last key and the next look. */
const PAUSE = 300;

/** Without what is undefined: JSON knows no such thing. */
const known = <T extends object>(it: T): T => Object.fromEntries(Object.entries(it).filter(([, value]) => value !== undefined)) as T;

/** As the reading of a drawing takes them (docs/intake.md). */
const THICKNESS = { what: 'thickness', least: 0, most: 50, unit: 'mm', above: true, mayStayOut: true } as const;
const ANGLE = { what: 'bend angle', least: 0, most: 180, unit: 'degrees', above: true, mayStayOut: true } as const;
const RADIUS = { what: 'inside radius', least: 0, most: 5000, unit: 'mm', mayStayOut: true } as const;

/** A flat drawing before it is taken: its lines by layer, its unit, thickness and what holds for its bends, with a look at what that gives. */
export const FlatDesk = ({ file, told: begin, action, take, leave }: FlatDeskProps) => {
  const [told, setTold] = useState(begin);
  const [look, setLook] = useState<Look>();
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  useEffect(() => {
    const stop = new AbortController();
    const soon = setTimeout(() => {
      sendFile<Look>('/api/drawings', file, { told: JSON.stringify(told) }, stop.signal).then(
        (answer) => {
          setLook(answer);
          setFault(undefined);
        },
        (refusal: unknown) => !stop.signal.aborted && setFault(sentence(refusal)),
      );
    }, PAUSE);
    return () => {
      clearTimeout(soon);
      stop.abort();
    };
  }, [file, told]);
  const tell = (more: Partial<{ [K in keyof DxfReading]: DxfReading[K] | undefined }>): void => setTold((now) => known({ ...now, ...more }) as DxfReading);
  const forAll = (more: { [K in keyof NonNullable<DxfReading['bend']>]?: NonNullable<DxfReading['bend']>[K] | undefined }): void => {
    const bend = known({ ...told.bend, ...more }) as NonNullable<DxfReading['bend']>;
    tell({ bend: Object.keys(bend).length === 0 ? undefined : bend });
  };
  const go = async (): Promise<void> => {
    setBusy(true);
    try {
      await take(told);
    } catch (refusal) {
      setFault(sentence(refusal));
      setBusy(false);
    }
  };
  const seen = look?.seen;
  const unit = seen?.unit;
  return (
    <section className="section flat-desk" aria-labelledby="flat-title">
      <h2 id="flat-title" tabIndex={-1} ref={heading}>{file.name}: what its lines are</h2>
      {!look && !fault && <Waiting what="Reading the drawing" />}
      {seen && (
        <div className="columns">
          <div>
            <FlatPicture seen={seen} />
            <p className="small soft">Seen from the A side. Cut lines whole, bend lines dashed (up long, down short), what is left out faint.</p>
            <div aria-live="polite">
              {look.failure && <Warning word="Not yet a part.">{look.failure.sentence}</Warning>}
              {look.part && <p className="reads-as"><strong>{look.part.plates.length === 1 ? '1 plate' : `${look.part.plates.length} plates`}, {look.part.bends.length === 1 ? '1 bend' : `${look.part.bends.length} bends`}</strong>, {mm(look.part.thickness)} thick</p>}
            </div>
          </div>
          <div className="stack">
            {unit && (
              <fieldset className={unit.doubted && told.unit === undefined ? 'asked' : ''}>
                <legend>{unit.doubted && told.unit === undefined ? 'Which unit is it drawn in? The file leaves it in doubt.' : 'Unit of the drawing'}</legend>
                {unit.readings.map((reading) => (
                  <label key={reading.unit} className="choice">
                    <input type="radio" name="unit" checked={unit.taken === reading.unit} onChange={() => tell({ unit: reading.unit })} />
                    <span>{UNIT_WORDS[reading.unit]}: {mm(reading.size[0], 1)} × {mm(reading.size[1], 1)}{unit.declared === reading.unit ? ', as the file declares' : ''}{reading.couldBe ? '' : '; no sheet is of that size'}</span>
                  </label>
                ))}
              </fieldset>
            )}
            <div className="figures-row">
              <KeptFigure label="Thickness, mm" first={told.thickness} range={THICKNESS} change={(thickness) => tell({ thickness })} />
              <KeptFigure label="Bend angle of all, degrees" first={told.bend?.bendAngle} range={ANGLE} change={(bendAngle) => forAll({ bendAngle })} />
              <KeptFigure label="Inside radius of all, mm" first={told.bend?.insideRadius} range={RADIUS} change={(insideRadius) => forAll({ insideRadius })} />
              <label className="field"><span>Bends go</span>
                <select value={told.bend?.direction ?? ''} onChange={(event) => forAll({ direction: event.target.value === '' ? undefined : (event.target.value as 'A' | 'B') })}>
                  <option value="">as drawn, else up</option><option value="A">up (towards A)</option><option value="B">down (towards B)</option>
                </select>
              </label>
            </div>
            <p className="small soft">What is written near a bend line goes before these.</p>
            {seen.layers.length > 0 && (
              <table className="layers">
                <caption className="hidden">Layers of the drawing</caption>
                <thead><tr><th scope="col">Layer</th><th scope="col" className="number">Lines</th><th scope="col">Taken as</th></tr></thead>
                <tbody>
                  {seen.layers.map(({ key, edges, role, guessed }) => (
                    <tr key={key}>
                      <th scope="row">{key}{guessed && <span className="small soft"> guessed</span>}</th><td className="number">{edges}</td>
                      <td>
                        <select aria-label={`Lines of layer ${key}`} value={role} onChange={(event) => tell({ roles: { ...told.roles, [key]: event.target.value as LayerRole } })}>
                          {ROLES.map(([id, words]) => <option key={id} value={id}>{words}</option>)}
                        </select>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </div>
        </div>
      )}
      <Fault sentence={fault} />
      <div className="buttons">
        <button type="button" className="next" disabled={busy || !look?.part} onClick={() => void go()}>{action}</button>
        <button type="button" onClick={leave}>Leave it</button>
      </div>
    </section>
  );
};
