import { useId, useRef, useState } from 'react';
import { sendFile, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import { FieldFault, NumberField, useForm } from './fields.js';
import { SHAPES } from './shapes.js';
import { at, isTree, withAt } from './tree.js';

interface Read {
  readonly corners: readonly (readonly number[])[];
  readonly size: readonly [number, number];
  readonly assumptions: readonly string[];
}

const words = (corners: unknown): string => (Array.isArray(corners) ? corners.map((c: unknown) => (Array.isArray(c) ? c.join(' ') : String(c))).join('\n') : '');

const cornersOf = (text: string): unknown[] =>
  text.split('\n').map((l) => l.trim()).filter((l) => l !== '').map((l) => l.split(/[\s;]+/).map((n) => {
    const value = Number(n.replace(',', '.'));
    return Number.isNaN(value) ? n : value;
  }));

/** A cross-section: by one of the shapes and its parameters, corner by corner, or taken from a DXF drawing. `of` says where its origin lies. */
export const SectionField = ({ path, label, shapes, of }: { readonly path: string; readonly label: string; readonly shapes: readonly string[]; readonly of: 'punch' | 'die' | 'machine' }) => {
  const { data, set } = useForm();
  const section = at(data, path);
  const shape = isTree(section) ? String(section['shape']) : '';
  const [fault, setFault] = useState<string>();
  const [told, setTold] = useState<readonly string[]>([]);
  const [typed, setTyped] = useState<string>();
  const chooser = useRef<HTMLInputElement>(null);
  const id = useId();
  const change = (next: string): void => {
    setTyped(undefined);
    if (next === 'contour') return set(path, { shape: next, corners: [[0, 0], [20, 40], [20, 100], [-20, 100], [-20, 40]] });
    set(path, SHAPES[next]!.reduce<unknown>((made, [name, , usual]) => withAt(made, name, usual), next === 'rectangle' ? { shape: next, back: [0, 0], up: [0, 0] } : { shape: next }));
  };
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    try {
      const read = await sendFile<Read>('/api/sections', file, { of });
      setFault(undefined);
      setTyped(undefined);
      setTold([`Taken from ${file.name}: ${read.size[0].toFixed(2)} mm wide, ${read.size[1].toFixed(2)} mm high.`, ...read.assumptions]);
      set(path, { shape: 'contour', corners: read.corners });
    } catch (refusal) {
      setFault(sentence(refusal));
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
      <FieldFault path={path} deep={shape === 'contour'} />
      <Fault sentence={fault} />
      {told.map((t) => <p key={t} className="small soft">{t}</p>)}
    </fieldset>
  );
};
