import type { Store, StoredPart } from '../../store/index.js';
import { HttpError } from '../httpError.js';

/** The part, 410 when it was purged, 404 when it never was. */
export const livePart = async (store: Store, id: string, revision?: number): Promise<StoredPart> => {
  const part = await store.part(id, revision);
  if (part !== undefined) return part;
  const purge = await store.purge(id);
  if (purge !== undefined) throw new HttpError(410, `This part was purged on ${purge.at.slice(0, 10)}, as asked.`, { purge });
  throw new HttpError(404, revision === undefined ? 'There is no such part.' : `There is no revision ${revision} of this part.`);
};
