import { useId, useMemo, useRef, useState } from 'react';
import { type Tool, parseRack, segmentsFromWords, segmentsInWords, type Segment } from '../../shop/index.js';
import { to, useGo } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day } from '../wording.js';
import { ChoiceField, DataForm, FieldFault, NumberField, StepFields, TextField, YesNoField, useForm } from './fields.js';
import { Keep } from './Keep.js';
import { asKind } from './kinds.js';
import { SectionField } from './SectionField.js';
import { SectionView } from './SectionView.js';
import { at, isTree, type Tree } from './tree.js';
import { useDraft } from './useDraft.js';
import { useEntry } from './useEntry.js';

type List = 'punches' | 'dies' | 'risers';
const LISTS: readonly List[] = ['punches', 'dies', 'risers'];
const LETTERS = [...'ABCDEFGH'];

const segments = [{ length: 100, count: 2 }, { length: 200, count: 2 }, { length: 500, count: 3 }];
/** What a new tool starts from. */
const FRESH: Readonly<Record<string, readonly [List, Tree]>> = {
  'new-punch': ['punches', { kind: 'punch', id: 'new-punch', name: 'New punch', demo: false, tang: 'tang A', shape: 'straight', tipRadius: 1, includedAngle: 85, height: 125, profile: { shape: 'straight', bodyWidth: 12, bodyTop: 78, shoulderWidth: 30, shoulderFrom: 92 }, rating: 900, reversible: true, segments, weight: 18 }],
  'new-die': ['dies', { kind: 'die', id: 'new-die', name: 'New die', demo: false, tang: 'seat A', shape: 'V', v: 12, vConvention: 'sharp', includedAngle: 85, shoulderRadius: 1.2, height: 90, profile: { shape: 'block', topWidth: 26, baseWidth: 30, stepAt: 30, flat: 0.6 }, rating: 500, reversible: true, segments, weight: 18 }],
  'new-riser': ['risers', { id: 'new-riser', height: 20, seat: 'seat A', length: 3000, width: 60 }],
};

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

const listOf = (tool: Tree): List => (tool['kind'] === 'punch' ? 'punches' : tool['kind'] === 'die' ? 'dies' : 'risers');

/** The tool of an id in a rack's data. */
const toolIn = (rack: unknown, id: string): unknown => LISTS.flatMap((list) => (at(rack, list) ?? []) as readonly Tree[]).find((tool) => tool['id'] === id);

/** The tool as the rack's parser reads it, alone so that its own faults are told first; then its id beside the others. */
const readTool = (rack: Tree, list: List, tool: Tree, before: Tree | undefined): ReturnType<typeof parseRack> => {
  const read = parseRack({ ...rack, punches: [], dies: [], risers: [], [list]: [tool] });
  const others = LISTS.flatMap((l) => rack[l] as readonly Tree[]).filter((t) => t !== before);
  if (!read.ok || !others.some((t) => t['id'] === tool['id'])) return read;
  const id = String(tool['id']);
  return { ok: false, fault: { code: 'sense', entry: id, field: 'id', sentence: `${id}: id ('${id}') names another tool of this rack; each needs its own.` } };
};

