import type { ReactNode } from 'react';
import type { Metal } from '../../metal/index.js';
import type { PartSummary } from '../../server/index.js';
import { type Part, UNIT_WORDS } from '../../sheet/index.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { asSentence, degrees, mm } from '../wording.js';
import { AssumptionChange, BendChange, type Revise, UnitChange } from './AssumptionChange.js';
import { ChoiceChange, NumberChange, TextChange } from './change.js';
import { formedLines } from './formedLines.js';
import { choiceOf, ruleChoices, ruleOfChoice } from './ruleChoice.js';

export interface Line {
  readonly words: string;
  readonly lights: Lit;
  /** Controls that set it otherwise. */
  readonly change?: ReactNode;
}

export interface Group {
  readonly title: string;
  readonly lines: readonly Line[];
  /** The controls stand there always, not only while the line is lit. */
  readonly open: boolean;
}

export interface CheckedPart {
  readonly part: Part;
  readonly summary: PartSummary;
  readonly metals: readonly Metal[];
  readonly revise: Revise;
  /** Opens the drawing's layers. */
  readonly layers: () => void;
}

const KEEP = [['', 'none named'], ['A', 'the A side'], ['B', 'the B side']] as const;

const assumedLines = ({ part, revise, layers }: CheckedPart): readonly Line[] => part.assumptions.map((assumption) => ({
  words: asSentence(assumption.sentence),
  lights: { plates: assumption.plates, bends: assumption.bends },
  change: <AssumptionChange part={part} assumption={assumption} revise={revise} layers={layers} />,
}));

const chosenLines = ({ part, summary, metals, revise }: CheckedPart): readonly Line[] => {
  const metal = metals.find(({ id }) => id === part.metal);
  const unitSaid = part.reading?.from !== 'step' || part.assumptions.some(({ code }) => code === 'unit');
  return [
    ...(unitSaid ? [] : [{ words: `Unit: ${UNIT_WORDS[part.unit]}, as the file declares`, lights: NOTHING_LIT, change: <UnitChange part={part} revise={revise} /> }]),
    {
      words: `Metal: ${metal?.name ?? part.metal ?? 'not chosen yet'}`, lights: NOTHING_LIT,
      change: <ChoiceChange key={`${part.metal}/${metals.length}`} label="metal" value={part.metal ?? ''} choices={[['', 'not chosen yet'], ...metals.map(({ id, name, temper }) => [id, temper ? `${name}, ${temper}` : name] as const)]} send={(id) => id !== '' && revise({ metal: id })} />,
    },
    ...(part.reading?.from === 'dxf' ? [] : [{
      words: `Nominal blank by rule ${summary.nominalBlank.rule}`, lights: NOTHING_LIT,
      change: <ChoiceChange key={choiceOf(part.rule)} label="rule of the blank" value={choiceOf(part.rule)} choices={ruleChoices(part.rule)} send={(rule) => revise({ rule: ruleOfChoice(rule) })} />,
    }]),
    {
      words: `Face that must not be marked: ${part.marks?.keep ? `the ${part.marks.keep} side` : 'none named'}`, lights: NOTHING_LIT,
      change: <ChoiceChange key={part.marks?.keep ?? ''} label="face not to be marked" value={part.marks?.keep ?? ''} choices={KEEP} send={(keep) => revise({ marks: { keep: keep === '' ? null : keep } })} />,
    },
    {
      words: `Side that the cutting burr is on: ${part.marks?.burr ? `the ${part.marks.burr} side` : 'none named'}`, lights: NOTHING_LIT,
      change: <ChoiceChange key={part.marks?.burr ?? ''} label="burr side" value={part.marks?.burr ?? ''} choices={KEEP} send={(burr) => revise({ marks: { burr: burr === '' ? null : burr } })} />,
    },
    {
      words: `Rolling direction: ${part.marks?.rolling === undefined ? 'not named' : `${part.marks.rolling}° from the x axis of plate 1`}`, lights: NOTHING_LIT,
      change: <NumberChange key={part.marks?.rolling ?? ''} what="rolling direction" unit="degrees" value={part.marks?.rolling} least={-180} most={180} send={(rolling) => revise({ marks: { rolling } })} />,
    },
    { words: `Name: ${part.name}`, lights: NOTHING_LIT, change: <TextChange key={part.name} label="name" value={part.name} send={(name) => revise({ name })} /> },
  ];
};

const nearLines = ({ summary }: CheckedPart): readonly Line[] => summary.nearFeatures.map((feature) => ({
  words: `A hole or cut-out on plate ${feature.plate + 1} lies ${mm(feature.distance)} from the tangent line of ${feature.bend}, nearer than ${mm(feature.limit)}: the bend may pull it out of shape.`,
  lights: { plates: [feature.plate], bends: [feature.bend] },
}));

const bendLines = ({ part, summary, revise }: CheckedPart): readonly Line[] => summary.bends.map(({ id, kind, direction, bendAngle, insideRadius, length }) => ({
  words: `${id}: ${kind === 'bend' ? '' : `${kind}, `}bend angle ${degrees(bendAngle)} (included ${degrees(180 - bendAngle)}) towards ${direction}, inside radius ${mm(insideRadius)}, ${mm(length, 1)} long`,
  lights: { plates: [], bends: [id] },
  change: (['angle', 'side', 'radius'] as const).filter((what) => part.reading?.from === 'dxf' || what === 'radius').map((what) => <BendChange key={what} part={part} ids={[id]} what={what} revise={revise} />),
}));

const plateLines = ({ part }: CheckedPart): readonly Line[] => part.plates.map(({ holes }, index) => ({
  words: `Plate ${index + 1}${holes.length === 0 ? '' : holes.length === 1 ? ', 1 hole or cut-out' : `, ${holes.length} holes and cut-outs`}`,
  lights: { plates: [index], bends: [] },
}));

/** What was read of a part, what was assumed and what is chosen: in groups, each line with the faces that it lights and the controls that set it otherwise. */
export const checkGroups = (checked: CheckedPart): readonly Group[] => [
  { title: 'Assumed', lines: assumedLines(checked), open: true },
  { title: 'Formed, as read', lines: formedLines(checked.part, checked.revise), open: true },
  { title: 'Chosen', lines: chosenLines(checked), open: true },
  { title: 'Watch', lines: nearLines(checked), open: true },
  { title: 'Bends as read', lines: bendLines(checked), open: false },
  { title: 'Plates as read', lines: plateLines(checked), open: true },
].filter(({ lines }) => lines.length > 0);
