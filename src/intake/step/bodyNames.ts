import type { Brep } from './brep.js';
import { nameText } from './nameText.js';
import { solidsInText } from './solidsInText.js';

/** Share by which the volumes of a solid used twice may differ: the kernel's own measure of free forms is good to a ten-thousandth. */
const SAME_VOLUME = 1e-3;

/** Several of a name told apart by a number, and no two alike in the end. */
const toldApart = (names: readonly string[]): string[] => {
  const taken = new Set(names.filter((name) => names.indexOf(name) === names.lastIndexOf(name)));
  const last = new Map<string, number>();
  return names.map((name) => {
    if (taken.has(name) && names.indexOf(name) === names.lastIndexOf(name)) return name;
    let number = last.get(name) ?? 0;
    do number++; while (taken.has(`${name} ${number}`));
    last.set(name, number);
    taken.add(`${name} ${number}`);
    return `${name} ${number}`;
  });
};

/**
 * The names of a file's bodies. The only body bears the file's name; those of an assembly the names of their products, where the file's
 * structure gives the kernel's bodies one by one with as many faces; all others the file's name and a number.
 */
export const bodyNames = (text: string, bodies: readonly Brep[], fileName: string): string[] => {
  if (bodies.length === 1) return [fileName];
  const numbered = bodies.map((_, i) => `${fileName} ${i + 1}`);
  const solids = solidsInText(text, bodies.filter(({ solid }) => solid).length);
  // of one product alone its name says no more than the file's
  if (solids === undefined || new Set(solids.map(({ product }) => product)).size < 2) return numbered;
  const first = new Map<number, Brep>();
  for (const [i, { solid, faces }] of solids.entries()) {
    const body = bodies[i]!;
    const same = first.get(solid) ?? body;
    first.set(solid, same);
    if (body.faces.length !== faces || Math.abs(body.volume - same.volume) > SAME_VOLUME * Math.abs(same.volume)) return numbered;
  }
  const named = bodies.map((_, i) => {
    const [id, name] = solids[i]?.names.map(nameText) ?? [];
    return name ?? id;
  });
  const apart = toldApart(named.filter((name) => name !== undefined));
  return named.map((name, i) => (name === undefined ? numbered[i]! : apart.shift()!));
};
