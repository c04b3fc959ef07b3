import { useId, useRef, useState } from 'react';
import type { Contour } from '../../geometry/index.js';
import { sendFile, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { FieldFault, NumberField, useForm } from './fields.js';
import { figureTyped } from './figureTyped.js';
import { usualSection } from './kinds.js';
import { SHAPES } from './shapes.js';
import { at, isTree, withAt } from './tree.js';

interface Read {
  readonly corners: readonly (readonly number[])[];
  readonly size: readonly [number, number];
  readonly assumptions: readonly string[];
}

const words = (corners: unknown): string => (Array.isArray(corners) ? corners.map((c: unknown) => (Array.isArray(c) ? c.join(' ') : String(c))).join('\n') : '');

const cornersOf = (text: string): unknown[] =>
  text.split('\n').map((l) => l.trim()).filter((l) => l !== '').map((l) => l.split(/[\s;]+/).map((n) => figureTyped(n.replace(/,$/, ''))));

/** A drawn contour's corners as they are typed, to the thousandth of a mm. */
const cornersDrawn = (contour: Contour): unknown[] => {
  const mm = (value: number): number => Number(value.toFixed(3)) + 0;
  return contour.map(({ x, y, bulge }) => (bulge === 0 ? [mm(x), mm(y)] : [mm(x), mm(y), Number(bulge.toFixed(6))]));
};

interface SectionFieldProps {
  readonly path: string;
  readonly label: string;
  readonly shapes: readonly string[];
  /** Says where its origin lies. */
  readonly of: 'punch' | 'die' | 'machine';
  /** As it was last right: what drawing it corner by corner begins with. */
  readonly drawn: Contour | undefined;
}

/** A cross-section: by one of the shapes and its parameters, corner by corner, or taken from a DXF drawing. */
export const SectionField = ({ path, label, shapes, of, drawn }: SectionFieldProps) => {
  const { data, set, alter } = useForm();
  const section = at(data, path);
  const shape = isTree(section) ? String(section['shape']) : '';
  const [fault, setFault] = useState<string>();
  const [told, setTold] = useState<readonly string[]>([]);
  const [typed, setTyped] = useState<string>();
  const before = useRef<Readonly<Record<string, unknown>>>({});
  const chooser = useRef<HTMLInputElement>(null);
  const id = useId();
  const change = (next: string): void => {
    setTyped(undefined);
    before.current = { ...before.current, [shape]: section };
    if (before.current[next] !== undefined) return set(path, before.current[next]);
    set(path, next === 'contour' && drawn ? { shape: next, corners: cornersDrawn(drawn) } : next === 'contour' ? { shape: next, corners: [[0, 0]] } : usualSection(next, of === 'machine' ? undefined : at(data, 'height')));
  };
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    try {
      const read = await sendFile<Read>('/api/sections', file, { of });
      setFault(undefined);
      setTyped(undefined);
      const high = Number(read.size[1].toFixed(3));
      const was = at(data, 'height');
      const tool = of !== 'machine';
      setTold([
        `Taken from ${file.name}: ${read.size[0].toFixed(2)} mm wide, ${read.size[1].toFixed(2)} mm high.`, ...read.assumptions,
        ...(tool && was !== high ? [`The height is set to ${high} mm, as it is drawn${typeof was === 'number' || typeof was === 'string' ? ` (it said ${was})` : ''}.`] : []),
      ]);
      alter((now) => {
        const taken = withAt(now, path, { shape: 'contour', corners: read.corners });
        return tool ? withAt(taken, 'height', high) : taken;
      });
    } catch (refusal) {
      setFault(`${file.name}: ${sentence(refusal)}`);
    }
  };
  return (
    <fieldset className="section-field"><legend>{label}</legend>
      <div className="field"><label htmlFor={id}>Given by</label>
        <select id={id} value={shape} onChange={(event) => change(event.target.value)}>{[...shapes, 'contour'].map((s) => <option key={s} value={s}>{s === 'contour' ? 'corners' : s}</option>)}</select></div>
      {SHAPES[shape]?.map(([name, words]) => <NumberField key={`${shape} ${name}`} path={`${path}.${name}`} label={`${words}, mm`} />)}
      {shape === 'contour' && (
        <label className="field corners"><span>Corners, one a line: back up and, where an arc leaves it, its bulge; counter-clockwise, mm</span>
          <textarea rows={6} spellCheck={false} value={typed ?? words(isTree(section) ? section['corners'] : [])} onChange={(event) => { setTyped(event.target.value); set(path, { shape: 'contour', corners: cornersOf(event.target.value) }); }} />
        </label>
      )}
      <div className="buttons"><button type="button" onClick={() => chooser.current?.click()}>Take it from a DXF</button></div>
      <input ref={chooser} type="file" accept=".dxf" className="hidden" tabIndex={-1} aria-label={`${label} as a DXF file`} onChange={(event) => { void take(event.target.files?.[0]); event.target.value = ''; }} />
      <FieldFault path={path} label={label} deep={shape === 'contour'} />
      <Fault sentence={fault} />
      {told.map((t) => <p key={t} className="small soft">{t}</p>)}
    </fieldset>
  );
};
