import type { Bend, Feature, Part } from '../sheet/index.js';

/** The plates reached from one plate without passing over a bend. */
const reached = (part: Part, from: number, without: number): ReadonlySet<number> => {
  const seen = new Set([from]);
  for (let grown = true; grown;) {
    grown = false;
    part.bends.forEach((bend, b) => {
      const [p, q] = [bend.sides[0].plate, bend.sides[1].plate];
      if (b === without || seen.has(p) === seen.has(q)) return;
      seen.add(p).add(q);
      grown = true;
    });
  }
  return seen;
};

const subPart = (part: Part, plates: ReadonlySet<number>, name: string): Part => {
  const places = new Map([...plates].sort((a, b) => a - b).map((plate, i) => [plate, i]));
  const within = part.bends.flatMap((bend, b) => (bend.sides.every((s) => plates.has(s.plate)) ? [[bend, b] as const] : []));
  const bendPlaces = new Map(within.map(([, b], i) => [b, i]));
  const side = (s: Bend['sides'][0]): Bend['sides'][0] => ({ ...s, plate: places.get(s.plate)! });
  const feature = (f: Feature): Feature[] => {
    const plate = places.get(f.plate);
    if (plate === undefined) return [];
    if (f.kind !== 'corner') return [{ ...f, plate }];
    const bend = bendPlaces.get(f.bend);
    return bend === undefined ? [] : [{ ...f, plate, bend }];
  };
  const dimensions = part.dimensions?.flatMap((d) => {
    const [a, b] = [feature(d.between[0]), feature(d.between[1])];
    return a[0] && b[0] ? [{ ...d, between: [a[0], b[0]] as const }] : [];
  });
  const formed = part.formed?.flatMap((f) => (plates.has(f.plate) ? [{ ...f, plate: places.get(f.plate)! }] : []));
  const { volume: _, reading: __, dimensions: ___, formed: ____, ...same } = part;
  return {
    ...same, name, plates: [...places.keys()].map((p) => part.plates[p]!),
    bends: within.map(([bend]) => ({ ...bend, sides: [side(bend.sides[0]), side(bend.sides[1])] })),
    assumptions: part.assumptions.map((a) => ({ ...a, plates: a.plates.flatMap((p) => places.get(p) ?? []), bends: a.bends.filter((id) => within.some(([b]) => b.id === id)) })),
    ...(dimensions && { dimensions }), ...(formed && { formed }),
  };
};

/**
 * The part parted at a bend, which is then no bend but a seam to be joined: the two parts that are left to bend, each with its own
 * plates, bends and dimensions. Flat ones, with nothing to bend, are left out.
 */
export const splitPart = (part: Part, bend: number): readonly Part[] => {
  const { id, sides } = part.bends[bend]!;
  return sides.map((s, k) => subPart(part, reached(part, s.plate, bend), `${part.name}, part ${k + 1} of 2 at ${id}`)).filter((p) => p.bends.length > 0);
};
