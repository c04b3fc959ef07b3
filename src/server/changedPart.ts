import { asFormed, type Assumption, type Part } from '../sheet/index.js';
import { HttpError } from './httpError.js';

/** What a new revision changes. */
export interface Change {
  readonly name?: string | undefined;
  /** mm: inside radii by bend id; outside lengths are kept. */
  readonly radii?: Readonly<Record<string, number>> | undefined;
  /** mm: the inside radius of every bend that was drawn sharp. */
  readonly sharpRadius?: number | undefined;
}

/** The part with the change made, and the change in words; an HttpError when it cannot be made or changes nothing. */
export const changedPart = (part: Part, change: Change): { readonly part: Part; readonly words: string } => {
  const sharp = new Set(part.assumptions.filter(({ code }) => code === 'sharp bend').flatMap(({ bends }) => bends));
  if (change.sharpRadius !== undefined && sharp.size === 0) throw new HttpError(422, 'No bend of this part was drawn sharp.');
  const radii = new Map([
    ...[...sharp].flatMap((id) => (change.sharpRadius === undefined ? [] : [[id, change.sharpRadius] as const])),
    ...Object.entries(change.radii ?? {}),
  ]);
  for (const id of radii.keys()) if (!part.bends.some((bend) => bend.id === id)) throw new HttpError(422, `The part has no bend '${id}'.`);

  const words = [...radii].map(([id, radius]) => `inside radius of ${id} ${radius} mm`);
  let changed = part;
  if (radii.size > 0) {
    const formed = asFormed(part, part.bends.map(({ id, insideRadius }) => ({ insideRadius: radii.get(id) ?? insideRadius })));
    if (!formed.ok) throw new HttpError(422, formed.failure.sentence);
    changed = { ...formed.value, assumptions: withChosen(part.assumptions, radii) };
  }
  if (change.name !== undefined && change.name !== part.name) {
    changed = { ...changed, name: change.name };
    words.push('renamed');
  }
  if (words.length === 0) throw new HttpError(400, 'Nothing changes: give a name, the radii of bends, or the radius of sharp ones.');
  return { part: changed, words: words.join(', ') };
};

/** A radius that the user chose is no longer the program's own assumption. */
const withChosen = (assumptions: readonly Assumption[], radii: ReadonlyMap<string, number>): Assumption[] =>
  assumptions.flatMap((assumption) => {
    const chosen = assumption.bends.filter((id) => radii.has(id));
    if (assumption.code !== 'sharp bend' || chosen.length === 0) return [assumption];
    const left = assumption.bends.filter((id) => !radii.has(id));
    const each = chosen.map((id) => `${id} ${radii.get(id)} mm`).join(', ');
    const sentence = `Drawn sharp; the inside radius was chosen by the user: ${each}.`;
    return [{ ...assumption, sentence, bends: chosen }, ...(left.length === 0 ? [] : [{ ...assumption, bends: left }])];
  });
