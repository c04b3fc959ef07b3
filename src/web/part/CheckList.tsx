import type { ReactNode } from 'react';
import type { Metal } from '../../metal/index.js';
import type { PartSummary } from '../../server/index.js';
import { type Part, UNIT_WORDS } from '../../sheet/index.js';
import type { PartRevision } from '../../store/index.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { Fault } from '../sheet/Fault.js';
import { useAnswer } from '../useAnswer.js';
import { asSentence, day, degrees, mm } from '../wording.js';
import { AssumptionChange, BendChange, type Revise, UnitChange } from './AssumptionChange.js';
import { ChoiceChange, NumberChange, TextChange } from './change.js';
import { formedLines } from './formedLines.js';
import { choiceOf, ruleChoices, ruleOfChoice } from './ruleChoice.js';

interface Line {
  readonly words: string;
  readonly lights: Lit;
  /** Controls that set it otherwise. */
  readonly change?: ReactNode;
}

interface CheckListProps {
  readonly part: Part;
  readonly summary: PartSummary;
  readonly revisions: readonly PartRevision[];
  readonly lit: Lit;
  readonly light: (lit: Lit) => void;
  readonly revise: Revise;
  readonly busy: boolean;
  readonly fault: string | undefined;
  readonly layers: () => void;
}

const KEEP = [['', 'none named'], ['A', 'the A side'], ['B', 'the B side']] as const;

