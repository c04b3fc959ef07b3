import { type FormEvent, useState } from 'react';
import type { GeneralClass } from '../../metal/index.js';
import type { PartSummary } from '../../server/index.js';
import { type Developed, type Dimension, type Feature, dimensionFault, plateNames, valueOf } from '../../sheet/index.js';
import { describeDimension } from '../../trial/index.js';
import { lightsOf } from '../scene/lightsOf.js';
import { freeEdges } from '../scene/pickFeature.js';
import type { Lit } from '../scene/sheetMesh.js';
import { Fault } from '../sheet/Fault.js';
import { FigureInput } from '../sheet/FigureField.js';
import { figureWithin } from '../shop/figureWithin.js';
import { figure, mm } from '../wording.js';
import type { Revise } from './AssumptionChange.js';

type Named = Omit<Dimension, 'id'>;
type Asked = Pick<Dimension, 'tolerance' | 'class'>;

const CLASSES: readonly (readonly [GeneralClass, string])[] = [['f', 'class f, fine'], ['m', 'class m, medium'], ['c', 'class c, coarse'], ['v', 'class v, very coarse']];

const key = (feature: Feature): string => JSON.stringify(feature);

/** Of a dimension, plus and minus. */
const PLUS_MINUS = { what: 'tolerance', least: 0, most: 1000, unit: 'mm', above: true, mayStayOut: true } as const;

/** Every face and free straight edge by name, for those who do not pick in the view. */
const allFeatures = (sheet: Developed): (readonly [string, string])[] =>
  sheet.part.plates.flatMap((_, plate) => [
    ...(['A', 'B'] as const).map((side) => [key({ kind: 'face', plate, side }), `Plate ${plate + 1}, ${side} face`] as const),
    ...freeEdges(sheet, plate).map(([p, q], i) => [
      key({ kind: 'edge', plate, at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2] }), `Plate ${plate + 1}, edge ${i + 1}, ${figure(Math.hypot(q[0] - p[0], q[1] - p[1]), 1)} long`,
    ] as const),
  ]);

interface AskProps {
  readonly name: string;
  readonly asked: Asked;
  readonly action: string;
  readonly busy: boolean;
  readonly send: (asked: Asked) => void;
}

/** A tolerance in figures or by a class, or none, and the button that sets it. */
const Ask = ({ name, asked, action, busy, send }: AskProps) => {
  const [kind, setKind] = useState(asked.tolerance !== undefined ? 'mm' : (asked.class ?? ''));
  const [typed, setTyped] = useState(asked.tolerance === undefined ? '' : String(asked.tolerance));
  const read = figureWithin(typed, PLUS_MINUS);
  const now: Asked | null = kind === '' ? {} : kind === 'mm' ? (read.ok && read.value !== undefined ? { tolerance: read.value } : null) : { class: kind as GeneralClass };
  const can = now !== null && !busy && (action !== 'Set' || JSON.stringify(now) !== JSON.stringify(asked));
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (can && now) send(now);
  };
  return (
    <form noValidate className="change" onSubmit={submit}>
      <select aria-label={`tolerance of ${name}`} value={kind} onChange={(event) => setKind(event.target.value as GeneralClass | 'mm' | '')}>
        <option value="">no tolerance</option><option value="mm">± mm</option>
        {CLASSES.map(([cls, words]) => <option key={cls} value={cls}>{words}</option>)}
      </select>
      {kind === 'mm' && <FigureInput name={`plus and minus mm on ${name}`} text={typed} type={setTyped} range={PLUS_MINUS} />}
      <button type="submit" disabled={!can} aria-label={`${action} ${name}`}>{action}</button>
    </form>
  );
};

interface DimensionPanelProps {
  readonly sheet: Developed;
  readonly summary: PartSummary;
  readonly lit: Lit;
  readonly light: (lit: Lit) => void;
  readonly revise: Revise;
  readonly busy: boolean;
  /** Why what was set last is not kept. */
  readonly fault: string | undefined;
  /** What was touched in the view for a new dimension; undefined while none is being picked. */
  readonly picked: readonly Feature[] | undefined;
  readonly pick: (picked: readonly Feature[] | undefined) => void;
}

