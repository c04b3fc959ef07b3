import type { Formed, Part } from '../../sheet/index.js';
import type { Lit } from '../scene/sheetMesh.js';
import { mm } from '../wording.js';
import type { Revise } from './AssumptionChange.js';
import { NumberChange } from './change.js';

const WORDS: Readonly<Record<Formed['kind'], string>> = {
  raised: 'raised (dimple, emboss)', opened: 'formed open (louvre, collar)', boss: 'boss, stud or fastener', countersink: 'countersink', recess: 'recess',
};

/** What stands on the plates, alike features in one line, with the height that the tools are held against. */
export const formedLines = (part: Part, revise: Revise): { words: string; lights: Lit; change: React.ReactNode }[] => {
  const alike = new Map<string, { readonly it: Formed; readonly places: number[] }>();
  part.formed?.forEach((it, place) => {
    if (it.kind === 'countersink' || it.kind === 'recess') return;
    const key = `${it.plate}/${it.kind}/${it.side}/${it.height}`;
    const known = alike.get(key);
    if (known) known.places.push(place);
    else alike.set(key, { it, places: [place] });
  });
  return [...alike.values()].map(({ it, places }) => ({
    words: `Plate ${it.plate + 1}, ${it.side} side: ${places.length} × ${WORDS[it.kind]}, ${mm(it.height)} high`,
    lights: { plates: [it.plate], bends: [] },
    change: <NumberChange key={it.height} what="height" unit="mm" label={`height, mm: ${WORDS[it.kind]}, plate ${it.plate + 1}, ${it.side} side`} value={it.height} most={1000} send={(height) => revise({ heights: Object.fromEntries(places.map((place) => [place, height])) })} />,
  }));
};
