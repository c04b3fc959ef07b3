import { type Assumption, type BendTold, type DxfReading, type Part, UNIT_WORDS } from '../../sheet/index.js';
import { ChoiceChange, NumberChange, TextChange } from './change.js';
import { ruleChoices, ruleOfChoice, choiceOf } from './ruleChoice.js';

/** The body of a new revision (docs/api.md). */
export type Revise = (change: Readonly<Record<string, unknown>>, done?: () => void) => void;

const UNITS = Object.entries(UNIT_WORDS) as [Part['unit'], string][];
const SIDES = [['A', 'up (towards A)'], ['B', 'down (towards B)']] as const;

/** What is told of bends, put beside what was told before. */
const tellBends = (told: DxfReading, ids: readonly string[], more: BendTold): DxfReading => ({
  ...told,
  bends: { ...told.bends, ...Object.fromEntries(ids.map((id) => [id, { ...told.bends?.[id], ...more }])) },
});

interface BendChangeProps {
  readonly part: Part;
  readonly ids: readonly string[];
  readonly what: 'angle' | 'side' | 'radius';
  readonly revise: Revise;
}

/** One measure of one bend or several, changed. Of a flat drawing all of them, else the radius, outside lengths kept. */
export const BendChange = ({ part, ids, what, revise }: BendChangeProps) => {
  const bend = part.bends.find(({ id }) => id === ids[0]);
  if (!bend) return null;
  const told = part.reading?.from === 'dxf' ? part.reading : undefined;
  const tell = (more: BendTold): void => told && revise({ told: tellBends(told, ids, more) });
  const names = ids.length > 3 ? `${ids.length} bends` : ids.join(', ');
  if (what === 'radius') {
    return <NumberChange key={bend.insideRadius} what={`inside radius of ${names}`} unit="mm" value={bend.insideRadius} most={5000} send={(insideRadius) => (told ? tell({ insideRadius }) : revise({ radii: Object.fromEntries(ids.map((id) => [id, insideRadius])) }))} />;
  }
  if (!told) return null;
  if (what === 'angle') return <NumberChange key={bend.bendAngle} what={`bend angle of ${names}`} unit="degrees" value={bend.bendAngle} least={0.1} most={180} send={(bendAngle) => tell({ bendAngle })} />;
  return <ChoiceChange key={bend.direction} label={`direction of ${names}`} value={bend.direction} choices={SIDES} send={(direction) => tell({ direction })} />;
};

const KINDS = [['bend', 'bent in one stroke'], ['rolled', 'rolled, or bent in many hits']] as const;

/** Whether a bend of large radius is one stroke or rolled. */
const KindChange = ({ part, id, revise }: { readonly part: Part; readonly id: string; readonly revise: Revise }) => {
  const kind = part.bends.find((bend) => bend.id === id)?.kind;
  return kind === undefined || kind === 'hem' ? null : <ChoiceChange key={kind} label={`how ${id} is made`} value={kind} choices={KINDS} send={(to) => revise({ kinds: { [id]: to } })} />;
};

const AS_DECLARED = [['', 'as the file declares'], ...UNITS] as const;

/** The unit that a solid's file is read in; nothing where the part came from no such file. */
export const UnitChange = ({ part: { reading }, revise }: { readonly part: Part; readonly revise: Revise }) => {
  if (reading?.from !== 'step') return null;
  const unit = reading.unit ?? '';
  return <ChoiceChange key={unit} label="unit to read the file in" value={unit} choices={AS_DECLARED} send={(to) => revise({ unit: to === '' ? null : to })} />;
};

interface AssumptionChangeProps {
  readonly part: Part;
  readonly assumption: Assumption;
  readonly revise: Revise;
  /** Opens the drawing's layers. */
  readonly layers: () => void;
}

/** What can be set otherwise of an assumption; nothing where it is the file's own word. */
export const AssumptionChange = ({ part, assumption: { code, bends }, revise, layers }: AssumptionChangeProps) => {
  const told = part.reading?.from === 'dxf' ? part.reading : undefined;
  const ids = bends.filter((id) => part.bends.some((bend) => bend.id === id));
  if ((code === 'sharp bend' || (code === 'bend radius' && !told)) && ids.length > 0) return <BendChange part={part} ids={ids} what="radius" revise={revise} />;
  if (code === 'rolled' && ids[0] !== undefined) return <KindChange part={part} id={ids[0]} revise={revise} />;
  if (code === 'profile' && part.reading?.from === 'profile') return <TextChange key={part.reading.line} label="profile" value={part.reading.line} send={(line) => revise({ line })} />;
  if (code === 'unit' && !told) return <UnitChange part={part} revise={revise} />;
  if (code === 'thickness varies') return <NumberChange key={part.thickness} what="thickness" unit="mm" value={part.thickness} least={0.05} most={50} send={(thickness) => revise({ thickness })} />;
  if (!told) return null;
  switch (code) {
    case 'unit':
      return <ChoiceChange key={part.unit} label="unit of the drawing" value={part.unit} choices={UNITS} send={(unit) => revise({ told: { ...told, unit } })} />;
    case 'layers':
      return <button type="button" onClick={layers}>Choose the layers</button>;
    case 'thickness':
      return <NumberChange key={part.thickness} what="thickness" unit="mm" value={part.thickness} least={0.05} most={50} send={(thickness) => revise({ told: { ...told, thickness } })} />;
    case 'healed gap':
      return <NumberChange what="greatest gap joined" label="gaps joined up to, mm" unit="mm" value={told.gap ?? 0.05} least={0.001} most={5} send={(gap) => revise({ told: { ...told, gap } })} />;
    case 'rule':
      return <ChoiceChange key={JSON.stringify(part.rule)} label="rule of the flat" value={choiceOf(part.rule)} choices={ruleChoices(part.rule)} send={(rule) => revise({ told: { ...told, rule: ruleOfChoice(rule) } })} />;
    case 'bend angle':
      return ids.length === 0 ? null : <BendChange part={part} ids={ids} what="angle" revise={revise} />;
    case 'bend direction':
      return ids.length === 0 ? null : <BendChange part={part} ids={ids} what="side" revise={revise} />;
    case 'bend radius':
      return ids.length === 0 ? null : <BendChange part={part} ids={ids} what="radius" revise={revise} />;
    default:
      return null;
  }
};