/** The drawing's dimensions: what they must hold, and new ones picked between two faces or edges. */
export const DimensionPanel = ({ sheet, summary: { dimensions }, lit, light, revise, busy, fault: refused, picked, pick }: DimensionPanelProps) => {
  const { part } = sheet;
  const bare = dimensions.map(({ dimension: { id: _, ...rest } }): Named => rest);
  const send = (list: readonly Named[], done?: () => void): void => revise({ dimensions: list }, done);
  const replaced = (at: number, asked: Asked): Named[] => bare.map((it, i) => (i === at ? { between: it.between, ...asked } : it));
  const [one, two] = picked ?? [];
  const fault = one && two ? (dimensionFault(sheet, { between: [one, two] }) ?? undefined) : undefined;
  const choose = (place: 0 | 1, word: string): void => {
    const feature = word === '' ? undefined : (JSON.parse(word) as Feature);
    const next = place === 0 ? [feature, two] : [one, feature];
    const known = next.filter((it) => it !== undefined);
    pick(known);
    light(lightsOf(part, known));
  };
  const end = (): void => {
    pick(undefined);
    light({ plates: [], bends: [] });
  };
  return (
    <section className="section check" aria-labelledby="dimensions-title">
      <h2 id="dimensions-title">Dimensions</h2>
      <p className="small soft">{part.dimensions === undefined ? 'Those that a drawing carries by default: outside lengths of flanges, overall sizes. ' : ''}What is asked here must be held by every plan that counts as “makes”.</p>
      <Fault sentence={refused} />
      {dimensions.length > 0 && (
        <ul className="dimensions">
          {dimensions.map(({ dimension, what, value, classTolerance }, i) => {
            const lights = lightsOf(part, dimension.between);
            const on = JSON.stringify(lights) === JSON.stringify(lit);
            const name = dimension.id;
            return (
              <li key={`${name} ${JSON.stringify(dimension)}`}>
                <button type="button" className="line" aria-pressed={on} onClick={() => light(on ? { plates: [], bends: [] } : lights)}>
                  <span className="balloon">{name}</span>
                  <span><strong>{mm(value)}</strong>{dimension.tolerance !== undefined ? ` ± ${figure(dimension.tolerance, 2)}` : classTolerance !== null ? ` ± ${figure(classTolerance, 2)}` : ''}<br /><span className="small soft">{what}</span></span>
                </button>
                <div className="changes no-print">
                  <Ask name={name} action="Set" busy={busy} asked={{ ...(dimension.tolerance === undefined ? {} : { tolerance: dimension.tolerance }), ...(dimension.class === undefined ? {} : { class: dimension.class }) }} send={(asked) => send(replaced(i, asked))} />
                  <button type="button" className="quiet" disabled={busy} aria-label={`Leave out ${name}`} onClick={() => send(bare.filter((_, k) => k !== i))}>Leave out</button>
                </div>
              </li>
            );
          })}
        </ul>
      )}
      {picked === undefined ? (
        <div className="buttons no-print">
          <button type="button" onClick={() => { pick([]); light({ plates: [], bends: [] }); }}>Pick a dimension</button>
          {part.dimensions !== undefined && <button type="button" disabled={busy} onClick={() => revise({ dimensions: null })}>Back to the default ones</button>}
        </div>
      ) : (
        <fieldset className="picking">
          <legend>A new dimension</legend>
          <p aria-live="polite">{!one ? 'Touch the first face or edge in the view, or choose it here.' : !two ? 'Now the second one.' : fault === undefined ? <><strong>{mm(valueOf(sheet, { between: [one, two] }))}</strong>: {describeDimension({ between: [one, two] }, plateNames(part), part)}</> : ''}</p>
          {([0, 1] as const).map((place) => (
            <label key={place} className="field"><span>{place === 0 ? 'From' : 'To'}</span>
              <select value={picked[place] ? key(picked[place]) : ''} disabled={place === 1 && !one} onChange={(event) => choose(place, event.target.value)}>
                <option value="">not picked yet</option>
                {allFeatures(sheet).map(([word, words]) => <option key={word} value={word}>{words}</option>)}
              </select>
            </label>
          ))}
          <Fault sentence={fault} />
          {one && two && fault === undefined && <Ask name="the new dimension" action="Add" busy={busy} asked={{}} send={(asked) => { send([...bare, { between: [one, two], ...asked }], end); }} />}
          <button type="button" className="quiet" onClick={end}>Leave it</button>
        </fieldset>
      )}
    </section>
  );
};
