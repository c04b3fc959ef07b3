import { to } from '../place.js';
import { useAnswer } from '../useAnswer.js';
import { Differences } from './Differences.js';
import type { Pieces } from './pieces.js';

/** On the trial's sheet: what was really made by it, apart from all that is predicted. */
export const MadeSection = ({ id }: { readonly id: string }) => {
  const { value } = useAnswer<Pieces>(`/api/trials/${encodeURIComponent(id)}/pieces`);
  if (!value || value.differences.length === 0) return null;
  return (
    <section className="section made" aria-labelledby="made-title">
      <h2 id="made-title">Pieces made: measured, not predicted</h2>
      <Differences differences={value.differences} />
      <p className="no-print"><a href={to.pieces(id)}>All entries, and write another down</a></p>
    </section>
  );
};
