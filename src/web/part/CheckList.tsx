import type { PartSummary } from '../../server/index.js';
import type { Part } from '../../sheet/index.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { asSentence, degrees, mm } from '../wording.js';

interface Line {
  readonly words: string;
  readonly lights: Lit;
}

interface CheckListProps {
  readonly part: Part;
  readonly summary: PartSummary;
  readonly lit: Lit;
  readonly light: (lit: Lit) => void;
}

/** What was read and what was assumed, numbered through; a line lights up its faces in the view. */
export const CheckList = ({ part, summary, lit, light }: CheckListProps) => {
  const assumed: Line[] = part.assumptions.map(({ sentence, plates, bends }) => ({ words: asSentence(sentence), lights: { plates, bends } }));
  const near: Line[] = summary.nearFeatures.map((feature) => ({
    words: `A hole or cut-out on plate ${feature.plate + 1} lies ${mm(feature.distance)} from the tangent line of ${feature.bend}, nearer than ${mm(feature.limit)}: the bend may pull it out of shape.`,
    lights: { plates: [feature.plate], bends: [feature.bend] },
  }));
  const bends: Line[] = summary.bends.map(({ id, kind, direction, bendAngle, insideRadius, length }) => ({
    words: `${id}: ${kind === 'bend' ? '' : `${kind}, `}bend angle ${degrees(bendAngle)} (included ${degrees(180 - bendAngle)}) towards ${direction}, inside radius ${mm(insideRadius)}, ${mm(length, 1)} long`,
    lights: { plates: [], bends: [id] },
  }));
  const plates: Line[] = part.plates.map(({ holes }, index) => ({
    words: `Plate ${index + 1}${holes.length === 0 ? '' : holes.length === 1 ? ', 1 hole or cut-out' : `, ${holes.length} holes and cut-outs`}`,
    lights: { plates: [index], bends: [] },
  }));
  const groups: readonly (readonly [string, readonly Line[]])[] = [['Assumed', assumed], ['Watch', near], ['Bends as read', bends], ['Plates as read', plates]];
  let number = 0;
  return (
    <section className="section check" aria-labelledby="check-title">
      <h2 id="check-title">Read and assumed</h2>
      <p className="small soft no-print">Touch a line and its faces light up in the view.</p>
      {groups.filter(([, lines]) => lines.length > 0).map(([title, lines]) => {
        const start = number + 1;
        number += lines.length;
        return (
          <div key={title}>
            <h3>{title}</h3>
            <ol start={start}>
              {lines.map(({ words, lights }, i) => {
                const can = lights.plates.length + lights.bends.length > 0;
                const on = can && JSON.stringify(lights) === JSON.stringify(lit);
                return (
                  <li key={start + i}>
                    {can
                      ? <button type="button" aria-pressed={on} onClick={() => light(on ? NOTHING_LIT : lights)}><span className="balloon">{start + i}</span><span>{words}</span></button>
                      : <p><span className="balloon">{start + i}</span><span>{words}</span></p>}
                  </li>
                );
              })}
            </ol>
          </div>
        );
      })}
    </section>
  );
};
