import type { ShopRevision } from '../../store/index.js';
import { day } from '../wording.js';

/** Who changed what and when; each revision can be looked at again. */
export const Revisions = ({ revisions, shown, show, typed = false }: {
  readonly revisions: readonly ShopRevision[]; readonly shown: number; readonly show: (revision: number) => void;
  /** Something is typed and not kept: another revision would take its place. */
  readonly typed?: boolean;
}) => (
  <details className="revisions section"><summary>{revisions.length === 1 ? '1 revision' : `${revisions.length} revisions`}</summary>
    {typed && <p className="small">What was typed is not kept yet: keep it or forget it before another revision is shown.</p>}
    <ol>
      {[...revisions].reverse().map((r) => (
        <li key={r.revision} className="revision-line">
          <span><strong>{r.revision}</strong> {day(r.createdAt)}, {r.by}: {r.change}{r.demo && <> <span className="tag">demo</span></>}</span>
          {!r.takenOff && <button type="button" disabled={typed || r.revision === shown} onClick={() => show(r.revision)} aria-label={`Show revision ${r.revision}`}>{r.revision === shown ? 'shown' : 'Show'}</button>}
        </li>
      ))}
    </ol>
  </details>
);
