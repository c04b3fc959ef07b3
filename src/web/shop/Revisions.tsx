import type { ShopRevision } from '../../store/index.js';
import { day } from '../wording.js';

/** Who changed what and when; each revision can be looked at again. */
export const Revisions = ({ revisions, shown, show }: { readonly revisions: readonly ShopRevision[]; readonly shown: number; readonly show: (revision: number) => void }) => (
  <details className="revisions section"><summary>{revisions.length === 1 ? '1 revision' : `${revisions.length} revisions`}</summary>
    <ol>
      {[...revisions].reverse().map((r) => (
        <li key={r.revision} className="revision-line">
          <span><strong>{r.revision}</strong> {day(r.createdAt)}, {r.by}: {r.change}{r.demo && <> <span className="tag">demo</span></>}</span>
          {!r.takenOff && <button type="button" disabled={r.revision === shown} onClick={() => show(r.revision)} aria-label={`Show revision ${r.revision}`}>{r.revision === shown ? 'shown' : 'Show'}</button>}
        </li>
      ))}
    </ol>
  </details>
);
