import { useId, useRef, useState } from 'react';
import { type Segment, type Tool, segmentsFromWords, segmentsInWords } from '../../shop/index.js';
import { ChoiceField, FieldFault, NumberField, StepFields, TextField, YesNoField, useForm } from './fields.js';
import { asKind } from './kinds.js';
import { SectionField } from './SectionField.js';
import { type Tree, at, isTree } from './tree.js';
import type { ToolList } from './useToolOfRack.js';

const LETTERS = [...'ABCDEFGH'];

const SegmentsField = () => {
  const id = useId();
  const { data, set } = useForm();
  const held = at(data, 'segments');
  const [typed, setTyped] = useState<string>();
  const text = typed ?? (typeof held === 'string' ? held : undefined);
  const read = text === undefined ? undefined : segmentsFromWords(text);
  return (
    <div className="field wide"><label htmlFor={id}>Segments at hand: length x count, mm; ears as left 100 reach 30 foot 25</label>
      <input id={id} type="text" autoComplete="off" spellCheck={false} value={typed ?? (Array.isArray(held) ? segmentsInWords(held as readonly Segment[]) : typeof held === 'string' ? held : '')} onChange={(event) => {
        setTyped(event.target.value);
        const next = segmentsFromWords(event.target.value);
        // what cannot be read stands in the data as it is written, so that it is not kept for what stood there before
        set('segments', next.ok ? next.value : event.target.value);
      }} />
      {read?.ok === false && <p className="field-fault" role="status"><span aria-hidden="true">⚠</span> {read.fault}.</p>}
      {read?.ok !== false && <FieldFault path="segments" label="Segments at hand" deep />}
    </div>
  );
};

/** The kind of a tool, with what it settles; a kind gone back to has its figures again. */
const KindField = ({ choices }: { readonly choices: readonly string[] }) => {
  const { data, alter } = useForm();
  const before = useRef<Readonly<Record<string, Tree>>>({});
  const id = useId();
  if (!isTree(data)) return null;
  const now = String(data['shape']);
  return (
    <div className="field"><label htmlFor={id}>Kind</label>
      <select id={id} value={now} onChange={(event) => {
        before.current = { ...before.current, [now]: data };
        const kind = event.target.value;
        alter((tool) => asKind(tool as Tree, kind, before.current[kind]));
      }}>{choices.map((c) => <option key={c}>{c}</option>)}</select>
      <FieldFault path="shape" label="Kind" />
    </div>
  );
};

interface ToolFormProps {
  readonly list: ToolList;
  /** Of the rack's prices. */
  readonly currency: string;
  /** The tool as it was last right. */
  readonly drawn: Tool | undefined;
}

/** The fields of a punch, a die or a riser; inside a DataForm. */
export const ToolForm = ({ list, currency, drawn }: ToolFormProps) => {
  const holder = list === 'punches' ? 'tang' : 'seat';
  return (
    <>
      <section className="grid-fields" aria-label="What it is">
        <TextField path="id" label="Short id" />
        {list === 'risers' ? <>
          <NumberField path="height" label="Height, mm" /><ChoiceField path="seat" label="Seat" choices={LETTERS.map((l) => `seat ${l}`)} /><NumberField path="length" label="Length at hand, mm" /><NumberField path="width" label="Width, mm" />
        </> : <>
          <TextField path="name" label="Name" /><ChoiceField path="tang" label="Held by" choices={LETTERS.map((l) => `${holder} ${l}`)} /><YesNoField path="demo" label="Invented, for demonstration" />
          <KindField choices={list === 'punches' ? ['straight', 'gooseneck', 'acute', 'flattening', 'offset'] : ['V', 'anvil', 'offset']} />
          <NumberField path="includedAngle" label={list === 'punches' ? 'Nose, degrees included' : 'V, degrees included'} />
          {list === 'punches' ? <NumberField path="tipRadius" label="Tip radius, mm" /> : <>
            <NumberField path="v" label="V opening, mm" /><ChoiceField path="vConvention" label="V measured between" choices={['sharp', 'tangent']} /><NumberField path="shoulderRadius" label="Shoulder radius, mm" />
          </>}
          <NumberField path="height" label={list === 'punches' ? 'Height, tip to shoulder, mm' : 'Height, top to seat, mm'} /><NumberField path="rating" label="Rating, N/mm" /><NumberField path="weight" label="Weight, kg/m" />
          <YesNoField path="reversible" label="May stand the other way round" /><NumberField path="price" label={`Price of the set, ${currency} (may stay out)`} mayStayOut />
          <StepFields />
          <SegmentsField />
        </>}
      </section>
      {list !== 'risers' && <SectionField path="profile" label={list === 'punches' ? 'Cross-section, from the tip' : 'Cross-section, from the middle of the top'} shapes={list === 'punches' ? ['straight', 'gooseneck', 'flattening', 'offset'] : ['block', 'anvil', 'step']} of={list === 'punches' ? 'punch' : 'die'} drawn={drawn?.profile} />}
    </>
  );
};