/** One punch, die or riser of a rack: typed, checked and drawn, kept as the rack's next revision. */
export const ToolPage = ({ rackId, id }: { readonly rackId: string; readonly id: string }) => {
  const go = useGo();
  const rackPath = `/api/racks/${encodeURIComponent(rackId)}`;
  const entry = useEntry(rackPath);
  const [draft, setDraft] = useDraft(`tool ${rackId} ${id}`);
  const after = draft?.after ?? entry.latest;
  const forget = draft && ((): void => { setDraft(undefined); entry.again(); });
  const rack = entry.value?.data as Readonly<Record<List, readonly Tree[]>> & Tree | undefined;
  const fresh = FRESH[id];
  const list = fresh?.[0] ?? LISTS.find((l) => rack?.[l].some((t) => t['id'] === id)) ?? (draft && isTree(draft.data) ? listOf(draft.data) : undefined);
  const before = fresh?.[1] ?? (rack && list ? rack[list].find((t) => t['id'] === id) : undefined);
  const tool = draft && isTree(draft.data) ? draft.data : before;
  const read = useMemo(() => (rack && list && tool ? readTool(rack, list, tool, before) : undefined), [rack, list, tool, before]);
  const good: Tool | undefined = read?.ok ? [...read.value.punches, ...read.value.dies][0] : undefined;
  const [last, setLast] = useState<Tool>();
  if (good && good !== last) setLast(good);
  // one that somebody else took out while it was typed on comes back with what was typed
  const next = rack && list && tool ? { ...rack, [list]: rack[list].some((t) => t === before) ? rack[list].map((t) => (t === before ? tool : t)) : [...rack[list], tool] } : undefined;
  const without = rack && list && !fresh && before ? { ...rack, [list]: rack[list].filter((t) => t !== before) } : undefined;
  const name = String(at(tool, 'name') as string | undefined ?? at(tool, 'id') as string | undefined ?? 'Tool');
  const holder = list === 'punches' ? 'tang' : 'seat';
  return (
    <Sheet
      title={name} trail={[['Racks', to.racks], [entry.value?.name ?? 'Rack', to.rack(rackId)]]} notes={<Cautions />}
      block={[['Tool', name], ['Rack', entry.value?.name ?? '–'], ['Rack revision', entry.value ? String(entry.value.revision) : '–'], ['Held by', String(at(tool, list === 'risers' ? 'seat' : 'tang') as string | undefined ?? '–')], ['Who', entry.value?.by ?? '–'], ['When', entry.value ? day(entry.value.createdAt) : '–']]}
    >
      <div className="body">
        <Fault sentence={entry.fault} again={entry.again} />
        {!rack && !entry.fault && <Waiting what="Fetching the rack" />}
        {rack && !tool && <p>There is no tool '{id}' in this rack.</p>}
        {/* what is typed follows a revision of the rack, so nothing is typed before that is here */}
        {(rack || draft) && tool && list && (
          <DataForm data={tool} change={(data) => setDraft({ after, data })} fault={read?.ok === false ? read.fault : undefined}>
            <Keep path="/api/racks" data={next} after={after} good={read?.ok === true} changed={fresh !== undefined || (draft !== undefined && JSON.stringify(draft.data) !== JSON.stringify(before))} forget={forget} merge={{ path: rackPath, mine: tool, of: (data) => toolIn(data, id), take: (next) => { setDraft(next); entry.again(); } }} kept={() => { setDraft(undefined); entry.again(); go(to.rack(rackId)); }} />
            <div className="columns shop-columns">
              <div className="shop-form">
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
                    <YesNoField path="reversible" label="May stand the other way round" /><NumberField path="price" label={`Price of the set, ${String(rack?.['currency'] ?? '')} (may stay out)`} mayStayOut />
                    <StepFields />
                    <SegmentsField />
                  </>}
                </section>
                {list !== 'risers' && <SectionField path="profile" label={list === 'punches' ? 'Cross-section, from the tip' : 'Cross-section, from the middle of the top'} shapes={list === 'punches' ? ['straight', 'gooseneck', 'flattening', 'offset'] : ['block', 'anvil', 'step']} of={list === 'punches' ? 'punch' : 'die'} drawn={last?.profile} />}
                {without && <div className="section"><h2>Take it out of the rack</h2><Keep path="/api/racks" data={without} after={entry.latest} good changed overtaken={entry.again} kept={() => { setDraft(undefined); go(to.rack(rackId)); }} /></div>}
              </div>
              {list !== 'risers' && (
                <div className={good ? 'shop-picture' : 'shop-picture stale'}>
                  {last && <SectionView pieces={[{ contour: last.profile, name: last.name, at: [0, 0], look: 'tool' }]} title={`Cross-section of ${last.name}`} />}
                  <p className="small soft">Seen from the operator's right, the gauge to the right, mm. {good ? '' : 'The picture shows what was last right.'}</p>
                </div>
              )}
            </div>
          </DataForm>
        )}
      </div>
    </Sheet>
  );
};
