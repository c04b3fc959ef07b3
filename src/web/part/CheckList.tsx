import type { Metal } from '../../metal/index.js';
import type { PartRevision } from '../../store/index.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { Fault } from '../sheet/Fault.js';
import { useAnswer } from '../useAnswer.js';
import { asSentence, day } from '../wording.js';
import { type CheckedPart, checkGroups } from './checkGroups.js';

interface CheckListProps extends Omit<CheckedPart, 'metals'> {
  readonly revisions: readonly PartRevision[];
  readonly lit: Lit;
  readonly light: (lit: Lit) => void;
  readonly busy: boolean;
  readonly fault: string | undefined;
}

/** What was read and what was assumed, numbered through; a line lights up its faces in the view, and what was assumed can be set otherwise. */
export const CheckList = ({ part, summary, revisions, lit, light, revise, busy, fault, layers }: CheckListProps) => {
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals').value?.metals ?? [];
  const groups = checkGroups({ part, summary, metals, revise, layers });
  return (
    <section className="section check" aria-labelledby="check-title" aria-busy={busy}>
      <h2 id="check-title">Read and assumed</h2>
      <p className="small soft no-print">Touch a line and its faces light up in the view. What is set otherwise becomes a new revision; the former ones stay.</p>
      <Fault sentence={fault} />
      {groups.map(({ title, lines, open }, g) => {
        const start = 1 + groups.slice(0, g).reduce((sum, before) => sum + before.lines.length, 0);
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