/** What was read and what was assumed, numbered through; a line lights up its faces in the view, and what was assumed can be set otherwise. */
export const CheckList = ({ part, summary, revisions, lit, light, revise, busy, fault, layers }: CheckListProps) => {
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals').value?.metals ?? [];
  const dxf = part.reading?.from === 'dxf';
  const assumed: Line[] = part.assumptions.map((assumption) => ({
    words: asSentence(assumption.sentence),
    lights: { plates: assumption.plates, bends: assumption.bends },
    change: <AssumptionChange part={part} assumption={assumption} revise={revise} layers={layers} />,
  }));
  const nowhere: Lit = NOTHING_LIT;
  const metal = metals.find(({ id }) => id === part.metal);
  const unitSaid = part.reading?.from !== 'step' || part.assumptions.some(({ code }) => code === 'unit');
  const chosen: Line[] = [
    ...(unitSaid ? [] : [{ words: `Unit: ${UNIT_WORDS[part.unit]}, as the file declares`, lights: nowhere, change: <UnitChange part={part} revise={revise} /> }]),
    {
      words: `Metal: ${metal?.name ?? part.metal ?? 'not chosen yet'}`, lights: nowhere,
      change: <ChoiceChange key={`${part.metal}/${metals.length}`} label="metal" value={part.metal ?? ''} choices={[['', 'not chosen yet'], ...metals.map(({ id, name, temper }) => [id, temper ? `${name}, ${temper}` : name] as const)]} send={(id) => id !== '' && revise({ metal: id })} />,
    },
    ...(dxf ? [] : [{
      words: `Nominal blank by rule ${summary.nominalBlank.rule}`, lights: nowhere,
      change: <ChoiceChange key={choiceOf(part.rule)} label="rule of the blank" value={choiceOf(part.rule)} choices={ruleChoices(part.rule)} send={(rule) => revise({ rule: ruleOfChoice(rule) })} />,
    }]),
    {
      words: `Face that must not be marked: ${part.marks?.keep ? `the ${part.marks.keep} side` : 'none named'}`, lights: nowhere,
      change: <ChoiceChange key={part.marks?.keep ?? ''} label="face not to be marked" value={part.marks?.keep ?? ''} choices={KEEP} send={(keep) => revise({ marks: { keep: keep === '' ? null : keep } })} />,
    },
    {
      words: `Side that the cutting burr is on: ${part.marks?.burr ? `the ${part.marks.burr} side` : 'none named'}`, lights: nowhere,
      change: <ChoiceChange key={part.marks?.burr ?? ''} label="burr side" value={part.marks?.burr ?? ''} choices={KEEP} send={(burr) => revise({ marks: { burr: burr === '' ? null : burr } })} />,
    },
    {
      words: `Rolling direction: ${part.marks?.rolling === undefined ? 'not named' : `${part.marks.rolling}° from the x axis of plate 1`}`, lights: nowhere,
      change: <NumberChange key={part.marks?.rolling ?? ''} label="rolling direction, degrees" value={part.marks?.rolling} least={-180} most={180} step={5} send={(rolling) => revise({ marks: { rolling } })} />,
    },
    { words: `Name: ${part.name}`, lights: nowhere, change: <TextChange key={part.name} label="name" value={part.name} send={(name) => revise({ name })} /> },
  ];
  const near: Line[] = summary.nearFeatures.map((feature) => ({
    words: `A hole or cut-out on plate ${feature.plate + 1} lies ${mm(feature.distance)} from the tangent line of ${feature.bend}, nearer than ${mm(feature.limit)}: the bend may pull it out of shape.`,
    lights: { plates: [feature.plate], bends: [feature.bend] },
  }));
  const bends: Line[] = summary.bends.map(({ id, kind, direction, bendAngle, insideRadius, length }) => ({
    words: `${id}: ${kind === 'bend' ? '' : `${kind}, `}bend angle ${degrees(bendAngle)} (included ${degrees(180 - bendAngle)}) towards ${direction}, inside radius ${mm(insideRadius)}, ${mm(length, 1)} long`,
    lights: { plates: [], bends: [id] },
    change: (['angle', 'side', 'radius'] as const).filter((what) => dxf || what === 'radius').map((what) => <BendChange key={what} part={part} ids={[id]} what={what} revise={revise} />),
  }));
  const plates: Line[] = part.plates.map(({ holes }, index) => ({
    words: `Plate ${index + 1}${holes.length === 0 ? '' : holes.length === 1 ? ', 1 hole or cut-out' : `, ${holes.length} holes and cut-outs`}`,
    lights: { plates: [index], bends: [] },
  }));
  const groups: readonly (readonly [string, readonly Line[], boolean])[] = [
    ['Assumed', assumed, true], ['Formed, as read', formedLines(part, revise), true], ['Chosen', chosen, true], ['Watch', near, true], ['Bends as read', bends, false], ['Plates as read', plates, true],
  ];
  let number = 0;
  return (
    <section className="section check" aria-labelledby="check-title" aria-busy={busy}>
      <h2 id="check-title">Read and assumed</h2>
      <p className="small soft no-print">Touch a line and its faces light up in the view. What is set otherwise becomes a new revision; the former ones stay.</p>
      <Fault sentence={fault} />
      {groups.filter(([, lines]) => lines.length > 0).map(([title, lines, open]) => {
        const start = number + 1;
        number += lines.length;
        return (
          <div key={title}>
            <h3>{title}</h3>
            <ol start={start}>
              {lines.map(({ words, lights, change }, i) => {
                const can = lights.plates.length + lights.bends.length > 0;
                const on = can && JSON.stringify(lights) === JSON.stringify(lit);
                return (
                  <li key={start + i}>
                    {can
                      ? <button type="button" className="line" aria-pressed={on} onClick={() => light(on ? NOTHING_LIT : lights)}><span className="balloon">{start + i}</span><span>{words}</span></button>
                      : <p className="line"><span className="balloon">{start + i}</span><span>{words}</span></p>}
                    {change !== undefined && (open ? <div className="changes no-print">{change}</div> : on && <div className="changes no-print">{change}</div>)}
                  </li>
                );
              })}
            </ol>
          </div>
        );
      })}
      {revisions.length > 0 && (
        <details className="revisions">
          <summary>{revisions.length === 1 ? '1 revision' : `${revisions.length} revisions`}</summary>
          <ol>{[...revisions].reverse().map(({ revision, change, by, createdAt }) => <li key={revision} value={revision}><strong>{revision}</strong> {asSentence(change)} <span className="soft">{by}, {day(createdAt)} {createdAt.slice(11, 16)}</span></li>)}</ol>
        </details>
      )}
    </section>
  );
};
