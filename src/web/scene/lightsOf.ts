import type { Feature, Part } from '../../sheet/index.js';
import type { Lit } from './sheetMesh.js';

/** What lights up for features: the plates of faces, the bends of corners, the edges themselves. */
export const lightsOf = (part: Part, features: readonly Feature[]): Lit => ({
  plates: features.flatMap((f) => (f.kind === 'face' ? [f.plate] : [])),
  bends: features.flatMap((f) => (f.kind === 'corner' ? [part.bends[f.bend]!.id] : [])),
  edges: features.flatMap((f) => (f.kind === 'edge' ? [{ plate: f.plate, at: f.at }] : [])),
});
